import { describe, expect, it } from 'vitest';
import { seededRandom } from './random.ts';
import { factorSemidefinite, freePart, solveSemidefinite } from './semidefinite.ts';

/** Σ v vᵀ over `rank` random vectors. */
function gram(n: number, rank: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  const a = new Float64Array(n * n);
  for (let k = 0; k < rank; k++) {
    const v = Array.from({ length: n }, () => random.normal());
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) a[i * n + j]! += v[i]! * v[j]!;
  }
  return a;
}
const times = (a: Float64Array, x: Float64Array): number[] =>
  Array.from(x, (_, i) => x.reduce((sum, part, j) => sum + part * a[i * x.length + j]!, 0));

describe('a semi-definite matrix taken apart', () => {
  it.each([
    [5, 5],
    [5, 3],
    [6, 1],
    [4, 0],
  ])('%d × %d of rank as made: solves what it can, and finds what it does not see', (n, rank) => {
    for (let seed = 1; seed < 20; seed++) {
      const a = gram(n, rank, seed);
      const random = seededRandom(seed + 500);
      const factor = factorSemidefinite(Float64Array.from(a), n, 1e-11);
      expect(factor.rank).toBe(rank);
      const right = Float64Array.from(
        times(
          a,
          Float64Array.from({ length: n }, () => random.normal()),
        ),
      );
      const x = new Float64Array(n);
      solveSemidefinite(factor, right, x);
      times(a, x).forEach((value, i) => {
        expect(value).toBeCloseTo(right[i]!, 8);
      });
      const v = Float64Array.from({ length: n }, () => random.normal());
      const gain = freePart(factor, v, x);
      const along = x.reduce((sum, part, i) => sum + part * v[i]!, 0);
      expect(along).toBeCloseTo(gain, 6);
      const size = Math.hypot(...x, 1);
      for (const value of times(a, x)) expect(value / size).toBeCloseTo(0, 8);
      if (rank < n) expect(gain).toBeGreaterThan(0);
      else expect(gain).toBe(0);
    }
  });
});
