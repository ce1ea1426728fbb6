import type { Entry } from '../../core/ledger/entry.ts';
import type { Store } from '../../shop/store.ts';

/** An entry as it is told: written out once, whoever hears it. */
export interface News {
  readonly seq: number;
  /** A server-sent event. */
  readonly text: string;
}

const eventOf = (entry: Entry): News => ({
  seq: entry.seq,
  text: `id: ${entry.seq}\nevent: entry\ndata: ${JSON.stringify(entry)}\n\n`,
});

/** Tells whoever watches a job what was written into it, by this process or any other. */
export interface Watch {
  /** @param after  place of the last entry that the watcher has  @returns how to stop */
  readonly job: (id: string, after: number, tell: (news: readonly News[]) => void) => () => void;
  /** Something was written into a job just now. */
  readonly nudge: (id: string) => void;
  readonly close: () => void;
}

/** How often the store is asked what other processes wrote, ms. */
const look_ms = 500;
/** The first entry after a quiet while is told at once; those that follow it are told together, so often, ms. */
const gather_ms = 100;

interface Watcher {
  after: number;
  readonly tell: (news: readonly News[]) => void;
}

export function watchJobs(store: Store): Watch {
  const watched = new Map<string, Set<Watcher>>();
  const due = new Map<string, NodeJS.Timeout>();
  const toldAt = new Map<string, number>();

  const look = async (id: string): Promise<void> => {
    const watchers = watched.get(id);
    if (!watchers) return;
    const least = Math.min(...[...watchers].map((one) => one.after));
    // A store that does not answer just now is asked again; nobody's place moves meanwhile.
    const entries = await store.entries(id, least).catch(() => undefined);
    if (!entries || entries.length === 0 || !watched.has(id)) return;
    toldAt.set(id, performance.now());
    const told = entries.map(eventOf);
    for (const watcher of [...watchers]) {
      const news = told.filter((entry) => entry.seq > watcher.after);
      if (news.length === 0) continue;
      watcher.after = news.at(-1)!.seq;
      watcher.tell(news);
    }
  };
  const soon = (id: string) => {
    if (due.has(id) || !watched.has(id)) return;
    const wait = (toldAt.get(id) ?? Number.NEGATIVE_INFINITY) + gather_ms - performance.now();
    due.set(
      id,
      setTimeout(
        () => {
          due.delete(id);
          void look(id);
        },
        Math.max(0, wait),
      ),
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
        if (others.size > 0) return;
        watched.delete(id);
        toldAt.delete(id);
      };
    },
    nudge: soon,
    close: () => {
      clearInterval(timer);
      for (const one of due.values()) clearTimeout(one);
    },
  };
}
