/** Elements per mm of every field on the surface; the truth is kept on the same raster. */
export const perMm = 10;

/** A value everywhere on the surface: row by row from (0,0), element centres at (i + 0.5) / perMm. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly at: Float32Array;
}

export function emptyField(width: number, height: number): Field {
  return { width, height, at: new Float32Array(width * height) };
}

/** Smoothed by three running means in each direction, close to a Gaussian of this sd; the rim is continued outward. */
export function smoothed(field: Field, sd_mm: number): Field {
  const { width, height } = field;
  const radius = Math.max(1, Math.round((Math.sqrt(4 * (sd_mm * perMm) ** 2 + 1) - 1) / 2));
  let from = Float32Array.from(field.at);
  let to = new Float32Array(from.length);
  for (let pass = 0; pass < 3; pass++) {
    for (let row = 0; row < height; row++) runningMean(from, to, row * width, 1, width, radius);
    [from, to] = [to, from];
    columnMeans(from, to, width, height, radius);
    [from, to] = [to, from];
  }
  return { width, height, at: from };
}

function runningMean(
  from: Float32Array,
  to: Float32Array,
  start: number,
  step: number,
  n: number,
  radius: number,
): void {
  const last = n - 1;
  let sum = 0;
  for (let k = -radius; k <= radius; k++) sum += from[start + step * Math.min(last, Math.max(0, k))]!;
  const share = 1 / (2 * radius + 1);
  for (let i = 0; i < n; i++) {
    to[start + step * i] = sum * share;
    sum +=
      from[start + step * Math.min(last, i + radius + 1)]! - from[start + step * Math.max(0, i - radius)]!;
  }
}

/** All columns at once, row after row, so that memory is walked in order. */
function columnMeans(
  from: Float32Array,
  to: Float32Array,
  width: number,
  height: number,
  radius: number,
): void {
  const last = height - 1;
  const sum = new Float64Array(width);
  for (let k = -radius; k <= radius; k++) {
    const start = width * Math.min(last, Math.max(0, k));
    for (let col = 0; col < width; col++) sum[col] = sum[col]! + from[start + col]!;
  }
  const share = 1 / (2 * radius + 1);
  for (let row = 0; row < height; row++) {
    const here = row * width;
    const comes = width * Math.min(last, row + radius + 1);
    const goes = width * Math.max(0, row - radius);
    for (let col = 0; col < width; col++) {
      to[here + col] = sum[col]! * share;
      sum[col] = sum[col]! + from[comes + col]! - from[goes + col]!;
    }
  }
}
