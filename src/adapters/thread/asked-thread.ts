import type { Worker } from 'node:worker_threads';

/** What a thread is asked, by kind. */
type Asks<Q> = { readonly [K in keyof Q]: { readonly ask: unknown; readonly answer: unknown } };

/** What a thread sends back: the number of the question, and the answer or what went wrong, as data. */
export interface Answered<Failure> {
  readonly number: number;
  readonly answer?: unknown;
  readonly failure?: Failure;
}

interface Waiting {
  readonly kind: string;
  readonly ask: unknown;
  readonly done: (answer: never) => void;
  readonly failed: (why: Error) => void;
}

export interface AskedThread<Q extends Asks<Q>> {
  /**
   * @param stop  whoever asked wants it no longer: the thread is ended, for a sum under way hears nothing, and what else it was
   *              asked is asked of the next; only for questions that change nothing
   */
  ask<K extends keyof Q & string>(kind: K, ask: Q[K]['ask'], stop?: AbortSignal): Promise<Q[K]['answer']>;
  /** Lets it finish what it was asked; it is sent `{ kind: 'close' }` and ends itself. */
  finish(): Promise<void>;
  /** Ends it at once; what it was asked fails. */
  end(): Promise<void>;
}

/**
 * Questions answered on a thread of their own, which is started by the first. One that dies takes what it was asked with it; the
 * next question starts another, so that a script that cannot run at all fails once a question and not in a loop.
 * @param about.start       makes the thread
 * @param about.ended       what those hear whose thread ended without a word
 * @param about.failureOf   an error from what the thread sent of one
 * @param about.keepsAlive  whether the process waits for what is under way; without, the thread never keeps it
 */
export function askedThread<Q extends Asks<Q>, Failure = string>(about: {
  readonly start: () => Worker;
  readonly ended: string;
  readonly failureOf: (failure: Failure) => Error;
  readonly keepsAlive: boolean;
}): AskedThread<Q> {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let worker: Worker | undefined;

  function start(): Worker {
    const thread = about.start();
    let why = new Error(about.ended);
    thread.on('message', ({ number, answer, failure }: Answered<Failure>) => {
      const asked = waiting.get(number);
      waiting.delete(number);
      if (waiting.size === 0) thread.unref();
      if (failure === undefined) asked?.done(answer as never);
      else asked?.failed(about.failureOf(failure));
    });
    thread.on('error', (failure) => {
      why = failure as Error;
    });
    thread.on('exit', () => {
      // A thread that was stopped has been followed by another, which has its questions.
      if (worker !== thread) return;
      worker = undefined;
      for (const { failed } of waiting.values()) failed(why);
      waiting.clear();
    });
    if (!about.keepsAlive) thread.unref();
    return thread;
  }

  function send(number: number, { kind, ask }: Waiting): void {
    worker ??= start();
    if (about.keepsAlive) worker.ref();
    worker.postMessage({ number, kind, ask });
  }

  function stopped(number: number, why: unknown): void {
    const asked = waiting.get(number);
    if (!asked) return;
    waiting.delete(number);
    asked.failed(why as Error);
    const stops = worker;
    worker = undefined;
    void stops?.terminate();
    for (const [other, question] of waiting) send(other, question);
  }

  return {
    ask: (kind, ask, stop) =>
      new Promise((done, failed) => {
        if (stop?.aborted) return failed(stop.reason);
        last += 1;
        const number = last;
        const hears = () => stopped(number, stop!.reason);
        stop?.addEventListener('abort', hears, { once: true });
        const heard =
          <T>(then: (value: T) => void) =>
          (value: T) => {
            stop?.removeEventListener('abort', hears);
            then(value);
          };
        const asked: Waiting = { kind, ask, done: heard(done) as Waiting['done'], failed: heard(failed) };
        waiting.set(number, asked);
        send(number, asked);
      }),
    finish: async () => {
      const thread = worker;
      const ends = thread && new Promise((done) => thread.once('exit', done));
      thread?.postMessage({ kind: 'close' });
      await ends;
    },
    end: async () => {
      await worker?.terminate();
    },
  };
}
