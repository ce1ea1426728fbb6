import type { JobAnswer } from '../../shop/answer-job.ts';
import type { Compute } from '../../shop/compute.ts';
import type { Store } from '../../shop/store.ts';

interface Kept {
  /** The ledger's place that it answers. */
  readonly seq: number;
  readonly answer: Promise<JobAnswer>;
  done: boolean;
}

/** The answer of a job, or undefined when there is no such job. */
export type AnswerOf = (id: string) => Promise<JobAnswer | undefined>;

/**
 * Answers of jobs, the last one of each kept. An answer belongs to a place in the ledger, so it never goes stale unseen.
 * Of one job one answer is worked out at a time: whoever asks meanwhile waits, and is answered for the ledger as it then
 * stands, so that entries written in a row do not leave a queue of answers nobody reads.
 */
export function keepAnswers(store: Store, compute: Compute): AnswerOf {
  const kept = new Map<string, Kept>();
  return async (id) => {
    for (;;) {
      const entries = await store.entries(id);
      if (!entries) return undefined;
      const last = kept.get(id);
      if (last?.seq === entries.length) return last.answer;
      if (last && !last.done) {
        await last.answer.catch(() => undefined);
        continue;
      }
      const fresh: Kept = { seq: entries.length, answer: compute('job', entries), done: false };
      kept.set(id, fresh);
      fresh.answer.then(
        () => {
          fresh.done = true;
        },
        () => {
          // Asked again, it is tried again.
          fresh.done = true;
          if (kept.get(id) === fresh) kept.delete(id);
        },
      );
      return fresh.answer;
    }
  };
}
