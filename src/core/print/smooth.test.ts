import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sharpen, widelySmoothed } from './smooth.ts';

const narrowlySmoothed = (source: Float32Array, width: number, height: number, sd: number) => {
  const result = source.slice();
  sharpen(result, width, height, sd, -1);
  return result;
};

const ways = { widelySmoothed, narrowlySmoothed };

/** Sum, and sd along the rows about the middle. */
function momentsOf(spread: Float32Array, width: number) {
  let sum = 0;
  let square = 0;
  spread.forEach((one, o) => {
    sum += one;
    square += one * ((o % width) - (width - 1) / 2) ** 2;
  });
  return { sum, sd: Math.sqrt(square / sum) };
}

describe.each(Object.entries(ways))('%s', (_, smoothed) => {
  it('keeps a constant, whatever the shape, edges too', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 23 }),
        fc.integer({ min: 1, max: 23 }),
        fc.double({ min: 0.6, max: 9, noNaN: true }),
        (width, height, sd) => {
          const flat = new Float32Array(width * height).fill(2.5);
          for (const one of smoothed(flat, width, height, sd)) expect(Math.abs(one - 2.5)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  it('spreads one element to its sum and about its sd, the same both ways', () => {
    for (const sd of [1, 2, 4]) {
      const side = 61;
      const point = new Float32Array(side * side);
      point[30 * side + 30] = 1;
      const spread = smoothed(point, side, side, sd);
      const { sum, sd: found } = momentsOf(spread, side);
      expect(sum).toBeCloseTo(1, 5);
      // Boxes of whole elements and a bell cut off at two sd: a fifth is as near as they come.
      expect(found / sd).toBeGreaterThan(0.8);
      expect(found / sd).toBeLessThan(1.45);
      for (let k = 0; k < side * side; k += 17) {
        const onSide = (k % side) * side + Math.floor(k / side);
        expect(Math.abs(spread[k]! - spread[onSide]!)).toBeLessThan(1e-7);
      }
    }
  });

  it('stays within what it was given and leaves that as it was', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 35, maxLength: 35 }), (bytes) => {
        const given = Float32Array.from(bytes);
        for (const one of smoothed(given, 7, 5, 1.5)) {
          expect(one).toBeGreaterThanOrEqual(Math.min(...bytes) - 1e-3);
          expect(one).toBeLessThanOrEqual(Math.max(...bytes) + 1e-3);
        }
        expect(given).toEqual(Float32Array.from(bytes));
      }),
    );
  });
});

describe('sharpening', () => {
  it('adds what stands out from the smooth, in place', () => {
    const given = Float32Array.from({ length: 35 }, (_, k) => Math.sin(k * k));
    const smooth = narrowlySmoothed(given, 7, 5, 1.2);
    const sharp = given.slice();
    sharpen(sharp, 7, 5, 1.2, 1.5);
    sharp.forEach((one, k) => {
      expect(one).toBeCloseTo(given[k]! + 1.5 * (given[k]! - smooth[k]!), 5);
    });
  });
});
