import type { Entry, JobPlan } from './entry.ts';
import { roundNow } from './round-record.ts';

/** A job as it stands: what its ledger says once everything undone is left out. */
export interface Job {
  readonly plan: JobPlan;
  /** Every entry, in order of seq: what the ledger holds. */
  readonly entries: readonly Entry[];
  /** The entries that count, undos left out. */
  readonly live: readonly Entry[];
  /** The round being worked, from 1. */
  readonly round: number;
  /** Place of the last entry; 0 before the first. */
  readonly seq: number;
}

/** An entry of a ledger that knows undo: one of the kind "undone" names the entry it strikes. */
interface Struck {
  readonly id: string;
  readonly kind: string;
  readonly entry?: string;
}

/**
 * Entries that count. An undo strikes the entry it names; an undo that is itself struck strikes nothing, so undoing an
 * undo brings the entry back. Read from the end, because only what comes later can strike.
 */
export function liveEntries<E extends Struck>(entries: readonly E[]): E[] {
  const struck = new Set<string>();
  const live: E[] = [];
  for (const entry of entries.toReversed()) {
    if (struck.has(entry.id)) continue;
    if (entry.kind === 'undone') struck.add(entry.entry!);
    else live.push(entry);
  }
  return live.reverse();
}

/**
 * A job from its ledger. Everything shown of a job is computed from this; nothing computed is stored.
 *
 *     foldJob(a ++ b) = foldJob(b, foldJob(a))
 *
 * @param entries  in any order; their seq puts them in order
 * @param from     what came before them
 * @throws RangeError  no entry makes the job
 */
export function foldJob(entries: readonly Entry[], from?: Pick<Job, 'entries'>): Job {
  const all = [...(from?.entries ?? []), ...entries].sort((a, b) => a.seq - b.seq);
  const live = liveEntries(all);
  const plan = planAfter(live);
  if (!plan)
    throw new RangeError(`${all.length} entries and none of them makes the job; expected a "job made"`);
  return { plan, entries: all, live, round: roundNow(live), seq: all.at(-1)?.seq ?? 0 };
}

function planAfter(entries: readonly Entry[], from?: JobPlan): JobPlan | undefined {
  let plan = from;
  for (const entry of entries) {
    if (entry.kind === 'job made') plan = entry.plan;
    else if (entry.kind === 'plan amended' && plan) plan = { ...plan, ...entry.change };
  }
  return plan;
}

/**
 * `foldJob(entries, from)` without going through what came before again, which an undo alone can change.
 * @param entries  in order of seq, all later than those of `from`
 */
export function foldOn(from: Job, entries: readonly Entry[]): Job {
  if (entries.length === 0) return from;
  if (entries.some(({ kind }) => kind === 'undone')) return foldJob(entries, from);
  return {
    plan: planAfter(entries, from.plan)!,
    entries: [...from.entries, ...entries],
    live: [...from.live, ...entries],
    round: Math.max(from.round, roundNow(entries)),
    seq: entries.at(-1)!.seq,
  };
}
