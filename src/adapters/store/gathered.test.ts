import { expect, it } from 'vitest';
import { Fault } from '../../shop/store.ts';
import { gathered } from './gathered.ts';
import { openSqlite } from './sqlite.ts';

it('what comes together is written together, each with its own answer, and later ones later', async () => {
  const writes: number[][] = [];
  const keep = gathered(async (all: readonly number[]) => {
    writes.push([...all]);
    return all.map((one) => one * 10);
  });
  expect(await Promise.all([keep(1), keep(2), keep(3)])).toEqual([10, 20, 30]);
  expect(await keep(4)).toBe(40);
  expect(writes).toEqual([[1, 2, 3], [4]]);
});

it('one that cannot be kept keeps back no other', async () => {
  const keep = gathered(async (all: readonly number[]) => {
    if (all.includes(2)) throw new Error('two');
    return all;
  });
  expect(await Promise.allSettled([keep(1), keep(2), keep(3)])).toMatchObject([
    { value: 1 },
    { reason: new Error('two') },
    { value: 3 },
  ]);
});

it('what comes while a write is under way goes with the next, all of it', async () => {
  const flights: { readonly all: readonly number[]; readonly land: () => void }[] = [];
  const keep = gathered(
    (all: readonly number[]) =>
      new Promise<readonly number[]>((done) => {
        flights.push({ all, land: () => done(all) });
      }),
  );
  const first = keep(1);
  await expect.poll(() => flights.length).toBe(1);
  const later = [keep(2), keep(3)];
  expect(flights).toHaveLength(1);
  flights[0]!.land();
  expect(await first).toBe(1);
  await expect.poll(() => flights.length).toBe(2);
  expect(flights[1]!.all).toEqual([2, 3]);
  flights[1]!.land();
  expect(await Promise.all(later)).toEqual([2, 3]);
});

it('a full disk is told to all at once, and asked no second time', async () => {
  let writes = 0;
  const keep = gathered(async (_all: readonly number[]): Promise<readonly number[]> => {
    writes += 1;
    throw new Fault('disk full', 'the disk is full');
  });
  const answers = await Promise.allSettled([keep(1), keep(2), keep(3)]);
  expect(answers.map((one) => one.status === 'rejected' && one.reason.code)).toEqual(
    Array(3).fill('disk full'),
  );
  expect(writes).toBe(1);
});

it('entries written at once stand in the order they came, one that comes twice is kept once', async () => {
  const store = await openSqlite(':memory:');
  const at = '2031-11-25T14:32:00Z';
  const demo = JSON.parse((await import('node:fs')).readFileSync('demo/saddle.job.json', 'utf8'));
  const { seq: last } = (await store.make('job', demo.entries)) as { seq: number };
  const note = (id: string) => store.append('job', { kind: 'note', text: id, id, at });
  const kept = await Promise.all([note('a'), note('b'), note('a'), note('c')]);
  expect(kept).toEqual([
    { kind: 'kept', seq: last + 1, again: false },
    { kind: 'kept', seq: last + 2, again: false },
    { kind: 'kept', seq: last + 1, again: true },
    { kind: 'kept', seq: last + 3, again: false },
  ]);
  expect((await store.entries('job', last))?.map((entry) => entry.id)).toEqual(['a', 'b', 'c']);
  expect(await store.entries('job', last + 3)).toEqual([]);
  expect(await store.entries('none', 3)).toBeUndefined();
  await store.close();
});
