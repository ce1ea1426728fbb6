import { heightsInput } from '../../contract/heights.ts';
import type { NewRebuild } from '../../contract/rebuild.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Pad } from '../../core/body/pad.ts';
import type { Entry, JobPlan } from '../../core/ledger/entry.ts';
import { foldJob, type Job } from '../../core/ledger/job.ts';
import { benchesOf, type HeightsRecord, heightsOf, machineOf } from '../../core/ledger/rebuild-record.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { orderedSteps } from '../../core/order/needs.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Kept, Store } from '../store.ts';
import { type BenchLimits, benchPlan } from './bench-plan.ts';
import { type HeightsAnswer, type HeightsAsk, heights } from './heights.ts';
import { machineChain } from './machine-chain.ts';

/** The first step, in the order of work, that is scraped on a bench: its plan is the job's own. */
function firstBench(machine: Machine): string | undefined {
  const ordered = orderedSteps(machine);
  return ordered.ok
    ? ordered.order.find((id) => machine.steps.some((step) => step.id === id && step.bench))
    : undefined;
}

/**
 * Makes a job about a whole machine. Its own bench is that of the first step that has one; every other step's bench becomes a
 * job of its own when it is opened.
 * @throws BadInput  a machine none of whose steps is scraped on a bench
 */
export async function makeRebuild(
  store: Store,
  templates: readonly Template[],
  { id, at, title, machine }: NewRebuild,
): Promise<Kept> {
  const step = firstBench(machine);
  const plan = step === undefined ? undefined : benchPlan(machine, step, templates);
  if (step === undefined || !plan)
    throw new BadInput([
      {
        path: 'machine.steps',
        found: 'no step with a `bench`',
        expected: 'at least one step that is scraped on a bench, with the slide it is scraped on',
      },
    ]);
  const short = id.slice(0, 57);
  const entries: Entry[] = [
    { kind: 'job made', plan: { ...plan, title }, id: `${short}-made`, at, seq: 1 },
    { kind: 'machine set', machine, id: `${short}-whole`, at, seq: 2 },
    { kind: 'bench opened', job: id, step, id: `${short}-bench`, at, seq: 3 },
  ];
  return store.make(id, entries);
}

/** `heights`' question about a job's own machine. @throws BadInput */
export const heightsAskOf = (
  machine: Machine,
  record: HeightsRecord,
  templates: readonly Template[],
): HeightsAsk =>
  heightsInput(
    { machine: machine.id, ...record },
    {
      templates,
      machines: [machine],
      chainOf: (whole, known) => machineChain(whole, templates, known),
    },
  );

/** What a job's heights leave a step's slide: how far it may sink, and what may come off its lined faces. */
export function benchLimits(
  live: Job['live'],
  machine: Machine,
  slide: string,
  templates: readonly Template[],
): BenchLimits {
  const record = heightsOf(live);
  if (!record || !machine.heights) return {};
  const answer = heights(heightsAskOf(machine, record, templates));
  const its = answer.ok ? answer.limits.find((one) => one.joint === slide) : undefined;
  if (!its) return {};
  const sink = its.sink.map(({ name, at_mm, most_um }) => ({ name, at_mm, most_um }));
  return { sink, stock_um: its.stock_um };
}

/** A step's bench: which job it is, and whether it was made by this. */
export type BenchOpened =
  | { readonly kind: 'open'; readonly job: string; readonly again: boolean }
  | { readonly kind: 'no such step' }
  | { readonly kind: 'no bench' }
  | { readonly kind: 'conflict' };

/**
 * Gives a bench that is open already the room that the heights leave it now: what may come off its faces, and how far it may
 * sink. All else of its plan stays as it is.
 */
async function refreshRoom(
  store: Store,
  open: string,
  fresh: JobPlan,
  { id, at }: { readonly id: string; readonly at: string },
): Promise<void> {
  const entries = await store.entries(open);
  if (!entries) return;
  const { plan } = foldJob(entries);
  const pads = plan.slide.pads.map(({ stock_um: _, ...pad }): Pad => {
    const stock_um = fresh.slide.pads.find((one) => one.name === pad.name)?.stock_um;
    return stock_um === undefined ? pad : { ...pad, stock_um };
  });
  const sink = fresh.sink ?? [];
  const was = { pads: plan.slide.pads, sink: plan.sink ?? [] };
  if (JSON.stringify(was) === JSON.stringify({ pads, sink })) return;
  const change = { slide: { ...plan.slide, pads }, sink };
  await store.append(open, { kind: 'plan amended', change, id: `${id.slice(0, 57)}-room`, at });
}

/**
 * Opens the bench of a step: the job that was made for it, or a new one with the step's set-ups, targets and cautions, and with
 * the room that the machine's heights leave it. Asked again, it is the same job.
 * @throws BadInput  heights that no longer fit the machine
 */
export async function openBench(
  store: Store,
  job: Job,
  own: string,
  stepId: string,
  templates: readonly Template[],
  asked: { readonly id: string; readonly at: string },
): Promise<BenchOpened> {
  const machine = machineOf(job.live);
  const step = machine?.steps.find((one) => one.id === stepId);
  if (!machine || !step) return { kind: 'no such step' };
  if (!step.bench) return { kind: 'no bench' };
  const open = benchesOf(job.live).get(stepId);
  const limits = benchLimits(job.live, machine, step.bench.slide, templates);
  const plan = benchPlan(machine, stepId, templates, {}, limits)!;
  const { id, at } = asked;
  if (open !== undefined) {
    if (heightsOf(job.live)) await refreshRoom(store, open, plan, asked);
    return { kind: 'open', job: open, again: true };
  }
  const { demo } = job.plan;
  const short = id.slice(0, 57);
  const title = `${job.plan.title}: ${step.title}`.slice(0, 200);
  // One write: a bench that its machine's job does not point to would be found by nobody.
  const made = await store.make(
    id,
    [
      {
        kind: 'job made',
        plan: { ...plan, title, ...(demo === undefined ? {} : { demo }) },
        id: `${short}-made`,
        at,
        seq: 1,
      },
      { kind: 'bench of', job: own, step: stepId, id: `${short}-of`, at, seq: 2 },
    ],
    { job: own, entry: { kind: 'bench opened', job: id, step: stepId, id: `${short}-opened`, at } },
  );
  return made.kind === 'kept' ? { kind: 'open', job: id, again: made.again } : { kind: 'conflict' };
}

/** A job's heights as its ledger has them, or as they are being typed; undefined for a job without a machine that has heights. */
export function jobHeights(
  job: Job,
  templates: readonly Template[],
  typed?: HeightsRecord,
  system: UnitSystem = 'metric',
): HeightsAnswer | { readonly ok: false; readonly text: string } | undefined {
  const machine = machineOf(job.live);
  if (!machine?.heights) return undefined;
  return heights(heightsAskOf(machine, typed ?? heightsOf(job.live) ?? {}, templates), system);
}
