import { parentPort, workerData } from 'node:worker_threads';
import { openSqlite, type SqliteStore } from '../../../adapters/store/sqlite.ts';
import type { WriteFailure, WriteQuestions } from '../../../adapters/store/sqlite-thread.ts';
import { Fault } from '../../../shop/store.ts';

type Question =
  | {
      [K in keyof WriteQuestions]: { number: number; kind: K; ask: WriteQuestions[K]['ask'] };
    }[keyof WriteQuestions]
  | { readonly kind: 'close' };

let opened: Promise<SqliteStore> | undefined;
/** A file that could not be opened is tried again with the next question. */
const store = (): Promise<SqliteStore> => {
  opened ??= openSqlite(workerData as string).catch((failure: unknown) => {
    opened = undefined;
    throw failure;
  });
  return opened;
};

async function answerTo(question: Exclude<Question, { kind: 'close' }>): Promise<unknown> {
  const { make, appendAll, keepKit } = await store();
  if (question.kind === 'make') return make(...question.ask);
  if (question.kind === 'keepKit') return keepKit(question.ask);
  return appendAll(question.ask);
}

function failureOf(failure: unknown): WriteFailure {
  const message = String((failure as Error)?.message ?? failure);
  return failure instanceof Fault ? { message, fault: failure.code } : { message };
}

parentPort!.on('message', (question: Question) => {
  if (question.kind === 'close') {
    void (opened ?? Promise.resolve(undefined))
      .then((one) => one?.close())
      .finally(() => parentPort!.close());
    return;
  }
  answerTo(question).then(
    (answer) => parentPort!.postMessage({ number: question.number, answer }),
    (failure: unknown) => parentPort!.postMessage({ number: question.number, failure: failureOf(failure) }),
  );
});
