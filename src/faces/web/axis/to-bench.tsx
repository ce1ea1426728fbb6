import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { heldOf, readingOf } from '../../../core/axis/usual-bar.ts';
import type { Deed, Entry, JobPlan } from '../../../core/ledger/entry.ts';
import { foldJob, type Job } from '../../../core/ledger/job.ts';
import { machineOf } from '../../../core/ledger/rebuild-record.ts';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { AxisAnswer } from '../../../shop/order/axis.ts';
import {
  type AxisPads,
  axisPads,
  type BarStep,
  barDeed,
  barSteps,
  heightDeed,
  heightSteps,
} from '../../../shop/order/axis-pads.ts';
import type { AxisTyped } from '../../../shop/order/axis-typed.ts';
import { PartMap } from '../bench/part-map.tsx';
import { Wrong } from '../frame/notice.tsx';
import { type OpenJob, outbox, queries, useTemplates } from '../keep/jobs.ts';
import { newId } from '../keep/outbox.ts';
import { fetched, jobAddress } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { PickField } from '../machine/fields.tsx';
import { openBench, whyNoBench } from '../order/open-bench.ts';

/** A job without a machine, or whose machine has no pads that turn a bar, has none. */
export function ToBench(props: {
  readonly open: OpenJob;
  readonly asked: AxisTyped;
  readonly answer: AxisAnswer | undefined;
  /** Which way a bar of this sheet points along x; undefined: either. */
  readonly toward: 1 | -1 | undefined;
  /** The step the sheet was opened from. */
  readonly from: string | undefined;
}) {
  const { open, asked, answer, toward, from } = props;
  const templates = useTemplates().data;
  const { live } = open.job;
  const steps = useMemo(() => {
    const machine = machineOf(live);
    return machine && templates ? barSteps(machine, templates) : [];
  }, [live, templates]);
  const among = asked.bar ? steps : heightSteps(steps);
  const [chosen, choose] = useState<string>();
  const likely = among.find((one) => one.step === from) ?? among.find((one) => one.toward === toward);
  const step = among.find((one) => one.step === chosen) ?? likely ?? among[0];
  if (!step || !answer) return null;
  return (
    <section className="machine-list" aria-labelledby="axis-pads">
      <h2 id="axis-pads">Its pads</h2>
      {among.length > 1 ? (
        <PickField
          label="Held by the part of"
          value={step.step}
          among={among.map((one) => ({ value: one.step, words: one.title }))}
          onChange={choose}
        />
      ) : null}
      {answer.axes.map((found) => (
        <Off key={found.side} step={step} found={found} />
      ))}
      <Take key={step.step} open={open} step={step} asked={asked} answer={answer} />
    </section>
  );
}

/** Which pads come down, and how far: in words, and on the part as the bench will draw it. */
function Off({ step, found }: { readonly step: BarStep; readonly found: AxisAnswer['axes'][number] }) {
  const { units } = useSettings();
  const pads = axisPads(step.plan, found, units);
  if (!pads) return null;
  return (
    <>
      <p className="say">{pads.sentence}</p>
      <OffMap plan={step.plan} off_um={pads.off_um} />
    </>
  );
}

function OffMap({ plan, off_um }: { readonly plan: BarStep['plan']; readonly off_um: AxisPads['off_um'] }) {
  const { units } = useSettings();
  const metric = units === 'metric';
  const text = (um: number) =>
    sayDeviation(um, units, {
      signed: false,
      unit: metric ? 'um' : 'tenths',
      decimals: metric ? 0 : 1,
    }).number;
  const texts = Object.fromEntries(Object.entries(off_um).map(([pad, row]) => [pad, row.map(text)]));
  const title = `To come off each zone, ${metric ? 'µm' : 'tenths'}; drawn as it lies turned end over end`;
  return (
    <>
      <p className="quiet">{title}</p>
      <PartMap
        title={title}
        plan={plan}
        turned="end over end"
        show={{ kind: 'heights', values: off_um, texts }}
      />
    </>
  );
}

/** What the sheet has read, as entries of the bench's round. */
function deedsFor(plan: JobPlan, round: number, asked: AxisTyped, answer: AxisAnswer): Deed[] {
  const bar = asked.bar && barDeed(plan, round, heldOf(asked.bar), (asked.readings ?? []).map(readingOf));
  const heights = answer.centres.flatMap((found) => heightDeed(plan, round, found) ?? []);
  return [...(bar ? [bar] : []), ...heights.slice(0, 1)];
}

const benchJob = async (id: string): Promise<Job> =>
  foldJob((await fetched<{ entries: readonly Entry[] }>(jobAddress(id))).entries);

/** The button that takes the readings to the step's bench and goes there. */
function Take(props: {
  readonly open: OpenJob;
  readonly step: BarStep;
  readonly asked: AxisTyped;
  readonly answer: AxisAnswer;
}) {
  const { open, step, asked, answer } = props;
  const [, go] = useLocation();
  const [wrong, setWrong] = useState<string>();
  const [fresh] = useState(newId);
  if (deedsFor(step.plan, 1, asked, answer).length === 0) return null;
  const take = async () => {
    try {
      const bench = await openBench(open.id, step.step, fresh);
      const job = await benchJob(bench);
      if (roundRecord(job.live, job.round).passes.length > 0)
        return setWrong(
          `Round ${job.round} of this bench is being scraped. Set the part back there first: these readings belong to the round after.`,
        );
      const deeds = deedsFor(job.plan, job.round, asked, answer);
      if (deeds.length === 0)
        return setWrong('This bench was opened by an earlier version and takes no bar: sweep it there.');
      for (const deed of deeds)
        outbox.add({ job: bench, entry: { ...deed, id: newId(), at: new Date().toISOString() } });
      await outbox.deliver();
      await queries.invalidateQueries({ queryKey: ['job', bench] });
      go(`/job/${encodeURIComponent(bench)}`);
    } catch (failure) {
      setWrong(whyNoBench(failure));
    }
  };
  return (
    <>
      <button type="button" className="second" onClick={() => void take()}>
        Take it to the Bench: {step.title}
      </button>
      <p className="quiet">
        The Bench asks for what else it needs, and makes passes of it, pad by pad and zone by zone.
      </p>
      {wrong === undefined ? null : <Wrong role="alert">{wrong}</Wrong>}
    </>
  );
}
