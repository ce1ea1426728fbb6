import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantile } from './quantile.ts';

const numbers = fc.array(fc.float({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 60 });

describe('quantile', () => {
  it('is the number itself at each place of the sorted ones, between them in between', () => {
    fc.assert(
      fc.property(numbers, (values) => {
        const sorted = values.toSorted((a, b) => a - b);
        sorted.forEach((one, k) => {
          const q = values.length > 1 ? k / (values.length - 1) : 0.3;
          expect(Math.abs(quantile(values, q) - one)).toBeLessThan(1e-2);
        });
        expect(quantile(values, 0)).toBe(sorted[0]);
        expect(quantile(values, 1)).toBe(sorted.at(-1));
      }),
    );
  });

  it('leaves the numbers as they were, and is NaN of none', () => {
    const values = [3, 1, 2];
    expect(quantile(values, 0.5)).toBe(2);
    expect(quantile([1, 2], 0.25)).toBe(1.25);
    expect(values).toEqual([3, 1, 2]);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it('of very many is near, from some of them', () => {
    const many = Float32Array.from({ length: 90_001 }, (_, k) => ((k * 7919) % 90_001) / 90_000);
    for (const q of [0, 0.1, 0.5, 0.9, 1]) expect(Math.abs(quantile(many, q) - q)).toBeLessThan(0.01);
  });
});
