import { describe, expect, it } from 'vitest';
import { readPrint } from '../src/core/print/read-print.ts';
import { discRows, drawnDiscs } from '../tests/fixture/drawn-discs.ts';
import { expectNear, expectSame, expectWithin } from './near.ts';

/*
 * Sources: "peak points per square inch" and "percentage of points": K.-C. Fan, J. Torng, W. Jywe, R.-C. Chou, J.-K. Ye, Measurement
 * 45 (2012) 384–392; T.-H. Hsieh, W. Jywe, H.-L. Huang, S.-L. Chen, Optics and Lasers in Engineering 49 (2011); abstracts, second hand.
 * Points in a square, and contact over area: the pictures are drawn, so both are arithmetic. A disc of 1.2 mm has 4.5239 mm².
 */
const r = 1.2;
const disc_mm2 = Math.PI * r * r;

describe('points per square and percentage of points', () => {
  it('25 discs in every square of 25 mm: 25 a square, 18.1 %', () => {
    const size = { length_mm: 100, width_mm: 50 };
    const read = readPrint({ ...drawnDiscs({ size, discs: discRows(size, 5, r) }), size });
    expect(read.cells.map((cell) => cell.count)).toEqual(Array(8).fill(25));
    expect(read.cells.every((cell) => !cell.partial)).toBe(true);
    expectWithin(read.density_per_25mm, 25, 5e-11);
    expectWithin(read.bearing_pct, (100 * 25 * disc_mm2) / 625, 0.6);
    for (const spot of read.spots) expectNear(spot.area_mm2, disc_mm2, 0.04);
    for (const spot of read.spots) {
      // Centres lie on 2.5, 7.5, 12.5, …
      expectWithin(spot.x_mm % 5, 2.5, 0.06);
      expectWithin(spot.y_mm % 5, 2.5, 0.06);
    }
  });

  it('25 discs in every inch square: 25 counted there, 3.2 % fewer to 25 mm', () => {
    const size = { length_mm: 101.6, width_mm: 50.8 };
    const photo = drawnDiscs({ size, discs: discRows(size, 5.08, r) });
    const read = readPrint({ ...photo, size, cell_mm: 25.4 });
    const whole = read.cells.filter((cell) => cell.count > 0);
    expect(whole.map((cell) => cell.count)).toEqual(Array(8).fill(25));
    expect(whole.every((cell) => !cell.partial)).toBe(true);
    expectNear(25 / read.density_per_25mm, 645.16 / 625, 1e-3);
    expectWithin(645.16 / 625, 1.032, 5e-4);
    expectWithin(read.bearing_pct, (100 * 25 * disc_mm2) / 645.16, 0.6);
  });

  it('a groove is not area: the same discs over less of it', () => {
    const size = { length_mm: 100, width_mm: 50 };
    const discs = discRows(size, 5, r);
    // Between two columns of discs, 2 mm wide over the whole width: 100 mm² less.
    const groove = {
      type: 'polyline',
      width: 2,
      points: [
        { x: 50, y: -5 },
        { x: 50, y: 55 },
      ],
    } as const;
    const read = readPrint({ ...drawnDiscs({ size, discs }), size, exclusions: [groove] });
    expectSame(read.spots.length, 200);
    expectWithin(read.net_area_mm2, 4900, 5e-7);
    expectWithin(read.density_per_25mm, (200 * 625) / 4900, 5e-7);
    expectSame(
      read.cells.filter((cell) => cell.partial).map((cell) => cell.col),
      [1, 2, 1, 2],
    );
  });

  it('a spot is at least 0.5 mm²: discs of 0.3 mm² bear but are not counted', () => {
    const size = { length_mm: 50, width_mm: 25 };
    const large = discRows(size, 12.5, r);
    const small = discRows(size, 12.5, Math.sqrt(0.3 / Math.PI)).map((d) => ({ ...d, x: d.x + 5 }));
    const read = readPrint({ ...drawnDiscs({ size, discs: [...large, ...small] }), size });
    expect(read.spots.length).toBe(large.length);
    const share = (100 * (large.length * disc_mm2 + small.length * 0.3)) / 1250;
    expectWithin(read.bearing_pct, share, 0.25);
  });
});
