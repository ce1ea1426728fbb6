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

/**
 * What stands out from a normal window of this sd, in elements, out to two sd, is added `by` times, in place: taken away
 * once, −1, what is smooth is left. For narrow windows on fine rasters.
 */
export function sharpen(values: Float32Array, width: number, height: number, sd: number, by: number): void {
  smoothRows(values, width, height, sd, (j, row) => sharpenRow(values, row, by, j * width));
}

function sharpenRow(values: Float32Array, smooth: Float32Array, by: number, from: number): void {
  for (let i = 0; i < smooth.length; i++) values[from + i] = (1 + by) * values[from + i]! - by * smooth[i]!;
}

/** Gives the smooth rows in turn, in an array that is used again; a row of the source is not looked at once its smooth one is out. */
function smoothRows(
  source: Float32Array,
  width: number,
  height: number,
  sd: number,
  give: (j: number, row: Float32Array) => void,
): void {
  const { r, weight } = bellOf(sd);
  // Rows smoothed along their length wait here until all that one row needs are there: 2 r + 1 of them, in turn.
  const many = 2 * r + 1;
  const along = new Float32Array(many * width);
  const padded = new Float32Array(width + 2 * r);
  const row = new Float32Array(width);
  const steps = Int32Array.from({ length: many }, (_, k) => k);
  const rows = new Int32Array(many);
  for (let next = 0, j = 0; j < height; j++) {
    for (; next <= Math.min(height - 1, j + r); next++) {
      const o = next * width;
      const at = (next % many) * width;
      padded.fill(source[o]!, 0, r);
      padded.set(source.subarray(o, o + width), r);
      padded.fill(source[o + width - 1]!, r + width);
      weighAlong(padded, weight, r, along, at, width);
      weighOuter(padded, steps, weight, r, along, at, width);
    }
    for (let k = 0; k < many; k++) rows[k] = (Math.max(0, Math.min(height - 1, j + k - r)) % many) * width;
    weighAcross(along, rows, weight, r, row, width);
    weighOuter(along, rows, weight, r, row, 0, width);
    give(j, row);
  }
}

/** Weights of a normal window from its middle out; zero beyond two sd. Its reach is rounded up to an odd number, three at least, see `weighAcross`. */
function bellOf(sd: number): { r: number; weight: Float32Array } {
  const reach = Math.max(1, Math.ceil(2 * sd));
  const r = Math.max(3, reach % 2 === 0 ? reach + 1 : reach);
  const bell = Array.from({ length: r + 1 }, (_, k) =>
    k > reach ? 0 : Math.exp((-0.5 * k * k) / (sd * sd)),
  );
  const whole = bell[0]! + 2 * bell.slice(1).reduce((sum, one) => sum + one, 0);
  return { r, weight: Float32Array.from(bell, (one) => one / whole) };
}

/**
 * Weighted sum of the seven stretches of `source` in the middle of those that begin at `starts`, weights alike on both sides
 * of the middle one. Seven are all there are on a photo of ordinary resolution, and each sweep over a stretch costs as much as
 * its arithmetic; `weighOuter` adds the others, four at a time.
 */
function weighAcross(
  source: Float32Array,
  starts: Int32Array,
  weight: Float32Array,
  r: number,
  into: Float32Array,
  many: number,
): void {
  const w0 = weight[0]!;
  const w1 = weight[1]!;
  const w2 = weight[2]!;
  const w3 = weight[3]!;
  const a = starts[r - 3]!;
  const b = starts[r - 2]!;
  const c = starts[r - 1]!;
  const d = starts[r]!;
  const e = starts[r + 1]!;
  const f = starts[r + 2]!;
  const g = starts[r + 3]!;
  for (let i = 0; i < many; i++) {
    const inner = Math.fround(w0 * source[d + i]! + w1 * (source[c + i]! + source[e + i]!));
    into[i] = inner + (w2 * (source[b + i]! + source[f + i]!) + w3 * (source[a + i]! + source[g + i]!));
  }
}

/** The same along one stretch, of each element and the three at its sides: what was loaded for one serves for the next. */
function weighAlong(
  padded: Float32Array,
  weight: Float32Array,
  r: number,
  into: Float32Array,
  at: number,
  many: number,
): void {
  const w0 = weight[0]!;
  const w1 = weight[1]!;
  const w2 = weight[2]!;
  const w3 = weight[3]!;
  let a = padded[r - 3]!;
  let b = padded[r - 2]!;
  let c = padded[r - 1]!;
  let d = padded[r]!;
  let e = padded[r + 1]!;
  let f = padded[r + 2]!;
  for (let i = 0; i < many; i++) {
    const g = padded[r + 3 + i]!;
    const inner = Math.fround(w0 * d + w1 * (c + e));
    into[at + i] = inner + (w2 * (b + f) + w3 * (a + g));
    a = b;
    b = c;
    c = d;
    d = e;
    e = f;
    f = g;
  }
}

/** Adds the stretches further from the middle than the third. */
function weighOuter(
  source: Float32Array,
  starts: Int32Array,
  weight: Float32Array,
  r: number,
  into: Float32Array,
  at: number,
  many: number,
): void {
  for (let k = 4; k < r; k += 2) {
    const a = starts[r - k]!;
    const b = starts[r + k]!;
    const c = starts[r - k - 1]!;
    const d = starts[r + k + 1]!;
    const wk = weight[k]!;
    const wl = weight[k + 1]!;
    for (let i = 0; i < many; i++)
      into[at + i]! += wk * (source[a + i]! + source[b + i]!) + wl * (source[c + i]! + source[d + i]!);
  }
}
