import { describe, expect, it } from 'vitest';
import { conflicts } from './conflicts.ts';
import type { Deed, Entry } from './entry.ts';
import { liveEntries } from './job.ts';

const level = (value: number, round = 3): Deed => ({
  kind: 'level read',
  round,
  setup: 'across',
  record: {},
  reading: { typed: String(value), value },
});

/** A ledger from deeds with where each was written, and the place its writer knew of. */
const ledger = (...rows: [Deed, on?: string, knowing?: number][]): Entry[] =>
  rows.map(([deed, on, knowing], k) => ({
    ...deed,
    id: `e${k + 1}`,
    at: '2031-11-25T14:32:00Z',
    seq: k + 1,
    ...(on === undefined ? {} : { written: { on, knowing: knowing! } }),
  }));
const ids = (entries: Entry[]) =>
  conflicts(liveEntries(entries)).map((one) => one.entries.map((entry) => entry.id));

describe('two hands on one job', () => {
  it('who measured the same thing without knowing of each other are told, both readings kept', () => {
    expect(ids(ledger([level(1), 'a', 0], [level(2), 'b', 0]))).toEqual([['e1', 'e2']]);
    expect(
      ids(ledger([{ kind: 'round closed', round: 3 }, 'a', 0], [{ kind: 'round closed', round: 3 }, 'b', 0])),
    ).toEqual([['e1', 'e2']]);
  });
  it('whoever knew what stood there measured again on purpose', () => {
    expect(ids(ledger([level(1), 'a', 0], [level(2), 'b', 1]))).toEqual([]);
  });
  it('one phone that was out of reach does not contradict itself', () => {
    expect(ids(ledger([level(1), 'a', 0], [level(2), 'a', 0]))).toEqual([]);
    expect(ids(ledger([level(1), 'a', 0], [level(2), 'b', 0], [level(3), 'b', 0]))).toEqual([['e1', 'e3']]);
  });
  it('other rounds, set-ups and pads are other things', () => {
    expect(ids(ledger([level(1, 2), 'a', 0], [level(2, 3), 'b', 0]))).toEqual([]);
    const print = (pad: string): Deed => ({ kind: 'print read', round: 1, share: { [pad]: [0.5] } });
    expect(ids(ledger([print('flat'), 'a', 0], [print('vee'), 'b', 0]))).toEqual([]);
    expect(ids(ledger([print('flat'), 'a', 0], [print('flat'), 'b', 0]))).toEqual([['e1', 'e2']]);
  });
  it('is settled when a person strikes either, and open again when that is undone', () => {
    const both = [level(1), 'a', 0] as [Deed, string, number];
    const other = [level(2), 'b', 0] as [Deed, string, number];
    for (const entry of ['e1', 'e2'])
      expect(ids(ledger(both, other, [{ kind: 'undone', entry }, 'c', 2]))).toEqual([]);
    expect(
      ids(ledger(both, other, [{ kind: 'undone', entry: 'e1' }], [{ kind: 'undone', entry: 'e3' }])),
    ).toEqual([['e1', 'e2']]);
  });
  it('is settled when somebody who knew of both measures again', () => {
    expect(ids(ledger([level(1), 'a', 0], [level(2), 'b', 0], [level(3), 'a', 2]))).toEqual([]);
  });
  it('entries of a time before this was told contradict nobody', () => {
    expect(ids(ledger([level(1)], [level(2)]))).toEqual([]);
  });
});
