import { outbox, queries } from '../keep/jobs.ts';
import { jobAddress, posted, Refusing } from '../keep/server.ts';

/**
 * The job that is the bench of a step, made when it is first opened.
 * @param fresh  the id a new one is to have: the same for all tries, so that a second press after a lost answer makes no second job
 * @throws Refusing  the shop refuses it; TypeError: it is out of reach
 */
export async function openBench(job: string, step: string, fresh: string): Promise<string> {
  await outbox.deliver();
  const { job: bench } = await posted<{ job: string }>(
    `${jobAddress(job)}/steps/${encodeURIComponent(step)}/bench`,
    { id: fresh, at: new Date().toISOString() },
  );
  await queries.invalidateQueries({ queryKey: ['job', job] });
  await queries.invalidateQueries({ queryKey: ['jobs'] });
  return bench;
}

/** Why a bench could not be opened. */
export const whyNoBench = (failure: unknown): string =>
  failure instanceof Refusing
    ? failure.message
    : 'The shop’s file is out of reach. A new bench is made there; try again.';
