import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

/** A symmetric matrix taken apart: what it determines and what it leaves free. */
export interface SymmetricParts {
  /** n × n pseudo-inverse. */
  readonly inverse: number[][];
  /** Directions that the matrix determines, each n long and scaled so that b·M·b = 1; Σ b bᵀ is the inverse. */
  readonly held: number[][];
  /** Unit vectors, each n long, of the directions that the matrix leaves free (eigenvalue zero). */
  readonly free: number[][];
}

/** Below this share of the largest eigenvalue a direction counts as not determined: well above rounding (1e-16), far below any real lever arm. */
const zeroShare = 1e-11;

/**
 * Pseudo-inverse of a symmetric positive semi-definite matrix, by its eigenvalues.
 *
 * The matrix is scaled to a unit diagonal first, so that µm and µrad are judged alike.
 * @param matrix  n × n, symmetric
 */
export function symmetricParts(matrix: readonly (readonly number[])[]): SymmetricParts {
  const n = matrix.length;
  const size = matrix.map((row, i) => (row[i]! > 0 ? 1 / Math.sqrt(row[i]!) : 1));
  const scaled = new Matrix(matrix.map((row, i) => row.map((value, j) => value * size[i]! * size[j]!)));
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(scaled, {
    assumeSymmetric: true,
  });
  const largest = Math.max(0, ...realEigenvalues);
  const inverse = Array.from({ length: n }, () => Array<number>(n).fill(0));
  const held: number[][] = [];
  const free: number[][] = [];
  realEigenvalues.forEach((value, k) => {
    const v = eigenvectorMatrix.getColumn(k);
    if (value <= largest * zeroShare) {
      const back = v.map((part, i) => part * size[i]!);
      const long = Math.hypot(...back);
      free.push(back.map((part) => part / long));
      return;
    }
    held.push(v.map((part, i) => (part * size[i]!) / Math.sqrt(value)));
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) inverse[i]![j]! += (size[i]! * size[j]! * v[i]! * v[j]!) / value;
  });
  return { inverse, held, free };
}

/** Whether a row asks only for what is determined: its part along every free direction vanishes. */
export function isDetermined(row: ArrayLike<number>, free: readonly (readonly number[])[]): boolean {
  const long = Math.hypot(...Array.from(row));
  return free.every((v) => Math.abs(v.reduce((sum, part, i) => sum + part * row[i]!, 0)) <= 1e-6 * long);
}
