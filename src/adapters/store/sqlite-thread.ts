import { Worker } from 'node:worker_threads';
import { Fault, type Kept, type Store } from '../../shop/store.ts';
import { askedThread } from '../thread/asked-thread.ts';
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

/**
 * A workshop whose writes wait for the disk on a thread of their own: requests go on being read and answered meanwhile, and entries
 * that come while others are on their way to the disk go there together. Reads stay here; `close` ends the thread and not the store.
 * @param store   the same file, open for reading
 * @param script  the thread's program; it is told the file as its workerData
 */
export function writingOnThread(store: Store, file: string, script: URL): Store {
  // Whether the disk had what a thread that ended was asked last is not known: whoever sends again is told, for the same entry is
  // kept once.
  const thread = askedThread<WriteQuestions, WriteFailure>({
    start: () => new Worker(script, { workerData: file }),
    ended: 'the writing thread ended',
    failureOf: ({ fault, message }) => (fault ? new Fault(fault, message) : new Error(message)),
    keepsAlive: true,
  });
  const append = gathered((all: readonly Appended[]) => thread.ask('append', all));

  return {
    ...store,
    make: (...asked) => thread.ask('make', asked),
    append: (job, entry) => append({ job, entry }),
    keepKit: (entries) => thread.ask('keepKit', entries),
    close: thread.finish,
  };
}
