import { describe, expect, it } from 'vitest';
import type { Entry } from '../../core/ledger/entry.ts';
import { roundRecord } from '../../core/ledger/round-record.ts';
import { printOf, withZone } from '../measure/blue.ts';
import { fromPhoto, laidOver, photoShares, printBefore, tappedPads } from './photo-shares.ts';

const pads = [
  { name: 'flat', zones: 3 },
  { name: 'flank', zones: 2 },
];
const [flat] = pads as [(typeof pads)[0], (typeof pads)[1]];
const at = '2031-11-25T14:32:00+01:00';
const corner = { x: 0, y: 0 };
const photo = (seq: number, shares: readonly (number | null)[]): Entry => ({
  kind: 'print photographed',
  id: `p${seq}`,
  at,
  seq,
  round: 1,
  pad: 'flat',
  photo: 'a'.repeat(64),
  corners: [corner, corner, corner, corner],
  size: { length_mm: 100, width_mm: 30 },
  shares,
  density_per_25mm: 12,
  bearing_pct: 30,
  confidence: 0.8,
  warnings: [],
});
const tapped = (seq: number, share: Record<string, number[]>): Entry => ({
  kind: 'print read',
  id: `t${seq}`,
  at,
  seq,
  round: 1,
  share,
});

describe('a print of taps and photos', () => {
  it('without photos nothing stands before the taps', () => {
    expect(printBefore(roundRecord([tapped(1, { flat: [0, 0, 0] })], 1), pads)).toEqual({});
  });
  it('the last photo that could tell of a zone tells of it', () => {
    const record = roundRecord([photo(1, [0.095, 0.2, 0.3]), photo(2, [null, 0.19, 0.38])], 1);
    expect(photoShares(record.photos, flat)).toEqual([0.25, 0.5, 1]);
    expect(fromPhoto(record, flat)).toEqual([true, true, true]);
  });
  it('zones that no photo could tell are left to tap, and only they', () => {
    const record = roundRecord([photo(1, [0.1, null, 0.3])], 1);
    const draft = laidOver(printBefore(record, pads), {}, pads);
    expect(printOf(draft, pads).left).toBe(3);
    expect(fromPhoto(record, flat)).toEqual([true, false, true]);
  });
  it('a tap after the photo counts for its zone, and the other zones stay the photo’s', () => {
    const live = [photo(1, [0.095, 0.2, 0.19])];
    const now = withZone({}, pads, { pad: 'flat', zone: 1 }, { word: 'heavy' });
    const whole = laidOver(printBefore(roundRecord(live, 1), pads), now, pads);
    expect(printOf(whole, pads).share).toEqual({ flat: [0.25, 0.7, 0.5] });
    expect(printOf(whole, pads).tapped).toEqual({});
    expect(tappedPads(now, pads)).toEqual(['flat']);
    const after = roundRecord([...live, tapped(2, { flat: [0.25, 0.7, 0.5] })], 1);
    expect(fromPhoto(after, flat)).toEqual([true, false, true]);
  });
});
