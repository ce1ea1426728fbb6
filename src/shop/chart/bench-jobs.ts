import type { Job } from '../../core/ledger/job.ts';
import { benchesOf, benchOf, machineOf } from '../../core/ledger/rebuild-record.ts';
import { orderedSteps, stepOf } from '../../core/order/needs.ts';
import type { JobAnswer } from '../answer-job.ts';

/** A job that measured something a chart tells, with the step whose bench it is. */
export interface BenchJob {
  readonly id: string;
  readonly job: Job;
  readonly answer: JobAnswer;
  /** The step's title; absent for a job about one slide only. */
  readonly step?: string;
}

/** What a chart is told by: the job itself, and of a whole machine the benches that are jobs of their own, in the order of work. */
export interface ChartFrom {
  readonly own: BenchJob;
  readonly benches: readonly BenchJob[];
  /** Steps whose bench was opened as a job that is not to be found here, by title. */
  readonly missing: readonly string[];
}

/** How jobs and their answers are come by. */
export interface JobDoor {
  readonly open: (id: string) => Promise<Job | undefined>;
  readonly answer: (id: string, job: Job) => Promise<JobAnswer | undefined>;
}

/** A job about one slide is the bench of a step unless it says that it is another step's; a machine's own job is none. */
const isBench = ({ live }: Job, step: string): boolean =>
  machineOf(live) === undefined && (benchOf(live)?.step ?? step) === step;

/**
 * A job's answer with those of the benches of its machine's steps. A copy of a machine's job under another id leads back to the
 * job it was copied from, which is no bench of it.
 */
export async function chartFrom(id: string, job: Job, door: JobDoor): Promise<ChartFrom | undefined> {
  const answer = await door.answer(id, job);
  if (!answer) return undefined;
  const machine = machineOf(job.live);
  const own = { id, job, answer };
  if (!machine) return { own, benches: [], missing: [] };
  const links = benchesOf(job.live);
  const ordered = orderedSteps(machine);
  const steps = (ordered.ok ? ordered.order : machine.steps.map((step) => step.id)).filter((step) =>
    links.has(step),
  );
  const title = (step: string): string => stepOf(machine, step)?.title ?? step;
  const benches: BenchJob[] = [];
  const missing: string[] = [];
  for (const step of steps) {
    const bench = links.get(step)!;
    if (bench === id) continue;
    const opened = await door.open(bench);
    if (!opened) missing.push(title(step));
    if (!opened || !isBench(opened, step)) continue;
    const its = await door.answer(bench, opened);
    if (its) benches.push({ id: bench, job: opened, answer: its, step: title(step) });
  }
  const ownStep = steps.find((step) => links.get(step) === id);
  return { own: { ...own, ...(ownStep === undefined ? {} : { step: title(ownStep) }) }, benches, missing };
}
