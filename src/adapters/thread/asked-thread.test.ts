import { Worker } from 'node:worker_threads';
import { expect, it } from 'vitest';
import { askedThread } from './asked-thread.ts';

/** A thread that does what it is told: answers with how many it has heard, hangs, dies, or refuses. */
const script = new URL(
  `data:text/javascript,${encodeURIComponent(`
import { parentPort } from 'node:worker_threads';
let heard = 0;
parentPort.on('message', ({ number, kind, ask }) => {
  if (kind === 'close') return parentPort.close();
  heard += 1;
  if (ask === 'hang') for (;;);
  if (ask === 'die') process.exit(3);
  parentPort.postMessage(ask === 'refuse' ? { number, failure: 'no' } : { number, answer: ask + ' ' + heard });
});`)}`,
);
const thread = () =>
  askedThread<{ say: { ask: string; answer: string } }>({
    start: () => new Worker(script),
    ended: 'the thread ended',
    failureOf: (failure) => new Error(failure),
    keepsAlive: true,
  });

it('answers each by its number, and a refusal comes over', async () => {
  const { ask, finish } = thread();
  const refused = ask('say', 'refuse').catch((failure: Error) => failure.message);
  expect(await Promise.all([ask('say', 'a'), ask('say', 'b')])).toEqual(['a 2', 'b 3']);
  expect(await refused).toBe('no');
  await finish();
});

it('one that is stopped ends with its thread, and what else was asked is answered by the next', async () => {
  const { ask, finish } = thread();
  const wish = new AbortController();
  const stopped = ask('say', 'hang', wish.signal).catch((failure: unknown) => failure);
  const other = ask('say', 'a');
  const why = new Error('wanted no longer');
  wish.abort(why);
  expect(await stopped).toBe(why);
  expect(await other).toBe('a 1');
  await expect(ask('say', 'b', wish.signal)).rejects.toBe(why);
  expect(await ask('say', 'c')).toBe('c 2');
  await finish();
});

it('one whose answer came is not stopped by a late wish', async () => {
  const { ask, finish } = thread();
  const wish = new AbortController();
  expect(await ask('say', 'a', wish.signal)).toBe('a 1');
  wish.abort();
  expect(await ask('say', 'b')).toBe('b 2');
  await finish();
});

it('one that dies takes what it was asked with it; the next question has another', async () => {
  const { ask, end } = thread();
  const both = await Promise.allSettled([ask('say', 'die'), ask('say', 'a')]);
  expect(both.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  expect(await ask('say', 'b')).toBe('b 1');
  await end();
});
