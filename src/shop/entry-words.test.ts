import { expect, it } from 'vitest';
import type { Deed, Entry } from '../core/ledger/entry.ts';
import { entryWords } from './entry-words.ts';

const entry = (id: string, deed: Deed): Entry => ({ ...deed, id, at: '2031-11-25T14:32:00Z', seq: 3 });
const plan = { setups: [] };

it('an entry is told as a rebuilder would, and an undo says what it struck', () => {
  const pass = entry('p', { kind: 'pass made', round: 3, pass: 2, zones: { flat: [1, 0, 1], rear: [1] } });
  const level = entry('l', {
    kind: 'level read',
    round: 3,
    setup: 'across',
    repeat: 1,
    record: {},
    reading: { typed: '+7', value: 7 },
  });
  const undo = entry('u', { kind: 'undone', entry: 'p' });
  const again = entry('v', { kind: 'undone', entry: 'u' });
  const all = [pass, level, undo, again];
  expect(all.map((one) => entryWords(one, plan, all))).toEqual([
    'Pass 2 on 3 zones',
    'across: +7 µm/m, repeat 1',
    'Undone: Pass 2 on 3 zones',
    'Undone: Undone: Pass 2 on 3 zones',
  ]);
});

it('a level typed without its unit says what it was taken as: 0.01 may be mm/m or µm/m', () => {
  const level = (typed: string, value: number) =>
    entry('l', { kind: 'level read', round: 1, setup: 'across', record: {}, reading: { typed, value } });
  const told = (typed: string, value: number) => entryWords(level(typed, value), plan, []);
  expect(told('0.01', 10)).toBe('across: 0.01, taken as +10 µm/m');
  expect(told('-0.01', -0.01)).toBe('across: −0.01 µm/m');
  expect(told('-0.005 mm/m', -5)).toBe('across: −0.005 mm/m');
});
