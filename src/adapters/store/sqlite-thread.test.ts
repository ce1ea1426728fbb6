import { expect, it } from 'vitest';
import type { SentEntry } from '../../contract/entry.ts';
import { Fault, type Store } from '../../shop/store.ts';
import { writingOnThread } from './sqlite-thread.ts';

/** A thread that keeps nothing and says how many entries came with each write; it does what their text says. */
const script = new URL(
  `data:text/javascript,${encodeURIComponent(`
import { parentPort } from 'node:worker_threads';
parentPort.on('message', ({ number, kind, ask }) => {
  if (kind === 'close') return parentPort.close();
  const word = ask[0].entry.text;
  if (word === 'die') process.exit(3);
  const failure = word === 'full' ? { message: 'the disk is full', fault: 'disk full' } : undefined;
  setTimeout(() => parentPort.postMessage({ number, failure, answer: ask.map(() => ({ kind: 'kept', seq: ask.length, again: false })) }), 5);
});`)}`,
);
const note = (text: string): SentEntry => ({ kind: 'note', text, id: text, at: '2031-11-25T14:32:00Z' });
const reads = {} as Store;

it('what comes while a write is on its way goes with the next one, and each is answered', async () => {
  const store = writingOnThread(reads, 'none.db', script);
  const seqs: number[] = [];
  const write = async (text: string) => {
    const kept = await store.append('job', note(text));
    seqs.push(kept.kind === 'kept' ? kept.seq : 0);
  };
  const first = write('a');
  await new Promise((go) => setImmediate(go));
  await Promise.all([first, write('b'), write('c'), write('d')]);
  expect(seqs).toEqual([1, 3, 3, 3]);
  await store.close();
});

it('a full disk comes over as what it is; a thread that died has acknowledged nothing, and the next write gets another', async () => {
  const store = writingOnThread(reads, 'none.db', script);
  const full = await store.append('job', note('full')).catch((failure: unknown) => failure);
  expect(full).toBeInstanceOf(Fault);
  expect((full as Fault).code).toBe('disk full');
  await expect(store.append('job', note('die'))).rejects.toThrow();
  expect(await store.append('job', note('a'))).toMatchObject({ kind: 'kept' });
  await store.close();
});
