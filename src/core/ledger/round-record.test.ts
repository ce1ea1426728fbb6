import { describe, expect, it } from 'vitest';
import { soFar } from '../../shop/bench/so-far.ts';
import type { Deed, Entry } from './entry.ts';
import { lastTurned, roundNow, roundRecord } from './round-record.ts';

const entries = (...deeds: Deed[]): Entry[] =>
  deeds.map((deed, i) => ({ ...deed, id: `e${i + 1}`, at: `2031-11-25T14:${10 + i}:00Z`, seq: i + 1 }));

const level = (round: number, value: number, repeat?: number): Deed => ({
  kind: 'level read',
  round,
  setup: 'across',
  ...(repeat === undefined ? {} : { repeat }),
  record: {},
  reading: { typed: String(value), value },
});

describe('a round as the ledger has it', () => {
  it('a reading taken again replaces, a repeat stands beside', () => {
    const record = roundRecord(entries(level(1, 4), level(1, 7), level(1, 9, 1), level(2, 11)), 1);
    expect(record.taken.across!.map((one) => [one.repeat, one.readings[0]!.value])).toEqual([
      [0, 7],
      [1, 9],
    ]);
  });
  it('knows the round, how the part lies, its print and its passes with their entries', () => {
    const live = entries(
      { kind: 'part turned over', round: 1, how: 'front to back' },
      { kind: 'round closed', round: 1 },
      { kind: 'print read', round: 2, share: { flat: [0.7, 0.25] }, tapped: { flat: ['heavy', 'faint'] } },
      { kind: 'print read', round: 2, share: { flat: [0.6, 0.2] } },
      { kind: 'pass made', round: 2, pass: 1, zones: { flat: [1, 0] } },
    );
    expect(roundNow(live)).toBe(2);
    expect(lastTurned(live)).toBe('front to back');
    const record = roundRecord(live, 2);
    expect(record.print).toEqual({ share: { flat: [0.6, 0.2] }, tapped: {} });
    expect(record.passes.map((pass) => pass.entry)).toEqual(['e5']);
    expect(record.turned).toBeUndefined();
    expect(soFar(record, { setups: [] })).toMatchObject({
      round: 2,
      printed: true,
      lifted: false,
      passes_made: 1,
    });
  });
});
