import type { ChartFile } from '../../contract/chart.ts';
import type { Slide } from '../../core/body/slide.ts';
import { type ChartAsked, chartLines, type Tally, tally } from '../../core/chart/chart.ts';
import { type KitProof, kitProof, nextMeasurements } from '../../core/chart/next-measurement.ts';
import type { TurnedOver } from '../../core/ledger/entry.ts';
import type { Job } from '../../core/ledger/job.ts';
import { machineOf, stepRecords } from '../../core/ledger/rebuild-record.ts';
import { lastTurned } from '../../core/ledger/round-record.ts';
import type { PlaceWords } from '../../core/ledger/setup.ts';
import { measured, steerInput } from '../../core/ledger/steer-input.ts';
import { stepOf } from '../../core/order/needs.ts';
import { progress } from '../../core/order/progress.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted } from '../phrase.ts';
import type { BenchJob, ChartFrom } from './bench-jobs.ts';
import { type JobAccount, jobAccount } from './job-account.ts';
import { jobTold } from './job-results.ts';
import { type LineShown, lineShown } from './line-shown.ts';
import { lineNote, nextSentence } from './settle-words.ts';

/** A slide as its prints are drawn. */
export interface SlideDrawn {
  readonly slide: Slide;
  readonly places: PlaceWords;
  readonly turnedOver: TurnedOver;
}

/** What a bench that is a job of its own has to tell. */
export interface BenchAccount {
  readonly job: string;
  /** The step's title. */
  readonly step: string;
  readonly account: JobAccount;
  readonly slide: SlideDrawn;
}

/** A chart with every number in the unit it is shown in and every text ready: what screen, paper and table show. */
export interface ChartReport {
  readonly title: string;
  /** "Invented data" and the like. */
  readonly note?: string;
  readonly units: UnitSystem;
  /** Key and value, for the head of the page. */
  readonly facts: readonly (readonly [string, string])[];
  /** What the chart comes to, in two sentences. */
  readonly sentence: string;
  readonly tally: Tally;
  readonly groups: readonly { readonly name: string; readonly lines: readonly LineShown[] }[];
  /** Lines neither within nor outside, the cheapest to settle first. */
  readonly remaining: readonly {
    readonly number: number;
    readonly name: string;
    readonly text: string;
    readonly minutes?: number;
    readonly measured: boolean;
  }[];
  readonly next?: string;
  readonly condition: readonly string[];
  readonly done: readonly string[];
  readonly job?: JobAccount;
  /** For drawing the prints. */
  readonly slide?: SlideDrawn;
  /** Of a whole machine: the step whose bench the job itself is. */
  readonly step?: string;
  /** Of a whole machine: what the benches that are jobs of their own have to tell, in the order of work. */
  readonly benches: readonly BenchAccount[];
  /** Where the limits come from, each source once. */
  readonly sources: readonly string[];
  readonly scaling?: string;
  readonly left_out: readonly string[];
  /** How a line is judged and what ± is. */
  readonly rules: readonly string[];
  readonly cautions: readonly string[];
}

const alwaysCautions = [
  'This chart speaks of geometry. It is not a safety rating: leave guards, electrics and lifting to those who hold the trade, and follow your local rules.',
  'Limits are as their sources are tagged. Nobody has held this machine against a published standard unless it is said so here.',
];

const rules = [
  'Within: the value and its whole doubt lie inside the limit. Outside: wholly beyond it. Anything else is not proven.',
  'Each ± is two standard deviations: it holds 19 times in 20. Verdicts use the numbers as they are, not as they are rounded here.',
];

/** "Of 15 lines 10 are within, 2 not proven and 3 outside." */
export function tallySentence(count: Tally): string {
  const all = count.within + count.outside + count['not proven'] + count['not measured'];
  if (all === 0) return 'The chart has no lines.';
  const parts = [
    `${count.within} ${count.within === 1 ? 'is' : 'are'} within`,
    ...(['not proven', 'outside', 'not measured'] as const).flatMap((verdict) =>
      count[verdict] ? [`${count[verdict]} ${verdict}`] : [],
    ),
  ];
  const last = parts.pop()!;
  return `Of ${counted(all, 'line')} ${parts.length ? `${parts.join(', ')} and ${last}` : last}.`;
}

function factsOf(file: ChartFile, from: ChartFrom | undefined, system: UnitSystem): [string, string][] {
  const { list, machine } = file;
  const sizes = (list?.dimensions ?? []).map(
    (one) => `${one.label.toLowerCase()} ${sayLength(file.dimensions[one.key]!, system).text}`,
  );
  const cls = list?.classes.find((one) => one.id === file.class)?.name;
  const worked = [...(from ? [from.own, ...from.benches] : [])].flatMap(({ job }) =>
    measuredAny(job) ? [`${job.plan.slide.name} scraped, ${counted(job.round, 'round')}`] : [],
  );
  const facts: [string, string | undefined][] = [
    ['Machine', machine.name ?? list?.machine],
    ['Number', machine.number],
    ['Sizes', sizes.length ? sizes.join(', ') : undefined],
    ['Class', cls],
    ['Workshop', machine.workshop],
    ['Owner', machine.owner],
    ['Room', machine.room],
    ['Work', worked.length ? worked.join('; ') : undefined],
  ];
  return facts.filter((fact): fact is [string, string] => fact[1] !== undefined);
}

/** Steps of a whole machine's job that stand as done, in the order of work, with the hours they took and what was noted last. */
function stepsDone({ live }: Job): string[] {
  const machine = machineOf(live);
  if (!machine) return [];
  const told = stepRecords(live);
  return progress(machine, told).flatMap((state) => {
    if (state.status !== 'done') return [];
    const { title } = stepOf(machine, state.id)!;
    const note = told.findLast((one) => one.step === state.id && one.note !== undefined)?.note;
    const hours = state.hours_spent > 0 ? `, ${Number(state.hours_spent.toFixed(1))} h` : '';
    return [`${title}${hours}.${note === undefined ? '' : ` ${note}`}`];
  });
}

/** Whether anything was read or printed on the job's own bench; of a whole machine's job often nothing is. */
const measuredAny = (job: Job): boolean => steerInput(job).rounds.some(measured);

const slideDrawn = ({ job }: BenchJob): SlideDrawn => ({
  slide: job.plan.slide,
  places: job.plan.places,
  turnedOver: lastTurned(job.live),
});

/**
 * The chart of a machine: its list's lines with results from a job and from the file, the job's own lines behind them.
 * What the file says of a line goes before what the job measured.
 *
 * @param from  the job with its answer and those of its benches; left out: only what the file holds
 */
export function chartReport(file: ChartFile, from: ChartFrom | undefined, system: UnitSystem): ChartReport {
  const told = from && jobTold(from, file.tests, file.class);
  const own = from?.own;
  // A job about one slide is its own bench, and each of its lines would say the same.
  const traces = from && machineOf(from.own.job.live) ? told?.traces : undefined;
  const asked: ChartAsked = {
    groups: file.groups,
    tests: file.tests,
    class: file.class,
    scaling: file.list?.scaling ?? { floor_um: 0, round_um: 0 },
    dimensions: file.dimensions,
    results: { ...told?.results, ...file.results },
    ...(told ? { worked_to: told.worked_to } : {}),
  };
  const lines = [...chartLines(asked), ...(told?.own ?? [])];
  const proofs = lines.flatMap((line): KitProof[] => {
    const setup = file.setups.find((one) => one.target === line.id)?.setup;
    const proof = setup && file.kit && line.settle && kitProof(line, setup, file.kit);
    return proof ? [proof] : [];
  });
  const next = nextMeasurements(lines, proofs);
  const shown = lines.map((line, k) =>
    lineShown(
      line,
      k + 1,
      system,
      lineNote(
        line,
        next.find((one) => one.line === line.id),
        system,
      ),
      file.results[line.id] ? undefined : traces?.[line.id],
    ),
  );
  const groups = [...new Set(shown.map((line) => line.group))];
  const remaining = shown
    .filter((line) => line.verdict === 'not proven' || line.verdict === 'not measured')
    .map((line) => ({ line, at: next.findIndex((one) => one.line === line.id) }))
    .sort((a, b) => (a.at < 0 ? lines.length : a.at) - (b.at < 0 ? lines.length : b.at))
    .map(({ line, at }) => ({
      number: line.number,
      name: line.name,
      text: line.note ?? '',
      measured: line.verdict !== 'not measured',
      ...(at < 0 ? {} : { minutes: Math.ceil(next[at]!.minutes) }),
    }));
  const nextText = nextSentence(lines, next, file.setups);
  const note = file.note ?? own?.job.plan.demo;
  const count = tally(lines);
  const scaling = file.list?.scaling;
  const um = (value: number): string => sayDeviation(value, system, { signed: false }).text;
  return {
    title: own?.job.plan.title ?? file.machine.name ?? file.list?.machine ?? 'Machine',
    ...(note === undefined ? {} : { note }),
    units: system,
    facts: factsOf(file, from, system),
    sentence: [tallySentence(count), ...(nextText === undefined ? [] : [nextText])].join(' '),
    tally: count,
    groups: groups.map((name) => ({ name, lines: shown.filter((line) => line.group === name) })),
    remaining,
    ...(nextText === undefined ? {} : { next: nextText }),
    condition: file.condition ?? [],
    done: [...(file.done ?? []), ...(own ? stepsDone(own.job) : [])],
    ...(own ? { job: jobAccount(own.job, own.answer, system), slide: slideDrawn(own) } : {}),
    ...(own?.step === undefined ? {} : { step: own.step }),
    benches: (from?.benches ?? []).map((bench) => ({
      job: bench.id,
      step: bench.step ?? bench.job.plan.title,
      account: jobAccount(bench.job, bench.answer, system),
      slide: slideDrawn(bench),
    })),
    sources: [...new Set(shown.map((line) => line.source_text))],
    ...(scaling
      ? {
          scaling: `A limit measured over another length is scaled in proportion, never under ${um(scaling.floor_um)}, rounded to ${um(scaling.round_um)} (${scaling.source.came}: ${scaling.source.words}).`,
        }
      : {}),
    left_out: [
      ...(from?.missing ?? []).map((step) => `What the bench of “${step}” measured: its job is not here`),
      ...file.left_out.map((one) => {
        const test = file.list?.tests.find((other) => other.id === one.test);
        return `${test?.name ?? one.test}: ${one.why}`;
      }),
      ...(file.list?.left_out ?? []).map((one) => `${one.what}: ${one.why}`),
    ],
    rules,
    cautions: alwaysCautions,
  };
}
