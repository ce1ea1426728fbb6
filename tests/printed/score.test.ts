import { describe, expect, it } from 'vitest';
import type { PrintReading } from '../../src/core/print/reading.ts';
import { scored } from './score.ts';
import type { Truth } from './truth.ts';

const spot = (x_mm: number, y_mm: number) => ({ x_mm, y_mm, area_mm2: 3, burnished: 0 });
const cell = (col: number, count: number, bearing_pct: number, partial = false) => ({
  col,
  row: 0,
  count,
  bearing_pct,
  partial,
  net_mm2: 625,
  unreadable_pct: 0,
});
const truth: Truth = {
  spots: [spot(5, 5), spot(7, 5), spot(30, 12), spot(44, 21)],
  cells: [cell(0, 2, 21), cell(1, 2, 34), cell(2, 0, 11, true)],
  bearing_pct: 24,
  net_mm2: 1700,
};
const reading = (
  spots: PrintReading['spots'],
  cells: PrintReading['cells'],
  bearing_pct: number,
): PrintReading => ({
  spots,
  cells,
  bearing_pct,
  density_per_25mm: 2,
  net_area_mm2: 1700,
  evenness: { empty_squares: 0, longest_bare_mm: 4, along_pct: 1, across_pct: 2 },
  area_percentiles_mm2: [],
  largest_share: 0.3,
  trust: { confidence: 0.9, px_per_mm: 9, blur_mm: 0.1, glare_pct: 0, separation: 12 },
  warnings: [],
});

describe('the score of a reading', () => {
  it('of the truth itself is perfect', () => {
    expect(
      scored(
        reading(
          truth.spots.map((s) => ({ ...s, burnished: 0 })),
          [...truth.cells].map((c) => ({ ...c, unreadable_pct: 0 })),
          24,
        ),
        truth,
      ),
    ).toEqual({
      count_pct: 0,
      bearing_points: 0,
      cell_count_mae: 0,
      cell_bearing_mae: 0,
      f1: 1,
    });
  });

  it('counts a merged pair once, a far spot not, and leaves out squares that the edge cuts', () => {
    const read = reading(
      [spot(6, 5), spot(30, 14.5), spot(44, 21)],
      [cell(0, 1, 24), cell(1, 2, 33), cell(2, 9, 50)],
      26,
    );
    // Two of three read are matched, of four there: 2 · 2 / (3 + 4).
    const score = scored(read, truth);
    expect(score.count_pct).toBeCloseTo(-25, 12);
    expect(score.bearing_points).toBeCloseTo(2, 12);
    expect(score.cell_count_mae).toBeCloseTo(0.5, 12);
    expect(score.cell_bearing_mae).toBeCloseTo(2, 12);
    expect(score.f1).toBeCloseTo(4 / 7, 12);
  });

  it('matches nobody twice', () => {
    const read = reading([spot(5, 5), spot(5.1, 5), spot(5.2, 5)], [], 26);
    expect(scored(read, truth).f1).toBeCloseTo(4 / 7, 12);
  });
});
