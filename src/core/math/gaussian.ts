/** A jointly normal vector: mean, and covariance row by row. Functions of this file change it in place. */
export interface Gaussian {
  readonly size: number;
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
}

export const gaussian = (size: number): Gaussian => ({
  size,
  mean: new Float64Array(size),
  covariance: new Float64Array(size * size),
});

export const copyGaussian = (g: Gaussian): Gaussian => ({
  size: g.size,
  mean: g.mean.slice(),
  covariance: g.covariance.slice(),
});

/** Σ row · vector. */
export function product(row: ArrayLike<number>, vector: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum += row[i]! * vector[i]!;
  return sum;
}

/** P rowᵀ: the covariance of the vector with what the row sees. */
export function covarianceWith(g: Gaussian, row: ArrayLike<number>): Float64Array {
  const { size, covariance } = g;
  const out = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    const part = row[j]!;
    if (part === 0) continue;
    // P is symmetric: walk along its rows.
    const start = j * size;
    for (let i = 0; i < size; i++) out[i]! += part * covariance[start + i]!;
  }
  return out;
}

/** row P rowᵀ. */
export const varianceOf = (g: Gaussian, row: ArrayLike<number>): number =>
  product(row, covarianceWith(g, row));

/** What a reading came as: how far off, and how far off it was expected to be. */
export interface Innovation {
  readonly off: number;
  readonly variance: number;
  /** P rowᵀ as it was beforehand: over the variance it is the gain K, what one unit moved the mean by. */
  readonly seen: Float64Array;
}

/**
 * Down to this share of what a reading was expected to scatter by, its noise keeps P − K S Kᵀ from losing more than four of
 * sixteen digits to the difference.
 */
const noiseThatKeepsDigits = 1e-4;

/**
 * Takes one reading: value = row · x + noise.
 *
 *     K = P rowᵀ / S,   S = row P rowᵀ + r;     x ← x + K (value − row · x),   P ← P − K S Kᵀ
 *
 * A reading that tells far more than was known is taken in Joseph's form, which is the same number and stays symmetric and
 * positive in spite of rounding:
 *
 *     P ← (I − K row) P (I − K row)ᵀ + K r Kᵀ
 *
 * Source: Bucy and Joseph, Filtering for Stochastic Processes, 1968 (from memory).
 */
export function takeReading(g: Gaussian, row: ArrayLike<number>, value: number, noise: number): Innovation {
  const { size, mean, covariance } = g;
  const seen = covarianceWith(g, row);
  const variance = product(row, seen) + noise;
  const off = value - product(row, mean);
  for (let i = 0; i < size; i++) mean[i]! += (seen[i]! / variance) * off;
  if (noise > noiseThatKeepsDigits * variance) {
    for (let i = 0; i < size; i++) {
      const k = seen[i]! / variance;
      for (let j = 0; j <= i; j++) {
        const less = covariance[i * size + j]! - k * seen[j]!;
        covariance[i * size + j] = less;
        covariance[j * size + i] = less;
      }
    }
  } else takeInJosephsForm(g, row, seen, variance, noise);
  return { off, variance, seen };
}

function takeInJosephsForm(
  { size, covariance }: Gaussian,
  row: ArrayLike<number>,
  seen: Float64Array,
  variance: number,
  noise: number,
): void {
  const gain = seen.map((part) => part / variance);
  for (let i = 0; i < size; i++) {
    const k = gain[i]!;
    const start = i * size;
    for (let j = 0; j < size; j++) covariance[start + j]! -= k * seen[j]!;
  }
  const left = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const start = i * size;
    let sum = 0;
    for (let j = 0; j < size; j++) sum += covariance[start + j]! * row[j]!;
    left[i] = sum;
  }
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      const a = covariance[i * size + j]! - left[i]! * gain[j]! + gain[i]! * noise * gain[j]!;
      const b = covariance[j * size + i]! - left[j]! * gain[i]! + gain[j]! * noise * gain[i]!;
      const even = 0.5 * (a + b);
      covariance[i * size + j] = even;
      covariance[j * size + i] = even;
    }
}

/** Joint covariance of several rows' values: rows × rows. */
export function jointCovariance(g: Gaussian, rows: readonly ArrayLike<number>[]): number[][] {
  const seen = rows.map((row) => covarianceWith(g, row));
  return rows.map((row) => seen.map((column) => product(row, column)));
}

/** Lower triangle L with L Lᵀ = matrix (positive definite). @throws RangeError when it is not */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const lower = matrix.map(() => Array<number>(n).fill(0));
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i !== j) lower[i]![j] = sum / lower[j]![j]!;
      else if (sum > 0) lower[i]![i] = Math.sqrt(sum);
      else throw new RangeError('matrix is not positive definite');
    }
  return lower;
}
