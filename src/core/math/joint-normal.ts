import { cholesky } from './gaussian.ts';
import { normalBelow, normalQuantile } from './normal.ts';

/** A range that a value may lie in; −Infinity and Infinity where it is open. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

const points = 512;
/** Square roots of primes, whose multiples fill a cube evenly (Richtmyer). */
const steps = [
  2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89,
].map(Math.sqrt);

/**
 * Chance that jointly normal values all lie in their ranges at once.
 *
 * Value by value: each is drawn within its range given those before, and the chances multiply; the mean over evenly spread
 * points is the answer, good to about 1e-3. One value alone is exact.
 * Source: Genz, Journal of Computational and Graphical Statistics 1 (1992) 141-149 (from memory).
 */
export function jointChance(
  mean: readonly number[],
  covariance: readonly (readonly number[])[],
  ranges: readonly Range[],
): number {
  const n = mean.length;
  if (n === 0) return 1;
  // A value without any doubt would have no Cholesky factor; a doubt far below its size changes nothing.
  const lower = cholesky(
    covariance.map((row, i) => row.map((part, j) => (i === j ? part * (1 + 1e-12) + 1e-12 : part))),
  );
  let total = 0;
  const drawn = Array<number>(n).fill(0);
  for (let k = 1; k <= points; k++) {
    let chance = 1;
    for (let i = 0; i < n && chance > 0; i++) {
      let shift = mean[i]!;
      for (let j = 0; j < i; j++) shift += lower[i]![j]! * drawn[j]!;
      const sd = lower[i]![i]!;
      const from = normalBelow((ranges[i]!.low - shift) / sd);
      const to = normalBelow((ranges[i]!.high - shift) / sd);
      chance *= Math.max(0, to - from);
      const even = (k * steps[i % steps.length]!) % 1;
      // The tent makes the points' ends meet, which halves the error.
      const at = from + (1 - Math.abs(2 * even - 1)) * (to - from);
      drawn[i] = normalQuantile(Math.min(1 - 1e-15, Math.max(1e-15, at)));
    }
    total += chance;
  }
  return total / points;
}
