import type { Entry } from '../../core/ledger/entry.ts';
import type { Store } from '../../shop/store.ts';

/** Tells whoever watches a job what was written into it, by this process or any other. */
export interface Watch {
  /** @param after  place of the last entry that the watcher has  @returns how to stop */
  readonly job: (id: string, after: number, tell: (news: readonly Entry[]) => void) => () => void;
  /** Something was written into a job just now. */
  readonly nudge: (id: string) => void;
  readonly close: () => void;
}

/** How often the store is asked what other processes wrote, ms. */
const look_ms = 500;
/** Entries written in a row are told together, ms. */
const gather_ms = 20;

interface Watcher {
  after: number;
  readonly tell: (news: readonly Entry[]) => void;
}

export function watchJobs(store: Store): Watch {
  const watched = new Map<string, Set<Watcher>>();
  const due = new Map<string, NodeJS.Timeout>();

  const look = async (id: string): Promise<void> => {
    const watchers = watched.get(id);
    if (!watchers) return;
    const least = Math.min(...[...watchers].map((one) => one.after));
    // A store that does not answer just now is asked again; nobody's place moves meanwhile.
    const entries = await store.entries(id, least).catch(() => undefined);
    if (!entries || entries.length === 0) return;
    for (const watcher of [...watchers]) {
      const news = entries.filter((entry) => entry.seq > watcher.after);
      if (news.length === 0) continue;
      watcher.after = news.at(-1)!.seq;
      watcher.tell(news);
    }
  };
  const soon = (id: string) => {
    if (due.has(id) || !watched.has(id)) return;
    due.set(
      id,
      setTimeout(() => {
        due.delete(id);
        void look(id);
      }, gather_ms),
    );
  };
  const timer = setInterval(() => {
    for (const id of watched.keys()) soon(id);
  }, look_ms);
  timer.unref();
  return {
    job: (id, after, tell) => {
      const watcher: Watcher = { after, tell };
      const others = watched.get(id) ?? new Set();
      watched.set(id, others.add(watcher));
      soon(id);
      return () => {
        others.delete(watcher);
        if (others.size === 0) watched.delete(id);
      };
    },
    nudge: soon,
    close: () => {
      clearInterval(timer);
      for (const one of due.values()) clearTimeout(one);
    },
  };
}
