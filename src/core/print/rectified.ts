import { type Homography, pxPerMm, surfaceToPhoto } from './homography.ts';
import type { Corners, Picture, SurfaceSize } from './picture.ts';
import { srgbLight } from './srgb.ts';
import { fresh, type Workspace } from './workspace.ts';

/**
 * Raster of the surface, pixels a millimetre. Ten are no better on counts and bearing than eight, and cost half as much
 * again; six lose bearing.
 */
export const rasterPxPerMm = 8;
/** Clipped: all three channels at or above this are light, not surface. */
const clippedAt = 247;
/** Below this the logarithm of a dark pixel's light is held, so that noise in black does not look like blue. */
const darkest = 0.002;
/** Samples between whole pixel values: sixteen steps. */
const steps = 16;
/** Places in the photo are worked out for one sample in so many and stepped evenly between: less than 0.05 px off where a photo's scale trebles along the surface. */
const stretch = 8;
/** Places in the photo are whole numbers of this part of a pixel. */
const unit = 16384;
const clippedSum = clippedAt * steps;
/** Two channels side by side in a word: eight bits each, ten bits each. */
const evens = 0x00ff00ff;
const tens = 0x03ff03ff;

/** A photo brought to the surface, row by row from (0,0); element centres at (i + 0.5) / rasterPxPerMm mm. */
export interface Rectified {
  readonly width: number;
  readonly height: number;
  /** log blue − log red light: rises where blue film eats red. */
  readonly blueness: Float32Array;
  /** Mean log of red and green light. */
  readonly shade: Float32Array;
  /** 1 where glare clipped the photo, 2 where the surface runs out of it, else 0. */
  readonly unread: Uint8Array;
  /** Pixels of the photo along a mm in the surface's middle. */
  readonly px_per_mm: number;
}

/** log of the light of a value in sixteenths. */
const logLight = Float32Array.from({ length: 256 * steps }, (_, k) =>
  Math.log(srgbLight(k / steps) + darkest),
);

/**
 * One resampling step from the photo to the surface: between four pixels, or the mean of several where the photo is finer.
 *
 * @param workspace  gives the rasters that are written
 */
export function rectified(
  picture: Picture,
  corners: Corners,
  size: SurfaceSize,
  workspace: (many: number) => Workspace = fresh,
): Rectified {
  const toPhoto = surfaceToPhoto(corners, size);
  const width = Math.max(1, Math.round(size.length_mm * rasterPxPerMm));
  const height = Math.max(1, Math.round(size.width_mm * rasterPxPerMm));
  const px_per_mm = pxPerMm(toPhoto, { x: size.length_mm / 2, y: size.width_mm / 2 });
  const each = Math.min(6, Math.max(1, Math.round(px_per_mm / rasterPxPerMm)));
  const logs = workspace(width * height);
  const { blueness, shade, unread } = logs;
  const { rgb, width_px, height_px } = picture;
  // One pixel is not between others.
  const isBetween = each === 1 && width_px > 1 && height_px > 1;
  const photo = new DataView(rgb.buffer, rgb.byteOffset, rgb.byteLength);
  const row: Row = {
    us: new Int32Array(width * each),
    vs: new Int32Array(width * each),
    red: new Int32Array(width),
    green: new Int32Array(width),
    blue: new Int32Array(width),
  };
  for (let j = 0; j < height; j++) {
    const from = j * width;
    const here = unread.subarray(from, from + width);
    if (isBetween) {
      if (placesOf(row, toPhoto, (j + 0.5) / rasterPxPerMm, 1, width_px, height_px, 1e-4))
        markOutside(here, toPhoto, (j + 0.5) / rasterPxPerMm, width_px, height_px);
      betweenFour(row, photo, 3 * width_px, from, logs);
    } else {
      row.red.fill(0);
      row.green.fill(0);
      row.blue.fill(0);
      for (let b = 0; b < each; b++) {
        const y = (j + (b + 0.5) / each) / rasterPxPerMm;
        if (placesOf(row, toPhoto, y, each, width_px, height_px, 0))
          markOutside(here, toPhoto, y, width_px, height_px);
        addNearest(row, each, rgb, 3 * width_px);
      }
      noteSums(row, steps / (each * each), from, logs);
    }
  }
  return { width, height, blueness, shade, unread, px_per_mm };
}

/** What is worked on while one row of the surface is sampled. */
interface Row {
  /** Places of the samples in the photo, in 1/unit px, held within it. */
  readonly us: Int32Array;
  readonly vs: Int32Array;
  /** Of each element: channels summed over its samples. */
  readonly red: Int32Array;
  readonly green: Int32Array;
  readonly blue: Int32Array;
}

/** Places of the samples at height y (mm), `each` to an element, `short` px within the last pixels; true where some lie more than a pixel outside. */
function placesOf(
  { us, vs }: Row,
  h: Homography,
  y: number,
  each: number,
  width_px: number,
  height_px: number,
  short: number,
): boolean {
  const [h0, h1, h2, h3, h4, h5, h6, h7] = h;
  const right = width_px - 1;
  const bottom = height_px - 1;
  const lastU = Math.floor((right - short) * unit);
  const lastV = Math.floor((bottom - short) * unit);
  const step_mm = 1 / (each * rasterPxPerMm);
  const many = us.length;
  const nearby = Math.min(stretch, many);
  let outside = false;
  let x = 0.5 * step_mm;
  let w = 1 / (h6 * x + h7 * y + 1);
  let u = (h0 * x + h1 * y + h2) * w;
  let v = (h3 * x + h4 * y + h5) * w;
  for (let s = 0; s < many; s += nearby) {
    x = (s + nearby + 0.5) * step_mm;
    w = 1 / (h6 * x + h7 * y + 1);
    const nextU = (h0 * x + h1 * y + h2) * w;
    const nextV = (h3 * x + h4 * y + h5) * w;
    let U = (u * unit) | 0;
    let V = (v * unit) | 0;
    const dU = ((nextU - u) * (unit / nearby)) | 0;
    const dV = ((nextV - v) * (unit / nearby)) | 0;
    const end = Math.min(many, s + nearby);
    const lastOfU = U + dU * nearby;
    const lastOfV = V + dV * nearby;
    const inside =
      Math.min(U, V, lastOfU, lastOfV) >= 0 && Math.max(U, lastOfU) <= lastU && Math.max(V, lastOfV) <= lastV;
    for (let k = s; k < end; k++) {
      us[k] = U;
      vs[k] = V;
      U += dU;
      V += dV;
    }
    if (!inside) outside = holdWithin(us, s, end, lastU, right) || outside;
    if (!inside) outside = holdWithin(vs, s, end, lastV, bottom) || outside;
    u = nextU;
    v = nextV;
  }
  return outside;
}

/** Holds places within 0 to `last`; true where some lie more than a pixel outside. */
function holdWithin(places: Int32Array, from: number, to: number, last: number, side_px: number): boolean {
  let outside = false;
  for (let k = from; k < to; k++) {
    const place = places[k]!;
    if (place < -unit || place > (side_px + 1) * unit) outside = true;
    places[k] = Math.max(0, Math.min(last, place));
  }
  return outside;
}

/** 2 where an element at height y (mm) lies more than a pixel outside the photo. */
function markOutside(
  unread: Uint8Array,
  h: Homography,
  y: number,
  width_px: number,
  height_px: number,
): void {
  const [h0, h1, h2, h3, h4, h5, h6, h7] = h;
  for (let i = 0; i < unread.length; i++) {
    const x = (i + 0.5) / rasterPxPerMm;
    const w = 1 / (h6 * x + h7 * y + 1);
    const u = (h0 * x + h1 * y + h2) * w;
    const v = (h3 * x + h4 * y + h5) * w;
    if (u < -1 || v < -1 || u > width_px || v > height_px) unread[i] = 2;
  }
}

/**
 * Between four pixels, in sixteenths. A pixel is read as one word and weighed two channels at a time, weights in 64ths:
 * first down, to quarters in ten bits, then along, which fills sixteen.
 */
function betweenFour({ us, vs }: Row, photo: DataView, line: number, from: number, logs: Workspace): void {
  const { blueness, shade, unread } = logs;
  const log = logLight;
  for (let i = 0; i < us.length; i++) {
    const u = us[i]!;
    const v = vs[i]!;
    const fx = (u >> 8) & 63;
    const fy = (v >> 8) & 63;
    const gx = 64 - fx;
    const gy = 64 - fy;
    const k = (v >> 14) * line + 3 * (u >> 14);
    // The right pixel with the byte before it, so that nothing beyond the photo is read.
    const a = photo.getInt32(k, true);
    const b = photo.getInt32(k + 2, true) >>> 8;
    const c = photo.getInt32(k + line, true);
    const d = photo.getInt32(k + line + 2, true) >>> 8;
    const redBlueLeft = (Math.imul(a & evens, gy) + Math.imul(c & evens, fy)) >>> 4;
    const redBlueRight = (Math.imul(b & evens, gy) + Math.imul(d & evens, fy)) >>> 4;
    const redBlue = Math.imul(redBlueLeft & tens, gx) + Math.imul(redBlueRight & tens, fx);
    const greenLeft = (((a >> 8) & 255) * gy + ((c >> 8) & 255) * fy) >> 4;
    const greenRight = (((b >> 8) & 255) * gy + ((d >> 8) & 255) * fy) >> 4;
    const green = greenLeft * gx + greenRight * fx;
    note(blueness, shade, unread, log, from + i, (redBlue >>> 4) & 4095, green >> 4, redBlue >>> 20);
  }
}

/** Adds the pixels nearest to the `each` samples of every element. */
function addNearest(
  { us, vs, red, green, blue }: Row,
  each: number,
  rgb: Picture['rgb'],
  line: number,
): void {
  for (let i = 0, s = 0; i < red.length; i++)
    for (const end = s + each; s < end; s++) {
      const k = ((vs[s]! + 8192) >> 14) * line + 3 * ((us[s]! + 8192) >> 14);
      red[i]! += rgb[k]!;
      green[i]! += rgb[k + 1]!;
      blue[i]! += rgb[k + 2]!;
    }
}

/** @param share  what the sums are multiplied by to be in sixteenths */
function noteSums({ red, green, blue }: Row, share: number, from: number, logs: Workspace): void {
  const { blueness, shade, unread } = logs;
  for (let i = 0; i < red.length; i++)
    note(
      blueness,
      shade,
      unread,
      logLight,
      from + i,
      (red[i]! * share) | 0,
      (green[i]! * share) | 0,
      (blue[i]! * share) | 0,
    );
}

/** One element's channels, in sixteenths. */
function note(
  blueness: Float32Array,
  shade: Float32Array,
  unread: Uint8Array,
  log: Float32Array,
  at: number,
  red: number,
  green: number,
  blue: number,
): void {
  const logRed = log[red]!;
  blueness[at] = log[blue]! - logRed;
  shade[at] = 0.5 * (logRed + log[green]!);
  if (red >= clippedSum && green >= clippedSum && blue >= clippedSum && unread[at] === 0) unread[at] = 1;
}
