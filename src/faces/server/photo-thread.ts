import { Worker } from 'node:worker_threads';
import { BadInput, type Issue } from '../../contract/refusal.ts';
import { type AskPhotos, Unanswered } from '../../shop/print/photo-desk.ts';
import { Fault } from '../../shop/store.ts';

/** What went wrong on the thread, as data. */
export interface Failure {
  readonly message: string;
  readonly issues?: readonly Issue[];
  readonly fault?: Fault['code'];
}

interface Question {
  readonly kind: string;
  readonly ask: unknown;
  readonly done: (answer: never) => void;
  readonly failed: (why: Error) => void;
}

const limits = {
  /** Photos that wait while one is looked at; a phone and a tablet send a few. */
  waiting: 8,
  /** A photo at the limits takes some seconds; longer is a trap or a mistake of ours. */
  most_ms: 60_000,
};

function asError({ message, issues, fault }: Failure): Error {
  if (issues) return new BadInput(issues);
  return fault ? new Fault(fault, message) : new Error(message);
}

/** A photo's bytes go over as they are, not copied, where they lie in memory of their own. */
function handedOver(ask: unknown): ArrayBuffer[] {
  const { bytes } = ask as { readonly bytes?: Uint8Array };
  const isAlone = bytes?.buffer instanceof ArrayBuffer && bytes.byteLength === bytes.buffer.byteLength;
  return isAlone ? [bytes.buffer as ArrayBuffer] : [];
}

/**
 * Photos looked at on a thread of their own, one at a time, so that neither a request nor steering is held up. A photo that
 * takes too long is given up together with the thread; the next one gets another.
 *
 * @param folder  where photos are kept, told to the thread as its workerData
 */
export function photosOnThread(
  script: URL,
  folder: string,
  { waiting: mostWaiting, most_ms } = limits,
): { readonly ask: AskPhotos; readonly close: () => Promise<void> } {
  const waiting: Question[] = [];
  let worker: Worker | undefined;
  let now: Question | undefined;
  let clock: NodeJS.Timeout | undefined;

  function settle(act: (question: Question) => void): void {
    clearTimeout(clock);
    const question = now;
    now = undefined;
    if (question) act(question);
    next();
  }

  function start(): Worker {
    const thread = new Worker(script, { workerData: folder });
    thread.on('message', ({ answer, failure }: { answer: never; failure?: Failure }) =>
      settle((question) => (failure ? question.failed(asError(failure)) : question.done(answer))),
    );
    let why = new Error('the photo thread ended');
    thread.on('error', (failure) => {
      why = failure as Error;
    });
    thread.on('exit', () => {
      if (worker !== thread) return;
      worker = undefined;
      settle((question) => question.failed(why));
    });
    thread.unref();
    return thread;
  }

  /** What is under way hears nothing: its thread goes with it. */
  function giveUp(why: Error): void {
    const slow = worker;
    worker = undefined;
    void slow?.terminate();
    settle((question) => question.failed(why));
  }

  function tooSlow(): void {
    const text = `the photo was given up after ${Math.round(most_ms / 1000)} s; send a smaller one, or a smaller part of the surface`;
    giveUp(new Unanswered('too slow', text));
  }

  function stopped(question: Question, why: Error): void {
    if (question === now) {
      giveUp(why);
      return;
    }
    const at = waiting.indexOf(question);
    if (at < 0) return;
    waiting.splice(at, 1);
    question.failed(why);
  }

  function next(): void {
    if (now || waiting.length === 0) return;
    now = waiting.shift()!;
    clock = setTimeout(tooSlow, most_ms);
    clock.unref();
    worker ??= start();
    worker.postMessage({ kind: now.kind, ask: now.ask }, handedOver(now.ask));
  }

  return {
    ask: (kind, ask, stop) =>
      new Promise((done, failed) => {
        if (waiting.length >= mostWaiting)
          return failed(
            new Unanswered('many photos', `${waiting.length} photos are waiting already; send it again soon`),
          );
        const question: Question = { kind, ask, done: done as (answer: never) => void, failed };
        stop?.addEventListener('abort', () => stopped(question, stop.reason), { once: true });
        waiting.push(question);
        next();
      }),
    close: async () => {
      clearTimeout(clock);
      await worker?.terminate();
    },
  };
}
