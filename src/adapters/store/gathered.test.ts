import { expect, it } from 'vitest';
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
