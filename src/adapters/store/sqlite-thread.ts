import { Worker } from 'node:worker_threads';
import { Fault, type Kept, type Store } from '../../shop/store.ts';
import { gathered } from './gathered.ts';
import type { Appended } from './job-rows.ts';

/** What the writing thread is asked; each is one transaction, on the disk when it is answered. */
export interface WriteQuestions {
  readonly append: { readonly ask: readonly Appended[]; readonly answer: readonly Kept[] };
  readonly make: { readonly ask: Parameters<Store['make']>; readonly answer: Kept };
  readonly keepKit: { readonly ask: Parameters<Store['keepKit']>[0]; readonly answer: Kept };
}

/** What went wrong on the thread, as data. */
export interface WriteFailure {
  readonly message: string;
  readonly fault?: Fault['code'];
}

interface Waiting {
  readonly done: (answer: never) => void;
  readonly failed: (why: Error) => void;
}

/**
 * A workshop whose writes wait for the disk on a thread of their own: requests go on being read and answered meanwhile, and entries
 * that come while others are on their way to the disk go there together. Reads stay here; `close` ends the thread and not the store.
 * @param store   the same file, open for reading
 * @param script  the thread's program; it is told the file as its workerData
 */
export function writingOnThread(store: Store, file: string, script: URL): Store {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let worker: Worker | undefined;

  function start(): Worker {
    const thread = new Worker(script, { workerData: file });
    thread.on(
      'message',
      ({ number, answer, failure }: { number: number; answer: never; failure?: WriteFailure }) => {
        const asked = waiting.get(number);
        waiting.delete(number);
        if (waiting.size === 0) thread.unref();
        if (!failure) asked?.done(answer);
        else
          asked?.failed(
            failure.fault ? new Fault(failure.fault, failure.message) : new Error(failure.message),
          );
      },
    );
    let why = new Error('the writing thread ended');
    thread.on('error', (failure) => {
      why = failure as Error;
    });
    // Whether the disk had what it was asked last is not known: whoever sends again is told, for the same entry is kept once.
    thread.on('exit', () => {
      worker = undefined;
      for (const { failed } of waiting.values()) failed(why);
      waiting.clear();
    });
    return thread;
  }
  const ask = <K extends keyof WriteQuestions>(
    kind: K,
    asked: WriteQuestions[K]['ask'],
  ): Promise<WriteQuestions[K]['answer']> =>
    new Promise((done, failed) => {
      last += 1;
      waiting.set(last, { done, failed });
      worker ??= start();
      // It keeps the process alive while something is under way, and no longer.
      worker.ref();
      worker.postMessage({ number: last, kind, ask: asked });
    });
  const append = gathered((all: readonly Appended[]) => ask('append', all));

  return {
    ...store,
    make: (...asked) => ask('make', asked),
    append: (job, entry) => append({ job, entry }),
    keepKit: (entries) => ask('keepKit', entries),
    close: async () => {
      const ends = worker && new Promise((done) => worker!.once('exit', done));
      worker?.postMessage({ kind: 'close' });
      await ends;
    },
  };
}
