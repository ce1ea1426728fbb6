import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coarseOf, piecesOf, refineRow, sampled, smoothMeans } from './coarse.ts';

describe('a coarser raster', () => {
  it('of blocks no wider than what is averaged holds means: weighted by the blocks, they add up to the whole', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer(),
        (width, height, block, seed) => {
          const fine = Float32Array.from({ length: width * height }, (_, k) => Math.abs(Math.sin(k + seed)));
          const coarse = coarseOf(width, height, block);
          const means = sampled(fine, width, height, coarse);
          let sum = 0;
          means.forEach((mean, k) => {
            const across = Math.min(block, width - (k % coarse.width) * block);
            const down = Math.min(block, height - Math.floor(k / coarse.width) * block);
            sum += mean * across * down;
          });
          const whole = fine.reduce((total, one) => total + one, 0);
          expect(Math.abs(sum - whole)).toBeLessThan(1e-4 * (1 + whole));
        },
      ),
    );
  });

  it('gives a slope back between the block centres', () => {
    const coarse = coarseOf(24, 12, 4);
    const values = Float32Array.from({ length: coarse.width * coarse.height }, (_, k) => {
      const x = 4 * ((k % coarse.width) + 0.5);
      const y = 4 * (Math.floor(k / coarse.width) + 0.5);
      return 3 * x - 2 * y;
    });
    const row = new Float32Array(24);
    for (let j = 2; j < 10; j++) {
      refineRow(values, coarse, j, piecesOf(coarse, 24), row);
      for (let i = 2; i < 22; i++) expect(row[i]).toBeCloseTo(3 * (i + 0.5) - 2 * (j + 0.5), 4);
    }
  });

  it('of one element gives that element everywhere', () => {
    const row = new Float32Array(5);
    const coarse = coarseOf(5, 3, 8);
    refineRow(Float32Array.of(7), coarse, 2, piecesOf(coarse, 5), row);
    expect([...row]).toEqual([7, 7, 7, 7, 7]);
  });
});

describe('smooth means of what counts', () => {
  const coarse = coarseOf(40, 32, 1);
  const left = Float32Array.from({ length: 40 * 32 }, (_, k) => (k % 40 < 20 ? 1 : 0));

  it('take nothing from what does not count', () => {
    const values = left.map((one) => (one ? 5 : 1e6));
    for (const one of smoothMeans(values, left, coarse, 12, -1, 1e-3))
      expect([5, -1]).toContain(Math.round(one));
  });

  it('are what is said elsewhere where nothing counts', () => {
    const none = new Float32Array(left.length);
    expect([...new Set(smoothMeans(left, none, coarse, 12, 9, 1e-3))]).toEqual([9]);
    expect(smoothMeans(none, none, coarse, 12, left, 1e-3)).toEqual(left);
  });

  it('are pulled to the forecast, the more so the stronger the pull', () => {
    const values = new Float32Array(left.length).fill(4);
    const all = new Float32Array(left.length).fill(1);
    expect(smoothMeans(values, all, coarse, 12, 2, 1e-3, 1)[300]).toBeCloseTo(3, 4);
    expect(smoothMeans(values, all, coarse, 12, 2, 1e-3, 3)[300]).toBeCloseTo(2.5, 4);
  });
});
