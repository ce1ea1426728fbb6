import { Worker } from 'node:worker_threads';
import { type ChartParts, Unpressed } from './charts.ts';

const limits = {
  /** Papers that wait while one is made. */
  waiting: 4,
  /** A chart with sixty photos takes some seconds. */
  most_ms: 60_000,
};

/**
 * Papers made on a thread of their own, one after the other, each on a fresh thread: paper is rare, and its faces and photos
 * are let go with the thread.
 *
 * @param folder  where photos are kept
 */
export function pressOnThread(
  script: URL,
  folder: string,
): { readonly press: ChartParts['press']; readonly close: () => Promise<void> } {
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();
  let worker: Worker | undefined;

  const made = (ask: unknown, stop: AbortSignal | undefined): Promise<Uint8Array> =>
    new Promise((done, failed) => {
      if (stop?.aborted) return failed(stop.reason);
      const thread = new Worker(script, { workerData: { folder, ask } });
      worker = thread;
      thread.unref();
      const clock = setTimeout(() => {
        failed(
          new Unpressed(
            `the paper was given up after ${limits.most_ms / 1000} s; nothing of the job is lost`,
          ),
        );
        void thread.terminate();
      }, limits.most_ms);
      clock.unref();
      stop?.addEventListener('abort', () => {
        failed(stop.reason);
        void thread.terminate();
      });
      thread.once('message', (pdf: Uint8Array) => done(pdf));
      thread.once('error', failed);
      thread.once('exit', () => {
        clearTimeout(clock);
        failed(new Error('the paper thread ended'));
      });
    });

  return {
    press: async (ask, stop) => {
      if (waiting > limits.waiting)
        throw new Unpressed(`${waiting} papers are waiting already; ask again soon. Nothing is lost.`);
      waiting += 1;
      const mine = last.then(() => made(ask, stop));
      last = mine.catch(() => undefined);
      try {
        return await mine;
      } finally {
        waiting -= 1;
      }
    },
    close: async () => {
      await worker?.terminate();
    },
  };
}
