import { useMemo } from 'react';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import type { NoAnswer } from '../../../core/plan/problem.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { JobAnswer } from '../../../shop/answer-job.ts';
import { alarmState } from '../../../shop/bench/alarm-state.ts';
import { type FeatureLine, featureLine, leadingLine, type Valued } from '../../../shop/bench/feature-line.ts';
import { nextDeed, type RoundPlan } from '../../../shop/bench/next-deed.ts';
import { soFar } from '../../../shop/bench/so-far.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { WorkingOnIt } from '../frame/working-on-it.tsx';
import { type OpenJob, useAnswering } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { AlarmBench } from './alarm-bench.tsx';
import { MeasuringBench } from './measuring-bench.tsx';
import { NoAnswerBench } from './no-answer-bench.tsx';
import { PlanBench } from './plan-bench.tsx';
import { StopBench } from './stop-bench.tsx';

/** The home of a job: how far out and how sure, where to scrape, and the one thing to do next. */
export const BenchScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>{(open) => <Bench open={open} />}</JobScreen>
);

/** What every state of the bench is shown from. */
export interface BenchView {
  readonly open: OpenJob;
  readonly units: UnitSystem;
  readonly record: ReturnType<typeof roundRecord>;
  readonly answer: JobAnswer;
  readonly deed: ReturnType<typeof nextDeed>;
}

const roundPlan = (steer: SteerAnswer | NoAnswer): RoundPlan =>
  steer.ok
    ? { kind: 'plan', action: steer.plan.action, zones: steer.plan.zones, alarm: steer.alarm !== undefined }
    : { kind: 'no answer' };

function Bench({ open }: { readonly open: OpenJob }) {
  const { units } = useSettings();
  const { answer, failure } = useAnswering(open.id);
  const { job } = open;
  const record = useMemo(() => roundRecord(job.live, job.round), [job]);
  const measured = Object.keys(record.taken).length > 0 || record.print !== undefined;
  // A refusal of a ledger that has grown since is no longer true; a plan of it still helps while the new one is worked out.
  const stale = answer !== undefined && answer.seq < job.seq && answer.steer?.ok === false;
  const plan = answer?.steer && measured && !stale ? roundPlan(answer.steer) : undefined;
  const alarm = answer?.steer?.ok ? answer.steer.alarm : undefined;
  const settled = alarm === undefined || alarmState(alarm, record.causes).settled;
  const deed = nextDeed({ ...soFar(record, job.plan), settled }, plan);
  const unseen = answer?.steer?.ok === false && answer.steer.why === 'not seen' && deed.kind === 'measure';
  const waiting = stale || unseen || (answer !== undefined && answer.steer === undefined);
  if (!measured || waiting)
    return <MeasuringBench open={open} units={units} answer={answer} deed={deed} record={record} />;
  if (!answer?.steer) return <WorkingOnIt failure={failure} />;
  const view: BenchView = { open, units, record, answer, deed };
  const { steer } = answer;
  if (!steer.ok) return <NoAnswerBench view={view} steer={steer} />;
  if (deed.kind === 'settle' && steer.alarm) return <AlarmBench view={view} alarm={steer.alarm} />;
  if (deed.kind === 'sign' || deed.kind === 'signed') return <StopBench view={view} steer={steer} />;
  return <PlanBench view={view} steer={steer} />;
}

/** The features of an answer as lines, the leading one first. */
export function linesOf(view: BenchView, features: readonly Valued[]) {
  const { plan } = view.open.job;
  const lines = plan.features.flatMap((feature): FeatureLine[] => {
    const value = features.find((one) => one.name === feature.name);
    return value ? [featureLine(plan, value, view.units)] : [];
  });
  const lead = leadingLine(lines);
  return { lines, lead, others: lines.filter((line) => line !== lead) };
}
