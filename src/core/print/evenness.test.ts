import { describe, expect, it } from 'vitest';
import { type Bits, bitsOf, noBits } from './bits.ts';
import { evennessOf } from './evenness.ts';
import type { Cell } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';

const [width, height] = [100 * rasterPxPerMm, 30 * rasterPxPerMm];
const free = noBits(width, height);
const cell = (count: number, bearing_pct: number, more: Partial<Cell> = {}): Cell => ({
  col: 0,
  row: 0,
  count,
  bearing_pct,
  partial: false,
  net_mm2: 625,
  unreadable_pct: 0,
  ...more,
});

/** Contact where `is` says so of places in mm. */
const contact = (is: (x: number, y: number) => boolean): Bits =>
  bitsOf(
    Uint8Array.from({ length: width * height }, (_, o) =>
      is(((o % width) + 0.5) / rasterPxPerMm, (Math.floor(o / width) + 0.5) / rasterPxPerMm) ? 1 : 0,
    ),
    width,
    height,
  );

describe('evenness', () => {
  it('is of whole readable squares alone', () => {
    const none = contact(() => false);
    const found = evennessOf(
      [
        cell(10, 20),
        cell(14, 30),
        cell(0, 0),
        cell(99, 99, { partial: true }),
        cell(0, 0, { unreadable_pct: 6 }),
      ],
      none,
      free,
    );
    // Counts 10, 14, 0: mean 8, variance 52. Shares 20, 30, 0: mean 16.67, sd 15.28.
    expect(found.dispersion).toBeCloseTo(52 / 8, 10);
    expect(found.bearing_cv).toBeCloseTo(Math.sqrt(700 / 3) / (50 / 3), 10);
    expect(found.empty_squares).toBe(1);
  });

  it('says nothing of spread from fewer than two squares or from none that bear', () => {
    const none = contact(() => false);
    for (const cells of [[], [cell(3, 9)], [cell(0, 0), cell(0, 0)]]) {
      const found = evennessOf(cells, none, free);
      expect(found.dispersion).toBeUndefined();
      expect(found.bearing_cv).toBeUndefined();
    }
  });

  it('finds the longest bare run along the length', () => {
    const run = (is: (x: number, y: number) => boolean) => evennessOf([], contact(is), free).longest_bare_mm;
    expect(run(() => false)).toBe(100);
    expect(run(() => true)).toBe(0);
    expect(run((x) => x < 20 || x > 55)).toBeCloseTo(35, 1);
    expect(run((x, y) => (y < 15 ? x % 10 < 5 : x % 20 < 8))).toBeCloseTo(12, 1);
  });

  it('does not end a bare run at a groove, nor count the groove', () => {
    const groove = Uint8Array.from({ length: width * height }, (_, o) => {
      const x = (o % width) / rasterPxPerMm;
      return x >= 30 && x < 40 ? 1 : 0;
    });
    const is = contact((x) => x < 20 || x > 55);
    expect(evennessOf([], is, bitsOf(groove, width, height)).longest_bare_mm).toBeCloseTo(25, 1);
  });

  it('tells the trend from end to end and edge to edge, and none where it is even', () => {
    const trend = (is: (x: number, y: number) => boolean) => evennessOf([], contact(is), free);
    // Speckle whose share rises from 10 % at x = 0 to 50 % at x = L, then falls from edge to edge by 30.
    const speck = (x: number, y: number) => Math.abs((1e4 * Math.sin(91.7 * x + 317.3 * y)) % 1);
    const along = trend((x, y) => speck(x, y) < 0.1 + 0.4 * (x / 100));
    expect(Math.abs(along.along_pct - 40)).toBeLessThan(1.5);
    expect(Math.abs(along.across_pct)).toBeLessThan(1.5);
    const across = trend((x, y) => speck(x, y) < 0.5 - 0.3 * (y / 30));
    expect(Math.abs(across.across_pct + 30)).toBeLessThan(1.5);
    expect(Math.abs(across.along_pct)).toBeLessThan(1.5);
    expect(trend(() => true).along_pct).toBeCloseTo(0, 9);
    const all = bitsOf(new Uint8Array(width * height).fill(1), width, height);
    expect(
      evennessOf(
        [],
        contact(() => false),
        all,
      ),
    ).toMatchObject({ along_pct: 0, across_pct: 0 });
  });
});
