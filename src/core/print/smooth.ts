/** Rasters are row by row; beyond the edge the nearest element stands in, or the window shrinks where said so. */

/** Mean over a square window of radius r, the window shrinking at the edges. */
function boxed(source: Float32Array, width: number, height: number, r: number): Float32Array {
  const rows = new Float32Array(source.length);
  for (let j = 0; j < height; j++) {
    const o = j * width;
    let sum = 0;
    for (let i = 0; i < Math.min(r, width); i++) sum += source[o + i]!;
    for (let i = 0; i < width; i++) {
      if (i + r < width) sum += source[o + i + r]!;
      if (i - r > 0) sum -= source[o + i - r - 1]!;
      rows[o + i] = sum / (Math.min(i + r, width - 1) - Math.max(i - r, 0) + 1);
    }
  }
  const sums = new Float64Array(width);
  const result = new Float32Array(source.length);
  for (let j = 0; j < Math.min(r, height); j++)
    for (let i = 0; i < width; i++) sums[i]! += rows[j * width + i]!;
  for (let j = 0; j < height; j++) {
    if (j + r < height) for (let i = 0, o = (j + r) * width; i < width; i++) sums[i]! += rows[o + i]!;
    if (j - r > 0) for (let i = 0, o = (j - r - 1) * width; i < width; i++) sums[i]! -= rows[o + i]!;
    const share = 1 / (Math.min(j + r, height - 1) - Math.max(j - r, 0) + 1);
    for (let i = 0, o = j * width; i < width; i++) result[o + i] = sums[i]! * share;
  }
  return result;
}

/** Smoothed with about this sd, in elements: three boxes in turn, for wide smoothing of coarse rasters. */
export function widelySmoothed(
  source: Float32Array,
  width: number,
  height: number,
  sd: number,
): Float32Array {
  // A box of radius r has variance r (r + 1) / 3; three of them r (r + 1).
  const r = Math.max(1, Math.round((Math.sqrt(1 + 4 * sd * sd) - 1) / 2));
  let smooth = boxed(source, width, height, r);
  smooth = boxed(smooth, width, height, r);
  return boxed(smooth, width, height, r);
}

/** Smoothed by a normal window of this sd, in elements, out to two sd: for narrow smoothing of fine rasters. */
export function narrowlySmoothed(
  source: Float32Array,
  width: number,
  height: number,
  sd: number,
): Float32Array {
  const r = Math.max(1, Math.ceil(2 * sd));
  const bell = Array.from({ length: r + 1 }, (_, k) => Math.exp((-0.5 * k * k) / (sd * sd)));
  const whole = bell[0]! + 2 * bell.slice(1).reduce((sum, one) => sum + one, 0);
  const weight = Float32Array.from(bell, (one) => one / whole);
  const down = new Float32Array(source.length);
  const w0 = weight[0]!;
  for (let j = 0; j < height; j++) {
    const o = j * width;
    for (let i = 0; i < width; i++) down[o + i] = w0 * source[o + i]!;
    for (let k = 1; k <= r; k++) {
      const up = Math.max(0, j - k) * width;
      const below = Math.min(height - 1, j + k) * width;
      const wk = weight[k]!;
      for (let i = 0; i < width; i++) down[o + i]! += wk * (source[up + i]! + source[below + i]!);
    }
  }
  const padded = new Float32Array(width + 2 * r);
  for (let j = 0; j < height; j++) {
    const o = j * width;
    padded.fill(down[o]!, 0, r);
    padded.set(down.subarray(o, o + width), r);
    padded.fill(down[o + width - 1]!, r + width);
    for (let i = 0; i < width; i++) {
      let sum = w0 * padded[i + r]!;
      for (let k = 1; k <= r; k++) sum += weight[k]! * (padded[i + r - k]! + padded[i + r + k]!);
      down[o + i] = sum;
    }
  }
  return down;
}
