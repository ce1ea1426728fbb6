import { describe, expect, it } from 'vitest';
import { BadInput } from '../../contract/refusal.ts';
import { Fault } from '../../shop/store.ts';
import { photosOnThread } from './photo-thread.ts';

/** A thread that does what the hash says: answers, refuses, dies, or never comes back. */
const script = new URL(
  `data:text/javascript,${encodeURIComponent(`
import { parentPort, workerData } from 'node:worker_threads';
let asked = 0;
parentPort.on('message', ({ kind, ask }) => {
  asked += 1;
  const answer = () => parentPort.postMessage({ answer: { kind, folder: workerData, asked } });
  if (ask.hash === 'hang') for (;;);
  else if (ask.hash === 'die') process.exit(3);
  else if (ask.hash === 'throw') throw new Error('broken');
  else if (ask.hash === 'refuse') parentPort.postMessage({ failure: { message: 'no', issues: [{ path: 'photo', found: 'text', expected: 'a photo' }] } });
  else if (ask.hash === 'full') parentPort.postMessage({ failure: { message: 'the disk is full', fault: 'disk full' } });
  else setTimeout(answer, 5);
});`)}`,
);
const size = { length_mm: 100, width_mm: 50 };
const asking = (hash: string) => ({ hash, size });

describe('photos on a thread of their own', () => {
  it('answers one at a time, in order, with the folder it was given', async () => {
    const { ask, close } = photosOnThread(script, '/photos');
    const answers = await Promise.all(['a', 'b', 'c'].map((hash) => ask('corners', asking(hash))));
    expect(answers).toEqual([1, 2, 3].map((asked) => ({ kind: 'corners', folder: '/photos', asked })));
    await close();
  });

  it('a refusal and a fault come over as what they are', async () => {
    const { ask, close } = photosOnThread(script, '');
    const refused = await ask('corners', asking('refuse')).catch((failure: unknown) => failure);
    expect(refused).toBeInstanceOf(BadInput);
    expect((refused as BadInput).issues).toEqual([{ path: 'photo', found: 'text', expected: 'a photo' }]);
    const fault = await ask('corners', asking('full')).catch((failure: unknown) => failure);
    expect(fault).toBeInstanceOf(Fault);
    expect((fault as Fault).code).toBe('disk full');
    await close();
  });

  it('a thread that dies takes one question with it, and the next is answered', async () => {
    const { ask, close } = photosOnThread(script, '');
    const died = ask('corners', asking('die')).catch((failure: Error) => failure.message);
    const thrown = ask('corners', asking('throw')).catch((failure: Error) => failure.message);
    const next = ask('corners', asking('a'));
    expect(await died).toBe('the photo thread ended');
    expect(await thrown).toBe('broken');
    expect(await next).toMatchObject({ asked: 1 });
    await close();
  });

  it('a photo that takes too long is given up with its thread, and the next is answered', async () => {
    const { ask, close } = photosOnThread(script, '', { waiting: 8, most_ms: 300 });
    const slow = ask('corners', asking('hang')).catch((failure: unknown) => failure);
    const next = ask('corners', asking('a'));
    expect(await slow).toMatchObject({ name: 'Unanswered', code: 'too slow' });
    expect(await next).toMatchObject({ asked: 1 });
    await close();
  });

  it('more than can wait are told so at once', async () => {
    const { ask, close } = photosOnThread(script, '', { waiting: 2, most_ms: 60_000 });
    const taken = ['a', 'b', 'c'].map((hash) => ask('corners', asking(hash)));
    await expect(ask('corners', asking('d'))).rejects.toMatchObject({ code: 'many photos' });
    expect(await Promise.all(taken)).toHaveLength(3);
    await close();
  });

  it('one that is stopped, under way or waiting, is worked on no longer, and the next is answered', async () => {
    const { ask, close } = photosOnThread(script, '');
    const wish = new AbortController();
    const stopped = ['hang', 'b'].map((hash) =>
      ask('corners', asking(hash), wish.signal).catch((failure: unknown) => failure),
    );
    const next = ask('corners', asking('a'));
    const why = new Error('wanted no longer');
    wish.abort(why);
    expect(await Promise.all(stopped)).toEqual([why, why]);
    expect(await next).toMatchObject({ asked: 1 });
    await close();
  });
});
