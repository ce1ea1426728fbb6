import { parentPort, workerData } from 'node:worker_threads';
import { decodePhoto } from '../../../adapters/photo/decode.ts';
import { greyPng } from '../../../adapters/photo/grey-png.ts';
import { photosAt } from '../../../adapters/photo/place.ts';
import { BadInput } from '../../../contract/refusal.ts';
import { madeReady } from '../../../core/print/made-ready.ts';
import { type PhotoQuestions, photoDesk } from '../../../shop/print/photo-desk.ts';
import { Fault } from '../../../shop/store.ts';
import type { Failure } from '../photo-thread.ts';

/** Once the first answer is out. */
const readyAfter_ms = 300;

const ask = photoDesk(photosAt(workerData as string), decodePhoto, greyPng);

function failureOf(failure: unknown): Failure {
  const message = String((failure as Error)?.message ?? failure);
  if (failure instanceof BadInput) return { message, issues: failure.issues };
  if (failure instanceof Fault) return { message, fault: failure.code };
  return { message: String((failure as Error)?.stack ?? failure) };
}

parentPort!.on('message', (question: { kind: keyof PhotoQuestions; ask: never }) => {
  ask(question.kind, question.ask).then(
    (answer) => parentPort!.postMessage({ answer }),
    (failure: unknown) => parentPort!.postMessage({ failure: failureOf(failure) }),
  );
});

// A photo is sent before it is read, and its corners are looked at in between: time to make the reader ready.
parentPort!.once('message', () => {
  setTimeout(madeReady, readyAfter_ms);
});
