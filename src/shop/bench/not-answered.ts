import type { Entry } from '../../core/ledger/entry.ts';
import type { Job } from '../../core/ledger/job.ts';

/** Kinds of entries that change where the slide stands, or what is known of it. A pass made changes neither before the next measuring. */
const evidence: ReadonlySet<Entry['kind']> = new Set([
  'plan amended',
  'sweep taken',
  'level read',
  'height read',
  'print read',
  'print photographed',
  'cause settled',
  'heights set',
  'undone',
]);

/**
 * Whether readings came into the ledger after the place that an answer was worked out for: its plan is then of before them.
 *
 * @param seq  the place that was answered; see `JobAnswer`
 */
export const notAnswered = (job: Job, seq: number): boolean =>
  job.entries.some((entry) => entry.seq > seq && evidence.has(entry.kind));
