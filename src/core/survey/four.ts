/** A four-by-four matrix, row by row. */
export type Matrix4 = Float64Array;

/**
 * The inverse, by elimination with the largest pivot of each column.
 * @throws RangeError  the matrix has none
 */
export function inverse4(matrix: Matrix4): Matrix4 {
  const a = matrix.slice();
  const out = new Float64Array(16);
  for (let k = 0; k < 4; k++) out[5 * k] = 1;
  for (let k = 0; k < 4; k++) {
    let pivot = k;
    for (let row = k + 1; row < 4; row++)
      if (Math.abs(a[4 * row + k]!) > Math.abs(a[4 * pivot + k]!)) pivot = row;
    swapRows(a, k, pivot);
    swapRows(out, k, pivot);
    const size = a[5 * k]!;
    if (!(Math.abs(size) > 1e-14)) throw new RangeError('the matrix has no inverse');
    for (let row = 0; row < 4; row++) {
      const times = a[4 * row + k]! / size;
      if (row === k || times === 0) continue;
      for (let c = 0; c < 4; c++) {
        a[4 * row + c]! -= times * a[4 * k + c]!;
        out[4 * row + c]! -= times * out[4 * k + c]!;
      }
    }
    for (let c = 0; c < 4; c++) {
      a[4 * k + c]! /= size;
      out[4 * k + c]! /= size;
    }
  }
  return out;
}

function swapRows(a: Matrix4, one: number, other: number): void {
  if (one === other) return;
  for (let c = 0; c < 4; c++) {
    const kept = a[4 * one + c]!;
    a[4 * one + c] = a[4 * other + c]!;
    a[4 * other + c] = kept;
  }
}

/** Matrix times vector. */
export function times4(matrix: Matrix4, vector: readonly number[]): number[] {
  return [0, 1, 2, 3].map((row) => {
    let sum = 0;
    for (let c = 0; c < 4; c++) sum += matrix[4 * row + c]! * vector[c]!;
    return sum;
  });
}
