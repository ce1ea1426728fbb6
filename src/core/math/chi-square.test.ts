import { describe, expect, it } from 'vitest';
import { chiSquareBeyond, logGamma } from './chi-square.ts';

describe('chi-square', () => {
  // Percentage points printed in every statistics handbook's chi-square table (three decimals, from memory).
  it.each([
    [3.841, 1, 0.05],
    [6.635, 1, 0.01],
    [10.828, 1, 0.001],
    [11.07, 5, 0.05],
    [18.307, 10, 0.05],
    [29.588, 10, 0.001],
    [43.773, 30, 0.05],
    [0.711, 4, 0.95],
    [124.342, 100, 0.05],
  ])('beyond %d with %d degrees lies %d', (x, degrees, chance) => {
    expect(chiSquareBeyond(x, degrees) / chance).toBeCloseTo(1, 2);
  });
  it('with two degrees is exp(−x/2), a closed form', () => {
    for (const x of [0.3, 1.7, 5, 23]) expect(chiSquareBeyond(x, 2)).toBeCloseTo(Math.exp(-x / 2), 14);
  });
  it('logGamma meets factorials and Γ(1/2) = √π', () => {
    expect(Math.exp(logGamma(6))).toBeCloseTo(120, 9);
    expect(logGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 13);
  });
  it('refuses no degrees of freedom', () => expect(() => chiSquareBeyond(1, 0)).toThrow(RangeError));
});
