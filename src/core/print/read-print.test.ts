import { describe, expect, it } from 'vitest';
import {
  type DiscPicture,
  discRows,
  drawnDiscs,
  uprightCorners,
} from '../../../tests/fixture/drawn-discs.ts';
import { readPrint } from './read-print.ts';
import type { PrintInput } from './reading.ts';

const size = { length_mm: 75, width_mm: 50 };
const discs = discRows(size, 6.25, 1.3);

const read = (drawn: Partial<DiscPicture>, asked: Partial<PrintInput> = {}) => {
  const picture: DiscPicture = { size, discs, ...drawn };
  return readPrint({ ...drawnDiscs(picture), size: picture.size, ...asked });
};
const codes = (reading: ReturnType<typeof read>) => reading.warnings.map((one) => one.code);

/** Every number anywhere in it. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}

function expectSensible({ contact, ...reading }: ReturnType<typeof read>): void {
  const odd = numbersIn(reading).filter((one) => !Number.isFinite(one));
  expect(odd).toEqual([]);
  const shares = [reading.bearing_pct, ...reading.cells.flatMap((c) => [c.bearing_pct, c.unreadable_pct])];
  for (const share of shares) {
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(100);
  }
  expect(reading.trust.confidence).toBeGreaterThanOrEqual(0);
  expect(reading.trust.confidence).toBeLessThanOrEqual(1);
  expect(reading.cells.reduce((sum, c) => sum + c.count, 0)).toBe(reading.spots.length);
  expect(contact.is.length).toBe(contact.width * contact.height);
}

describe('a print read', () => {
  it('is the same discs through perspective, mirrored or turned: count, places, share', () => {
    const straight = read({});
    const tilted = {
      at: [
        { x: 60, y: 90 },
        { x: 880, y: 40 },
        { x: 930, y: 640 },
        { x: 30, y: 560 },
      ] as const,
      width_px: 970,
      height_px: 680,
    };
    const [a, b, c, d] = tilted.at;
    for (const at of [tilted.at, [d, c, b, a] as const, [c, d, a, b] as const]) {
      const seen = read({ corners: { ...tilted, at } });
      expectSensible(seen);
      expect(seen.spots.length).toBe(discs.length);
      expect(Math.abs(seen.bearing_pct - straight.bearing_pct)).toBeLessThan(0.4);
      for (const spot of seen.spots)
        expect(Math.min(...discs.map((p) => Math.hypot(p.x - spot.x_mm, p.y - spot.y_mm)))).toBeLessThan(0.1);
    }
  });

  it('gives each zone its share, and they agree with the whole', () => {
    const some = discs.filter((p) => p.x < 50);
    const { zone_shares = [], bearing_pct } = read({ discs: some }, { zones: 3 });
    expect(zone_shares.length).toBe(3);
    expect(zone_shares[2]).toBe(0);
    expect(zone_shares[0]! / zone_shares[1]!).toBeCloseTo(1, 1);
    const mean = zone_shares.reduce<number>((sum, one) => sum + (one ?? 0), 0) / 3;
    expect(100 * mean).toBeCloseTo(bearing_pct, 1);
  });

  it('leaves out what is excluded, to the last zone', () => {
    const all = read({}, { zones: 3, exclusions: [{ type: 'circle', x: 0, y: 25, r: 200 }] });
    expectSensible(all);
    expect(all.net_area_mm2).toBe(0);
    expect(all.zone_shares).toEqual([undefined, undefined, undefined]);
    expect(all.spots).toEqual([]);
  });

  it('counts the same under half the light and a warm lamp', () => {
    const dim = read({ metal: [118, 110, 98], blue: [31, 44, 86] });
    expect(dim.spots.length).toBe(discs.length);
    expect(codes(dim)).toEqual([]);
    expect(Math.abs(dim.bearing_pct - read({}).bearing_pct)).toBeLessThan(0.5);
  });
});

describe('a photo with little to read', () => {
  it.each([0, 0.5, 1, 3])('without blue is bare and says so, noise %d', (noise) => {
    const bare = read({ discs: [], noise });
    expectSensible(bare);
    expect(bare.spots).toEqual([]);
    expect(bare.bearing_pct).toBe(0);
    expect(codes(bare)).toContain('nearly bare');
  });

  it.each([0, 3])(
    'blue all over has nothing bare to tell it by: no figure without a warning, noise %d',
    (noise) => {
      const blue = read({ discs: [{ x: 40, y: 25, r: 200 }], noise });
      expectSensible(blue);
      expect(codes(blue)).toContain('nearly bare');
    },
  );

  it.each([0, 1, 60, 128, 246])('of one grey, %d, is bare', (grey) => {
    const one = read({ discs: [], metal: [grey, grey, grey], noise: 0 });
    expectSensible(one);
    expect(one.bearing_pct).toBe(0);
    expect(codes(one)).toEqual(['nearly bare']);
  });

  it('of white is glare and no more', () => {
    const white = read({ discs: [], metal: [255, 255, 255], noise: 0 });
    expectSensible(white);
    expect(white.net_area_mm2).toBe(0);
    expect(codes(white)).toEqual(['glare']);
    expect(white.trust.confidence).toBe(0);
  });

  it.each([0.02, 0.2, 1, 5])('of a surface of %d mm a side is read or bare', (side) => {
    const tiny = { length_mm: side, width_mm: side };
    const p = { x: side / 2, y: side / 2, r: side / 5 };
    expectSensible(read({ size: tiny, discs: [p], px_per_mm: side < 1 ? 300 : 10 }));
  });

  it('of a surface of 5 mm a side shows its one disc', () => {
    const one = read({ size: { length_mm: 5, width_mm: 5 }, discs: [{ x: 2.5, y: 2.5, r: 1 }] });
    expect(one.spots.length).toBe(1);
    expect(Math.hypot(one.spots[0]!.x_mm - 2.5, one.spots[0]!.y_mm - 2.5)).toBeLessThan(0.1);
  });
});

describe('corners outside the photo', () => {
  // 2 mm of the surface are cut off all round: 1 − (71 · 46) / (75 · 50) is 12.9 %.
  const cut = uprightCorners(size, 10, -20);

  it('are told by the area cut off, not as glare', () => {
    const seen = read({ corners: cut });
    expectSensible(seen);
    expect(codes(seen)).toEqual(['clipped']);
    expect(seen.warnings[0]!.text).toMatch(/^13 % of the surface/);
    expect(seen.trust.glare_pct).toBe(0);
    expect(seen.net_area_mm2 / (71 * 46)).toBeCloseTo(1, 1);
  });

  it('all of it is nothing to be trusted', () => {
    const at = cut.at.map(({ x, y }) => ({ x: x + 5000, y })) as unknown as typeof cut.at;
    const gone = read({ discs: [], corners: { ...cut, at } });
    expectSensible(gone);
    expect(codes(gone)).toEqual(['clipped']);
    expect(gone.trust.confidence).toBe(0);
  });
});
