/** Level at the origin, slope along x, slope along y; slopes in the heights' unit for one of the places' unit. */
export type PlaneNumbers = readonly [number, number, number];

/** Least spread across the row, as a share of the spread along it, that is still a surface. */
const leastSpread = 1e-9;

/**
 * Least-squares plane, in sums about the mean.
 * @throws RangeError  all points in one row as seen from above, or fewer than three
 */
export function fitPlane(x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>): PlaneNumbers {
  const n = x.length;
  const [mx, my, mz] = [meanOf(x), meanOf(y), meanOf(z)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [u, v, w] = [x[i]! - mx, y[i]! - my, z[i]! - mz];
    xx += u * u;
    xy += u * v;
    yy += v * v;
    xz += u * w;
    yz += v * w;
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > (leastSpread * (xx + yy)) ** 2))
    throw new RangeError('all points lie in one row as seen from above; expected points that span a surface');
  const a = (xz * yy - yz * xy) / determinant;
  const b = (yz * xx - xz * xy) / determinant;
  return [mz - a * mx - b * my, a, b];
}

/** Heights less their least-squares plane. */
export function planeDepartures(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
): Float64Array {
  const [level, a, b] = fitPlane(x, y, z);
  return Float64Array.from(z, (height, i) => height - level - a * x[i]! - b * y[i]!);
}

export function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}
