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
  it('a photo stands beside the taps: the last word on a zone wins, and what it cannot tell it leaves', () => {
    const photo = (shares: (number | null)[], round = 1): Deed => ({
      kind: 'print photographed',
      round,
      pad: 'flat',
      photo: 'cd'.repeat(32),
      corners: [
        { x: 0, y: 0 },
        { x: 900, y: 0 },
        { x: 900, y: 300 },
        { x: 0, y: 300 },
      ],
      size: { length_mm: 290, width_mm: 55 },
      shares,
      density_per_25mm: 14,
      bearing_pct: 21,
      confidence: 0.75,
      warnings: ['glare'],
    });
    const tap: Deed = {
      kind: 'print read',
      round: 1,
      share: { flat: [0.7, 0.25], front: [0.1, 0.2, 0.3] },
      tapped: { flat: ['heavy', 'faint'], front: ['none', 'faint', 'faint'] },
    };
    const printOf = (...deeds: Deed[]) => roundRecord(entries(...deeds), 1).print;
    // A zone that shows 38 % blue in a photo bears all over.
    expect(printOf(tap, photo([0.4, null]))).toEqual({
      share: { flat: [1, 0.25], front: [0.1, 0.2, 0.3] },
      tapped: { front: ['none', 'faint', 'faint'] },
    });
    expect(printOf(photo([0.4, null]), tap)).toEqual({ share: tap.share, tapped: tap.tapped });
    expect(printOf(tap, photo([null, null]))).toEqual({ share: tap.share, tapped: tap.tapped });
    // Half of a pad is no print of it until the other half is known.
    expect(printOf(photo([0.4, null]))).toBeUndefined();
    expect(printOf(photo([0.4, null]), photo([null, 0.19]))!.share).toEqual({ flat: [1, 0.5] });
    expect(printOf(photo([0.4, 0.3], 2))).toBeUndefined();
    const { photos } = roundRecord(entries(tap, photo([0.4, null]), photo([0.5, 0.2])), 1);
    expect(photos.map((one) => [one.entry, one.at, one.shares, one.warnings])).toEqual([
      ['e2', '2031-11-25T14:11:00Z', [0.4, null], ['glare']],
      ['e3', '2031-11-25T14:12:00Z', [0.5, 0.2], ['glare']],
    ]);
    expect(Object.keys(photos[0]!)).not.toContain('seq');
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
