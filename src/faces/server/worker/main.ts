import { parentPort } from 'node:worker_threads';
import { solveWithHighs } from '../../../adapters/solver/highs.ts';
import { computeWith, type Questions } from '../../../shop/compute.ts';

/** A question with its number, as it comes over the thread's port. */
export interface Asked {
  readonly number: number;
  readonly kind: keyof Questions;
  readonly ask: never;
}

const compute = computeWith(solveWithHighs);

parentPort!.on('message', ({ number, kind, ask }: Asked) => {
  compute(kind, ask).then(
    (answer) => parentPort!.postMessage({ number, answer }),
    (failure: unknown) =>
      parentPort!.postMessage({ number, failure: String((failure as Error)?.stack ?? failure) }),
  );
});
