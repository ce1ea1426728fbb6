import { type Line, lineThrough, surestLine } from './find-lines.ts';
import { hueTone, lightTone } from './find-texture.ts';
import type { Picture, PlacePx } from './picture.ts';

/** A side of the surface, as the photo shows it. */
export interface FoundSide {
  readonly line: Line;
  /** The likeliest line of all, before its pieces were placed by themselves: steadier, and drawn to a bevel's outer edge. */
  readonly likely: Line;
  /** How unlike each other inside and outside are, 0 to 1: one less the overlap of their distributions. */
  readonly contrast: number;
  /** How much rougher it runs inside than outside, natural logarithm. */
  readonly rougher: number;
  /** Distances of the side's pieces, twelve at most of the side, each placed by itself, from the line, px. */
  readonly scatter_px: readonly number[];
}

/** The likeliest line, the steadier one, where at both ends it lies within so many px of the one that the pieces gave; else that one. */
export function settledLine({ line, likely }: FoundSide, a: PlacePx, b: PlacePx, within_px: number): Line {
  const apart = ({ x, y }: PlacePx) =>
    Math.abs((line.nx - likely.nx) * x + (line.ny - likely.ny) * y - line.far + likely.far);
  return Math.max(apart(a), apart(b)) <= within_px ? likely : line;
}

const levels = 24;

/**
 * The straight line that parts inside from outside best, near the line from a to b (clockwise as seen: outside lies at the
 * left hand of who walks from a to b).
 *
 * Along lines parallel to the side it takes, in short bins, how rough the tones run and how they lie; what is deep
 * inside and well outside the strip says how likely each value is on either side; the line is the one with the greatest likelihood.
 * Roughness alone decides where it can: a plain bevel is not part of a scraped or blued surface, however bright. Where
 * roughness tells nothing, brightness and hue decide too.
 * @param reach half the strip's width, px
 * @param from  share of the way from a to b where the strip begins; `to` where it ends
 */
export function foundSide(
  picture: Picture,
  a: PlacePx,
  b: PlacePx,
  reach: number,
  from = 0.03,
  to = 0.97,
): FoundSide | undefined {
  const strip = stripAlong(picture, a, b, reach, from, to);
  if (strip === undefined) return undefined;
  const { rough, light, hue, rows, bins, pieces } = strip;
  const parted = [rough, light, hue].map((values) => parting(values, rows, bins));
  const byRoughness = parted[0]!.contrast > 0.2 && parted[0]!.step > 0;
  const used = byRoughness ? [{ ...parted[0]!, ratio: halfway(rough, parted[0]!) }] : parted;
  const contrast = Math.max(...used.map((one) => one.contrast));
  // Sums of the logarithms of the likelihood ratio from deep inside up to each row.
  const sums = new Float32Array(bins * (rows + 1));
  for (let i = 0; i < bins; i++)
    for (let k = 0; k < rows; k++) {
      let ratio = 0;
      for (const one of used) ratio += one.ratio[i * rows + k]!;
      sums[i * (rows + 1) + k + 1] = sums[i * (rows + 1) + k]! + Math.max(-3, Math.min(3, ratio));
    }
  const sumAt = (i: number, k: number): number => {
    const low = Math.max(0, Math.min(rows - 1, Math.floor(k)));
    const t = Math.max(0, Math.min(1, k - low));
    const p = i * (rows + 1) + low;
    return sums[p]! * (1 - t) + sums[p + 1]! * t;
  };
  const score = (first: number, last: number): number => {
    let sum = 0;
    for (let i = 0; i < bins; i++) sum += sumAt(i, first + ((last - first) * (i + 0.5)) / bins);
    return sum;
  };
  let best = { first: rows / 2, last: rows / 2, score: Number.NEGATIVE_INFINITY };
  const tried = (first: number, last: number) => {
    const one = score(first, last);
    if (one > best.score) best = { first, last, score: one };
  };
  for (let first = 0; first <= rows; first += 2)
    for (let last = 0; last <= rows; last += 2) tried(first, last);
  for (const step of [1, 0.5, 0.25]) {
    const { first, last } = best;
    for (let i = -2; i <= 2; i++) for (let j = -2; j <= 2; j++) tried(first + i * step, last + j * step);
  }
  const { place } = strip;
  // Row k begins half a row before its samples.
  const at = (share: number, row: number) => place(from + share * (to - from), row - 0.5 - reach);
  // A row half on the surface runs nearly as rough as one wholly on it: the edge lies in its middle, not at its end.
  const likely = lineThrough(at(0, best.first - 0.2), at(1, best.last - 0.2));
  const places: PlacePx[] = [];
  for (let piece = 0; piece < pieces; piece++) {
    const share = (piece + 0.5) / pieces;
    const near = best.first + (best.last - best.first) * share;
    const row = byRoughness ? firstFall(strip, piece, near) : pieceBest(strip, sumAt, best, piece, reach);
    if (row !== undefined) places.push(at(share, row));
  }
  const line = places.length > pieces / 2 ? surestLine(places) : undefined;
  const { nx, ny, far } = line ?? likely;
  const turned = nx * likely.nx + ny * likely.ny < 0 ? -1 : 1;
  const scatter_px = places.map((p) => nx * p.x + ny * p.y - far);
  return {
    line: { nx: turned * nx, ny: turned * ny, far: turned * far },
    likely,
    contrast,
    rougher: parted[0]!.step,
    scatter_px,
  };
}

/**
 * Where the piece's mean roughness first falls below the middle between inside and outside, going outward, near a row; absent
 * where it does not. A bevel's outer edge may run rough again behind it.
 */
function firstFall({ rough, rows, bins, pieces }: Strip, piece: number, near: number): number | undefined {
  const each = bins / pieces;
  const mean = new Float32Array(rows);
  for (let i = piece * each; i < (piece + 1) * each; i++)
    for (let k = 0; k < rows; k++) mean[k]! += rough[i * rows + k]! / each;
  const edge = Math.max(2, Math.floor(0.3 * rows));
  let inside = 0;
  let outside = 0;
  for (let k = 0; k < edge; k++) {
    inside += mean[k]! / edge;
    outside += mean[rows - 1 - k]! / edge;
  }
  if (inside - outside < 0.25) return undefined;
  const middle = (inside + outside) / 2;
  const last = Math.min(rows - 2, Math.ceil(near + 4));
  for (let k = Math.max(1, Math.floor(near - Math.min(0.3 * rows, 14))); k <= last; k++)
    if (mean[k - 1]! >= middle && mean[k]! < middle && mean[k + 1]! < middle)
      return k - 0.5 + (mean[k - 1]! - middle) / (mean[k - 1]! - mean[k]!);
  return undefined;
}

function pieceBest(
  { bins, pieces }: Strip,
  sumAt: (bin: number, row: number) => number,
  { first, last }: { first: number; last: number },
  piece: number,
  reach: number,
): number {
  let at = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let off = -reach; off <= reach; off += 0.5) {
    let sum = 0;
    for (let i = (piece * bins) / pieces; i < ((piece + 1) * bins) / pieces; i++)
      sum += sumAt(i, first + ((last - first) * (i + 0.5)) / bins + off);
    // Equal sums: the nearer.
    if (sum > most + 1e-6 || (sum > most - 1e-6 && Math.abs(off) < Math.abs(at))) {
      most = Math.max(most, sum);
      at = off;
    }
  }
  return first + ((last - first) * (piece + 0.5)) / pieces + at;
}

interface Strip {
  readonly rows: number;
  /** Short bins along the side, as many to each of its pieces. */
  readonly bins: number;
  readonly pieces: number;
  /** Bin by bin, each from deep inside to well outside. */
  readonly rough: Float32Array;
  readonly light: Float32Array;
  readonly hue: Float32Array;
  /** A place in the photo from the share of the way along and the distance outward, px. */
  readonly place: (along: number, out: number) => PlacePx;
}

/** Absent when the strip runs out of the photo. */
function stripAlong(
  picture: Picture,
  a: PlacePx,
  b: PlacePx,
  reach: number,
  from: number,
  to: number,
): Strip | undefined {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const ux = (b.x - a.x) / long;
  const uy = (b.y - a.y) / long;
  const place = (along: number, out: number): PlacePx => ({
    x: a.x + along * long * ux + out * uy,
    y: a.y + along * long * uy - out * ux,
  });
  const ends = [place(from, -reach), place(from, reach), place(to, -reach), place(to, reach)];
  const { width_px, height_px, rgb } = picture;
  if (ends.some(({ x, y }) => !(x >= 0 && y >= 0 && x < width_px - 1 && y < height_px - 1))) return undefined;
  const rows = 2 * Math.round(reach) + 1;
  const used = (to - from) * long;
  const pieces = Math.max(3, Math.min(12, Math.floor(used / 36)));
  const bins = pieces * Math.max(1, Math.min(8, Math.floor(used / (6 * pieces))));
  const perBin = Math.max(4, Math.min(9, Math.ceil(used / bins)));
  const n = bins * perBin;
  const rough = new Float32Array(bins * rows);
  const light = new Float32Array(bins * rows);
  const hue = new Float32Array(bins * rows);
  const step = used / n;
  const mixed = new Float32Array(3);
  for (let k = 0; k < rows; k++) {
    const start = place(from, k - (rows - 1) / 2);
    let l1 = 0;
    let h1 = 0;
    for (let j = 0; j < n; j++) {
      const x = start.x + (j + 0.5) * step * ux;
      const y = start.y + (j + 0.5) * step * uy;
      const col = Math.floor(x);
      const row = Math.floor(y);
      const u = x - col;
      const v = y - row;
      const p = 3 * (row * width_px + col);
      const q = p + 3 * width_px;
      for (let c = 0; c < 3; c++)
        mixed[c] =
          (rgb[p + c]! * (1 - u) + rgb[p + 3 + c]! * u) * (1 - v) +
          (rgb[q + c]! * (1 - u) + rgb[q + 3 + c]! * u) * v;
      const l = lightTone(mixed[0]!, mixed[1]!, mixed[2]!);
      const h = hueTone(mixed[0]!, mixed[2]!);
      const bin = Math.floor(j / perBin) * rows + k;
      light[bin]! += l / perBin;
      hue[bin]! += h / perBin;
      if (j > 0) rough[bin]! += (Math.abs(l - l1) + Math.abs(h - h1)) / perBin;
      l1 = l;
      h1 = h;
    }
  }
  for (let i = 0; i < rough.length; i++) rough[i] = Math.log(rough[i]! + 0.002);
  return { rows, bins, pieces, rough, light, hue, place };
}

/**
 * Which side of the middle between inside and outside each value lies, -1 to 1. Steadier for roughness than likelihood: a
 * bevel's faint edge is not likely in a plain field beside it, and yet nowhere near as rough as the surface.
 */
function halfway(values: Float32Array, { step, middle }: { step: number; middle: number }): Float32Array {
  return values.map((value) => Math.max(-1, Math.min(1, (2 * (value - middle)) / step)));
}

/** Logarithm of how much likelier each value is inside than outside, and how little the two distributions overlap. */
function parting(
  values: Float32Array,
  rows: number,
  bins: number,
): { ratio: Float32Array; contrast: number; step: number; middle: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const scale = high > low ? (levels - 1e-3) / (high - low) : 0;
  const inside = new Float32Array(levels).fill(0.5);
  const outside = new Float32Array(levels).fill(0.5);
  const edge = Math.max(2, Math.floor(0.3 * rows));
  let step = 0;
  let middle = 0;
  for (let i = 0; i < bins; i++)
    for (let k = 0; k < edge; k++) {
      const within = values[i * rows + k]!;
      const beside = values[i * rows + rows - 1 - k]!;
      step += (within - beside) / (bins * edge);
      middle += (within + beside) / (2 * bins * edge);
      inside[Math.floor((values[i * rows + k]! - low) * scale)]!++;
      outside[Math.floor((values[i * rows + rows - 1 - k]! - low) * scale)]!++;
    }
  const total = bins * edge + 0.5 * levels;
  let overlap = 0;
  const table = inside.map((one, i) => {
    overlap += Math.sqrt(one * outside[i]!) / total;
    return Math.log(one / outside[i]!);
  });
  const ratio = values.map((value) => table[Math.floor((value - low) * scale)]!);
  return { ratio, contrast: Math.max(0, 1 - overlap), step, middle };
}
