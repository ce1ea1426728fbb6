import type { Job } from '../../core/ledger/job.ts';
import type { PracticeRecord } from '../../core/practice/record.ts';

/** What a practice job's machine was begun from; undefined when the job is of a real part. */
export function practiceOf(job: Pick<Job, 'live'>): PracticeRecord | undefined {
  const begun = job.live.find((entry) => entry.kind === 'practice begun');
  if (begun?.kind !== 'practice begun') return undefined;
  const { slide, material, level, seed, slips } = begun;
  return { slide, material, level, seed, slips };
}

/** Whether the truth was asked for, and may be shown. */
export const truthAsked = (job: Pick<Job, 'live'>): boolean =>
  job.live.some((entry) => entry.kind === 'truth shown');
