import { Worker } from 'node:worker_threads';
import type { Compute } from '../../shop/compute.ts';

interface Waiting {
  readonly done: (answer: never) => void;
  readonly failed: (failure: Error) => void;
}

/** Heavy questions answered on a thread of their own; one that dies is replaced, and what it was asked is refused. */
export function computeOnThread(script: URL): {
  readonly compute: Compute;
  readonly close: () => Promise<void>;
} {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let closing = false;
  let worker = start();

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
    thread.on('exit', () => lost(why));
    // The page's server keeps the process alive, not this thread.
    thread.unref();
    return thread;
  }

  function lost(failure: Error): void {
    for (const { failed } of waiting.values()) failed(failure);
    waiting.clear();
    if (!closing) worker = start();
  }

  return {
    compute: (kind, ask) =>
      new Promise((done, failed) => {
        last += 1;
        waiting.set(last, { done: done as (answer: never) => void, failed });
        worker.postMessage({ number: last, kind, ask });
      }),
    close: async () => {
      closing = true;
      await worker.terminate();
    },
  };
}
