/** A symmetric positive semi-definite matrix as P·L·Lᵀ·Pᵀ, with as many columns of L as it has rank. */
export interface SemidefiniteFactor {
  readonly size: number;
  readonly rank: number;
  /** size × size, row-major; the first `rank` columns are L's, rows in pivot order. */
  readonly lower: Float64Array;
  /** pivot[i]: which row of the matrix stands in row i of L. */
  readonly pivot: Int32Array;
}

/**
 * Cholesky factor with diagonal pivoting.
 * @param matrix  n × n, row-major, its lower triangle; overwritten and kept as the factor
 * @param least   what is left of the diagonal at or below this counts as nothing: above rounding, below any real pivot
 */
export function factorSemidefinite(matrix: Float64Array, n: number, least: number): SemidefiniteFactor {
  const a = matrix;
  const pivot = Int32Array.from({ length: n }, (_, i) => i);
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) a[i * n + j] = a[j * n + i]!;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (a[i * n + i]! > a[best * n + best]!) best = i;
    if (!(a[best * n + best]! > least)) return { size: n, rank: k, lower: a, pivot };
    if (best !== k) swap(a, pivot, n, k, best);
    const root = Math.sqrt(a[k * n + k]!);
    a[k * n + k] = root;
    for (let i = k + 1; i < n; i++) a[i * n + k]! /= root;
    for (let i = k + 1; i < n; i++)
      for (let j = k + 1; j <= i; j++) {
        a[i * n + j]! -= a[i * n + k]! * a[j * n + k]!;
        a[j * n + i] = a[i * n + j]!;
      }
  }
  return { size: n, rank: n, lower: a, pivot };
}

function swap(a: Float64Array, pivot: Int32Array, n: number, k: number, best: number): void {
  for (let j = 0; j < n; j++) {
    const kept = a[k * n + j]!;
    a[k * n + j] = a[best * n + j]!;
    a[best * n + j] = kept;
  }
  for (let i = k; i < n; i++) {
    const kept = a[i * n + k]!;
    a[i * n + k] = a[i * n + best]!;
    a[i * n + best] = kept;
  }
  const kept = pivot[k]!;
  pivot[k] = pivot[best]!;
  pivot[best] = kept;
}

/** Writes to `x` a solution of matrix · x = right: the one with nothing beyond the rank's pivots. */
export function solveSemidefinite(factor: SemidefiniteFactor, right: Float64Array, x: Float64Array): void {
  const { size: n, rank, lower, pivot } = factor;
  const y = new Float64Array(n);
  for (let i = 0; i < rank; i++) {
    let sum = right[pivot[i]!]!;
    for (let j = 0; j < i; j++) sum -= lower[i * n + j]! * y[j]!;
    y[i] = sum / lower[i * n + i]!;
  }
  backward(factor, y);
  for (let i = 0; i < n; i++) x[pivot[i]!] = y[i]!;
}

/**
 * Writes to `x` the part of `v` that the matrix does not see, N·Nᵀ·v with N a basis of its null space: matrix · x = 0, and
 * v · x is above 0 unless v has no such part.
 * @returns v · x
 */
export function freePart(factor: SemidefiniteFactor, v: Float64Array, x: Float64Array): number {
  const { size: n, rank, lower, pivot } = factor;
  x.fill(0);
  let gain = 0;
  const direction = new Float64Array(n);
  for (let k = rank; k < n; k++) {
    // One column of N: 1 at k, and what keeps L·Lᵀ·N at 0 above: −L₁₁⁻ᵀ L₂₁ᵀ.
    direction.fill(0);
    for (let i = 0; i < rank; i++) direction[i] = -lower[k * n + i]!;
    backward(factor, direction);
    direction[k] = 1;
    let along = 0;
    for (let i = 0; i < n; i++) along += direction[i]! * v[pivot[i]!]!;
    for (let i = 0; i < n; i++) x[pivot[i]!]! += along * direction[i]!;
    gain += along * along;
  }
  return gain;
}

/** Solves L₁₁ᵀ z = y in place over the first `rank` numbers. */
function backward(factor: SemidefiniteFactor, y: Float64Array): void {
  const { size: n, rank, lower } = factor;
  for (let i = rank - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let j = i + 1; j < rank; j++) sum -= lower[j * n + i]! * y[j]!;
    y[i] = sum / lower[i * n + i]!;
  }
}
