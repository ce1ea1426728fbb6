import { inverse, Matrix, QrDecomposition } from 'ml-matrix';

/** Coefficients of a linear model, with their doubts from the scatter. */
export interface LeastSquares {
  readonly coefficients: readonly number[];
  readonly sds: readonly number[];
  readonly residuals: readonly number[];
  /** Sum of squared residuals. */
  readonly square: number;
  /** Rows less coefficients. */
  readonly degrees: number;
  readonly residual_sd: number;
}

/**
 * Least squares over any columns, by orthogonal reduction (QR) of columns scaled to length 1, so that powers of large
 * numbers do not drown each other.
 *
 * @param rows  n rows of m numbers, n > m
 * @param y     n values
 * @throws RangeError  too few rows, or columns that do not differ
 * Source: NIST StRD NoInt1, NoInt2, Pontius; checks/nist-strd.check.ts.
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): LeastSquares {
  const n = rows.length;
  const m = rows[0]?.length ?? 0;
  if (n !== y.length) throw new RangeError(`${n} rows and ${y.length} values; expected as many`);
  if (!(n > m && m > 0)) throw new RangeError(`${n} rows for ${m} coefficients; expected more`);
  const size = Array.from({ length: m }, (_, j) => Math.hypot(...rows.map((row) => row[j]!)));
  if (!size.every((long) => long > 0)) throw new RangeError('a column is all zero');
  const qr = new QrDecomposition(new Matrix(rows.map((row) => row.map((v, j) => v / size[j]!))));
  if (!qr.isFullRank()) throw new RangeError('columns do not differ; the fit has no one answer');
  const scaled = qr.solve(Matrix.columnVector([...y])).to1DArray();
  const coefficients = scaled.map((c, j) => c / size[j]!);
  const residuals = y.map((v, i) => v - rows[i]!.reduce((sum, part, j) => sum + part * coefficients[j]!, 0));
  const square = residuals.reduce((sum, r) => sum + r * r, 0);
  const degrees = n - m;
  const residual_sd = Math.sqrt(square / degrees);
  const back = inverse(qr.upperTriangularMatrix);
  const sds = size.map((long, j) => (residual_sd * Math.hypot(...back.getRow(j))) / long);
  return { coefficients, sds, residuals, square, degrees, residual_sd };
}
