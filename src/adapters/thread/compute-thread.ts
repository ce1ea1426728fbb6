import { Worker } from 'node:worker_threads';
import type { Compute, Questions } from '../../shop/compute.ts';
import { askedThread } from './asked-thread.ts';

/** Heavy questions answered on a thread of their own; one that is stopped stops it. */
export function computeOnThread(script: URL): {
  readonly compute: Compute;
  readonly close: () => Promise<void>;
} {
  const thread = askedThread<Questions>({
    start: () => new Worker(script),
    ended: 'the computing thread ended',
    failureOf: (failure) => new Error(failure),
    // The page's server keeps the process alive, not this thread.
    keepsAlive: false,
  });
  return { compute: thread.ask, close: thread.end };
}
