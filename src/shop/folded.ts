import type { Entry } from '../core/ledger/entry.ts';
import { foldJob, foldOn, type Job } from '../core/ledger/job.ts';
import type { Store } from './store.ts';

/** Jobs whose fold is remembered; the one that was asked for longest ago is forgotten first. */
const mostJobs = 64;

const known = new WeakMap<Store, Map<string, Job>>();

/**
 * A job from its ledger, folded on from where it was folded last. A store that remembers hands out the very entries that it handed out
 * before; one that reads them anew is folded anew.
 * @param entries  the whole ledger as the store has it now
 */
export function folded(store: Store, id: string, entries: readonly Entry[]): Job {
  const jobs = known.get(store) ?? new Map<string, Job>();
  known.set(store, jobs);
  const before = jobs.get(id);
  const goesOn = before && entries[before.entries.length - 1] === before.entries.at(-1);
  const job = goesOn ? foldOn(before, entries.slice(before.entries.length)) : foldJob(entries);
  jobs.delete(id);
  jobs.set(id, job);
  if (jobs.size > mostJobs) jobs.delete(jobs.keys().next().value!);
  return job;
}
