import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bitsOf, noBits } from './bits.ts';
import type { Spot } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';
import { squaresOf } from './squares.ts';

const mm2 = rasterPxPerMm ** 2;
const spot = (x_mm: number, y_mm: number): Spot => ({ x_mm, y_mm, area_mm2: 1, burnished: 0 });

describe('squares', () => {
  it('add up to the whole: spots, contact, net area', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 700 }),
        fc.integer({ min: 4, max: 300 }),
        fc.constantFrom(25, 25.4),
        fc.integer({ min: 1, max: 1e6 }),
        (width, height, cell_mm, seed) => {
          const random = (o: number) => ((((o + 1) * seed) % 10_007) + 10_007) % 10_007;
          const many = width * height;
          const bits = (mask: Uint8Array) => bitsOf(mask, width, height);
          const label = Uint8Array.from({ length: many }, (_, o) => (random(o) % 3 === 0 ? 1 : 0));
          const out = Uint8Array.from({ length: many }, (_, o) => (random(o) % 11 === 0 ? 1 : 0));
          const unread = Uint8Array.from({ length: many }, (_, o) => (random(o) % 13 === 1 ? 1 : 0));
          for (let o = 0; o < many; o++) if (out[o] || unread[o]) label[o] = 0;
          const spots = Array.from({ length: 20 }, (_, k) =>
            spot(
              ((random(k) % 1000) / 1000) * (width / rasterPxPerMm),
              ((k + 0.5) / 20) * (height / rasterPxPerMm),
            ),
          );
          const cells = squaresOf(bits(label), spots, bits(out), bits(unread), cell_mm);
          let net = 0;
          let held = 0;
          for (let o = 0; o < many; o++) {
            if (!out[o] && !unread[o]) net++;
            if (label[o]) held++;
          }
          const total = (of: (cell: (typeof cells)[number]) => number) =>
            cells.reduce((sum, c) => sum + of(c), 0);
          expect(total((cell) => cell.count)).toBe(20);
          expect(total((cell) => cell.net_mm2)).toBeCloseTo(net / mm2, 6);
          expect(total((cell) => (cell.bearing_pct / 100) * cell.net_mm2)).toBeCloseTo(held / mm2, 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('of an inch are whole although they are no whole number of elements', () => {
    const [width, height] = [Math.round(127 * rasterPxPerMm), Math.round(76.2 * rasterPxPerMm)];
    const none = noBits(width, height);
    const cells = squaresOf(none, [], none, none, 25.4);
    expect(cells.filter((cell) => cell.col < 5 && cell.row < 3).some((cell) => cell.partial)).toBe(false);
  });

  it('are partial at the edge and where something is excluded; clipped parts are told', () => {
    const [width, height] = [60 * rasterPxPerMm, 25 * rasterPxPerMm];
    const out = new Uint8Array(width * height);
    const unread = new Uint8Array(width * height);
    // The first 2.5 mm of the second square are cut away, a tenth of the first is clipped.
    for (let j = 0; j < height; j++) {
      out.fill(1, j * width + 25 * rasterPxPerMm, j * width + 27.5 * rasterPxPerMm);
      unread.fill(1, j * width, j * width + 2.5 * rasterPxPerMm);
    }
    const bits = (mask: Uint8Array) => bitsOf(mask, width, height);
    const cells = squaresOf(noBits(width, height), [spot(60, 25)], bits(out), bits(unread), 25);
    expect(cells.map((cell) => cell.partial)).toEqual([false, true, true]);
    expect(cells.map((cell) => cell.unreadable_pct)).toEqual([10, 0, 0]);
    expect(cells.map((cell) => cell.net_mm2)).toEqual([562.5, 562.5, 250]);
    expect(cells.map((cell) => cell.count)).toEqual([0, 0, 1]);
  });
});
