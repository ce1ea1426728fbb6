import type { Entry } from '../core/ledger/entry.ts';
import type { Store } from './store.ts';

/** Ledgers that are remembered; the one that was asked for longest ago is forgotten first. */
const mostJobs = 64;

/**
 * A store that reads of each ledger only what it has not read before. Entries are only ever added, so what was read once stands;
 * the store below is asked every time for what came after, so that another process's entries are never missed.
 * @param wrote  told of a job after something was kept in it
 */
export function remembering(store: Store, wrote: (job: string) => void = () => undefined): Store {
  const known = new Map<string, readonly Entry[]>();
  return {
    ...store,
    entries: async (job, after = 0) => {
      const before = known.get(job) ?? [];
      const fresh = await store.entries(job, before.length);
      if (!fresh) return undefined;
      // Asked twice at once, whoever is answered last may have less than is known by now.
      const now = known.get(job) ?? [];
      const all = fresh.length === 0 ? before : [...before, ...fresh];
      const whole = all.length >= now.length ? all : now;
      known.delete(job);
      known.set(job, whole);
      if (known.size > mostJobs) known.delete(known.keys().next().value!);
      return after === 0 ? whole : whole.slice(after);
    },
    make: async (job, entries, also) => {
      const kept = await store.make(job, entries, also);
      if (kept.kind !== 'kept') return kept;
      wrote(job);
      if (also) wrote(also.job);
      return kept;
    },
    append: async (job, entry) => {
      const kept = await store.append(job, entry);
      if (kept.kind === 'kept') wrote(job);
      return kept;
    },
  };
}
