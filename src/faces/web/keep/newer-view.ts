import type { Entry } from '../../../core/ledger/entry.ts';

/** A job's ledger as a page has it. */
export interface JobView {
  readonly id: string;
  readonly seq: number;
  readonly entries: readonly Entry[];
}

/**
 * Which view of a ledger stands when one that was asked for arrives. An entry that came in while it was under way is not
 * lost again; a ledger that is shorter than it was when it was asked for (a backup was put back) is believed.
 *
 * @param asked    what the page had when it asked
 * @param now      what the page has on arrival
 * @param arrived  what the shop answered
 */
export function newerView(asked: JobView | undefined, now: JobView | undefined, arrived: JobView): JobView {
  if (now === undefined || now.seq <= (asked?.seq ?? 0)) return arrived;
  return arrived.seq >= now.seq ? arrived : now;
}
