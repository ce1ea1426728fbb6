import { Worker } from 'node:worker_threads';
import type { Compute } from '../../shop/compute.ts';

interface Waiting {
  readonly done: (answer: never) => void;
  readonly failed: (failure: Error) => void;
}

/**
 * Heavy questions answered on a thread of their own. One that dies takes what it was asked with it; the next question starts
 * another, so that a script that cannot run at all fails once a question and not in a loop.
 */
export function computeOnThread(script: URL): {
  readonly compute: Compute;
  readonly close: () => Promise<void>;
} {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let worker: Worker | undefined;

  function start(): Worker {
    const thread = new Worker(script);
    thread.on(
      'message',
      ({ number, answer, failure }: { number: number; answer: never; failure?: string }) => {
        const asked = waiting.get(number);
        waiting.delete(number);
        if (failure === undefined) asked?.done(answer);
        else asked?.failed(new Error(failure));
      },
    );
    let why = new Error('the computing thread ended');
    thread.on('error', (failure) => {
      why = failure as Error;
    });
    thread.on('exit', () => {
      worker = undefined;
      for (const { failed } of waiting.values()) failed(why);
      waiting.clear();
    });
    // The page's server keeps the process alive, not this thread.
    thread.unref();
    return thread;
  }

  return {
    compute: (kind, ask) =>
      new Promise((done, failed) => {
        last += 1;
        waiting.set(last, { done: done as (answer: never) => void, failed });
        worker ??= start();
        worker.postMessage({ number: last, kind, ask });
      }),
    close: async () => {
      await worker?.terminate();
    },
  };
}
