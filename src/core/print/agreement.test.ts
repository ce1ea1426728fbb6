import { describe, expect, it } from 'vitest';
import { agreementOf } from './agreement.ts';
import type { Cell } from './reading.ts';
import { readingDoubt } from './reading-doubt.ts';

const cell = (col: number, count: number, more: Partial<Cell> = {}): Cell => ({
  col,
  row: 0,
  count,
  bearing_pct: 30,
  partial: false,
  net_mm2: 625,
  unreadable_pct: 0,
  ...more,
});
const reading = (counts: readonly number[], bearing_pct = 30, warnings: readonly unknown[] = []) => {
  const cells = counts.map((count, col) => cell(col, count));
  const many = counts.reduce((sum, one) => sum + one, 0);
  const spots = Array.from({ length: many }, () => ({ x_mm: 0, y_mm: 0, area_mm2: 1, burnished: 0 }));
  const asRead = { cells, spots, bearing_pct, density_per_25mm: many / counts.length, warnings };
  return { ...asRead, doubt: readingDoubt(asRead) };
};

describe('the doubt of a reading', () => {
  it('is a few hundredths of the figures on a sound photo, and more where the photo is warned of', () => {
    const sound = reading([14, 15, 13, 14, 15, 13]).doubt;
    const warned = reading([14, 15, 13, 14, 15, 13], 30, ['glare']).doubt;
    expect(sound.density_per_25mm / 14).toBeLessThan(0.05);
    expect(sound.bearing_pct).toBeCloseTo(Math.hypot(0.1, 0.75), 12);
    expect(warned.density_per_25mm).toBeGreaterThan(sound.density_per_25mm);
    expect(warned.bearing_pct).toBeGreaterThan(sound.bearing_pct);
  });

  it('is never none: a bare print may hide a spot', () => {
    const bare = reading([0, 0]).doubt;
    expect(bare.bearing_pct).toBeGreaterThan(0);
    expect(bare.square_count).toBeGreaterThan(0);
  });
});

describe('two photos of the same print', () => {
  const first = reading([14, 15, 13, 14, 15, 13]);

  it('agree with themselves, and within their doubt', () => {
    expect(agreementOf(first, first)).toMatchObject({ agrees: true, squares: 6, squares_apart: [] });
    expect(agreementOf(first, reading([15, 14, 13, 15, 14, 13], 30.9)).agrees).toBe(true);
  });

  it('do not agree when one bears more, or when squares were swapped', () => {
    expect(agreementOf(first, reading([14, 15, 13, 14, 15, 13], 35)).agrees).toBe(false);
    const swapped = agreementOf(reading([5, 25, 5, 25, 14, 14]), reading([25, 5, 25, 5, 14, 14]));
    expect(swapped.agrees).toBe(false);
    expect(swapped.squares_apart).toEqual([
      { col: 0, row: 0, first: 5, second: 25 },
      { col: 1, row: 0, first: 25, second: 5 },
      { col: 2, row: 0, first: 5, second: 25 },
      { col: 3, row: 0, first: 25, second: 5 },
    ]);
  });

  it('leave out squares that are cut or blind', () => {
    const cut = { ...first, cells: [cell(0, 99, { partial: true }), cell(1, 99, { unreadable_pct: 9 })] };
    expect(agreementOf(first, cut)).toMatchObject({ squares: 0, squares_apart: [] });
  });
});
