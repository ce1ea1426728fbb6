import { covarianceWith, type Gaussian, type Innovation } from './gaussian.ts';

/** Many readings on their way into one jointly normal vector; its covariance holds what it held before the first until `end`. */
export interface ReadingsInTurn {
  /**
   * P rowᵀ as the readings so far have left it.
   * @param atFirst  the same with the covariance before the first reading, where it can be had for less; it is written over
   */
  readonly seen: (row: Float64Array, atFirst?: Float64Array) => Float64Array;
  /** Takes one reading. @param seen  what `seen` says of its row now */
  readonly take: (row: Float64Array, seen: Float64Array, value: number, noise: number) => Innovation;
  /** Brings the covariance up to date. Nothing is taken afterwards. */
  readonly end: () => void;
}

/**
 * Readings taken one after another, each seeing what those before it left, for the price of one change of the covariance:
 *
 *     Pₖ = P₀ − Σᵢ sᵢ sᵢᵀ / Sᵢ      i over the readings taken,  sᵢ = Pᵢ₋₁ rowᵢᵀ,  Sᵢ = rowᵢ sᵢ + noiseᵢ
 *
 * which is {@link takeReading} k times over, written as one sum: k n² / 2 in all where k n² · 5 were, and what a row sees is had
 * from the sum without Pₖ. It has no Joseph's form to fall back on: for readings whose noise is no small part of what they were
 * expected to scatter by. Source of the measurement update: Anderson and Moore, Optimal Filtering, 1979, section 3.1 (from memory).
 */
export function readingsInTurn(g: Gaussian): ReadingsInTurn {
  const { size, mean, covariance } = g;
  const taken: Innovation[] = [];

  const seen = (row: Float64Array, atFirst = covarianceWith(g, row)): Float64Array => {
    for (const one of taken) lessen(atFirst, dot(row, one.seen) / one.variance, one.seen);
    return atFirst;
  };

  const take = (row: Float64Array, sees: Float64Array, value: number, noise: number): Innovation => {
    const variance = dot(row, sees) + noise;
    const off = value - dot(row, mean);
    lessen(mean, -off / variance, sees);
    const innovation = { off, variance, seen: sees };
    taken.push(innovation);
    return innovation;
  };

  const end = (): void => {
    // Coordinate by coordinate, so that the sum over the readings runs along memory.
    const many = taken.length;
    const across = new Float64Array(size * many);
    taken.forEach(({ variance, seen: sees }, k) => {
      const scale = 1 / Math.sqrt(variance);
      for (let i = 0; i < size; i++) across[i * many + k] = scale * sees[i]!;
    });
    const lines = Array.from({ length: size }, (_, i) => across.subarray(i * many, (i + 1) * many));
    for (let i = 0; i < size; i++)
      for (let j = 0; j <= i; j++) {
        const less = covariance[i * size + j]! - dot(lines[i]!, lines[j]!);
        covariance[i * size + j] = less;
        covariance[j * size + i] = less;
      }
  };

  return { seen, take, end };
}

// The loops in which the time goes, over one kind of array only: a call that has seen lists too is three times as slow.

/** Two sums at once, for neither then waits for the other. */
function dot(a: Float64Array, b: Float64Array): number {
  const even = a.length & ~1;
  let sum = 0;
  let beside = 0;
  for (let i = 0; i < even; i += 2) {
    sum += a[i]! * b[i]!;
    beside += a[i + 1]! * b[i + 1]!;
  }
  return even < a.length ? sum + beside + a[even]! * b[even]! : sum + beside;
}

/** from ← from − share · by */
function lessen(from: Float64Array, share: number, by: Float64Array): void {
  for (let i = 0; i < from.length; i++) from[i]! -= share * by[i]!;
}
