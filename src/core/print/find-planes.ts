import type { Picture, PlacePx } from './picture.ts';

/** One number a pixel, row by row. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly at: Float32Array;
}

/** A photo averaged over blocks of `by` × `by` pixels, a plane for each colour, 0 to 255. */
export interface Shrunk {
  readonly by: number;
  readonly width: number;
  readonly height: number;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

/** Averages so that the longer side comes to about `side` elements; what is left over at the right and bottom is dropped. */
export function shrunk({ width_px, height_px, rgb }: Picture, side: number): Shrunk {
  const by = Math.max(1, Math.round(Math.max(width_px, height_px) / side));
  const width = Math.floor(width_px / by);
  const height = Math.floor(height_px / by);
  const red = new Float32Array(width * height);
  const green = new Float32Array(width * height);
  const blue = new Float32Array(width * height);
  for (let y = 0; y < height * by; y++) {
    const row = Math.floor(y / by) * width;
    let p = 3 * y * width_px;
    for (let x = 0; x < width; x++) {
      let r = 0;
      let g = 0;
      let b = 0;
      for (let i = 0; i < by; i++, p += 3) {
        r += rgb[p]!;
        g += rgb[p + 1]!;
        b += rgb[p + 2]!;
      }
      red[row + x]! += r;
      green[row + x]! += g;
      blue[row + x]! += b;
    }
  }
  const share = 1 / (by * by);
  for (let i = 0; i < width * height; i++) {
    red[i]! *= share;
    green[i]! *= share;
    blue[i]! *= share;
  }
  return { by, width, height, red, green, blue };
}

/** From a place in the shrunk photo to the same place in the photo, px. */
export function grown({ x, y }: PlacePx, by: number): PlacePx {
  return { x: x * by + (by - 1) / 2, y: y * by + (by - 1) / 2 };
}

/** Brightness, the plain mean of the colours: nothing here hangs on how an eye would weigh them. */
export function grey({ width, height, red, green, blue }: Shrunk): Plane {
  return { width, height, at: red.map((r, i) => (r + green[i]! + blue[i]!) / 3) };
}

/** Mean over the square of 2 · radius + 1 elements around each, cut off at the plane's edge. */
export function boxMean({ width, height, at }: Plane, radius: number): Plane {
  const across = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(radius, width); x++) sum += at[row + x]!;
    for (let x = 0; x < width; x++) {
      if (x + radius < width) sum += at[row + x + radius]!;
      if (x - radius > 0) sum -= at[row + x - radius - 1]!;
      across[row + x] = sum / (Math.min(width - 1, x + radius) - Math.max(0, x - radius) + 1);
    }
  }
  const mean = new Float32Array(width * height);
  const sums = new Float64Array(width);
  for (let y = 0; y < Math.min(radius, height); y++)
    for (let x = 0; x < width; x++) sums[x]! += across[y * width + x]!;
  for (let y = 0; y < height; y++) {
    const add = y + radius < height ? (y + radius) * width : -1;
    const drop = y - radius > 0 ? (y - radius - 1) * width : -1;
    const n = Math.min(height - 1, y + radius) - Math.max(0, y - radius) + 1;
    for (let x = 0; x < width; x++) {
      if (add >= 0) sums[x]! += across[add + x]!;
      if (drop >= 0) sums[x]! -= across[drop + x]!;
      mean[y * width + x] = sums[x]! / n;
    }
  }
  return { width, height, at: mean };
}
