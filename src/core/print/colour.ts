import { bareLevel } from './bare.ts';
import { type Coarse, endsInRow, type Pieces, piecesOf, refineRow, sampled, smoothMeans } from './coarse.ts';
import { quantile } from './quantile.ts';
import { type Rectified, rasterPxPerMm } from './rectified.ts';
import { valuesAt } from './samples.ts';

/** How much like blue film each element looks, with light and base taken out: near 0 on bare surface, in log units. */
export interface Colour {
  readonly film: Float32Array;
  /** Log of how much brighter than bare surface nearby; burnished metal is above 0. */
  readonly gleam: Float32Array;
  /** Brightness of the bare surface, log, on the coarse raster. */
  readonly bareShade: Float32Array;
  /** Weight of darkness beside blueness. */
  readonly weight: number;
}

/** Bare brightness is smoothed over this. */
const shade_mm = 6;
/** Darkness counts within these, log. */
const darkest = 2;
const brightest = -1;
/**
 * Darkness may weigh up to `low` of blueness on photos with resolution to spare, and up to `high` where a millimetre has
 * few pixels: JPEG halves the resolution of colour, not of brightness, so that edges are then better seen in the dark.
 */
const most = { low: 0.4, high: 0.8, fewPx: 4.5, manyPx: 5.5 };

/** Takes the rectified photo's rasters over: they hold film and gleam afterwards. */
export function colourOf(rect: Rectified, places: Int32Array, outCoarse: Uint8Array, coarse: Coarse): Colour {
  const { width, height, blueness, shade } = rect;
  const step_mm = coarse.block / rasterPxPerMm;
  const blue = sampled(blueness, width, height, coarse);
  const light = sampled(shade, width, height, coarse);
  const bare = bareLevel(blue, outCoarse, coarse, step_mm);
  const counts = blue.map((one, k) => (!outCoarse[k] && one - bare.level[k]! < 2 * bare.sigma ? 1 : 0));
  const bareShade = smoothMeans(light, counts, coarse, shade_mm / step_mm, quantile(light, 0.5), 1e-4);

  const weight = darknessWeight(rect, places, bare.level, bareShade, coarse);
  // A surface has millions of elements: film takes blueness' place, gleam takes shade's.
  const film = blueness;
  const gleam = shade;
  const pieces = piecesOf(coarse, width);
  const levels = new Float64Array(coarse.width + 2);
  const lits = new Float64Array(coarse.width + 2);
  for (let j = 0; j < height; j++) {
    endsInRow(bare.level, coarse, j, levels);
    endsInRow(bareShade, coarse, j, lits);
    overBare(film, gleam, j * width, pieces, coarse.block, levels, lits, weight);
  }
  return { film, gleam, bareShade, weight };
}

/** A row of blueness and shade becomes film and gleam: what it is more than bare surface, darkness added by its weight. */
function overBare(
  film: Float32Array,
  gleam: Float32Array,
  from: number,
  { ends, centres }: Pieces,
  block: number,
  levels: Float64Array,
  lits: Float64Array,
  weight: number,
): void {
  for (let p = 0, i = 0; p < ends.length; p++) {
    const end = ends[p]!;
    const levelStep = (levels[p + 1]! - levels[p]!) / block;
    const litStep = (lits[p + 1]! - lits[p]!) / block;
    let level = levels[p]! + levelStep * (i - centres[p]!);
    let lit = lits[p]! + litStep * (i - centres[p]!);
    for (; i < end; i++, level += levelStep, lit += litStep) {
      const bright = gleam[from + i]! - Math.fround(lit);
      gleam[from + i] = bright;
      const dark = bright < -darkest ? darkest : bright > -brightest ? brightest : -bright;
      film[from + i]! += weight * dark - Math.fround(level);
    }
  }
}

/** Fisher's discriminant of blueness and darkness between film and bare surface, on this very picture. */
function darknessWeight(
  rect: Rectified,
  places: Int32Array,
  level: Float32Array,
  bareShade: Float32Array,
  coarse: Coarse,
): number {
  const { width, px_per_mm } = rect;
  if (places.length < 16) return 0;
  const blues = valuesAt(rect.blueness, places);
  const darks = valuesAt(rect.shade, places);
  const row = new Float32Array(width);
  const lit = new Float32Array(width);
  const pieces = piecesOf(coarse, width);
  for (let k = 0; k < places.length; ) {
    const j = Math.floor(places[k]! / width);
    refineRow(level, coarse, j, pieces, row);
    refineRow(bareShade, coarse, j, pieces, lit);
    k = lessBare(blues, darks, places, k, j * width, row, lit);
  }
  // Two means in turn: where film begins, near enough for a discriminant.
  let split = 0.4 * quantile(blues, 0.995);
  for (let turn = 0; turn < 6; turn++) {
    let above = 0;
    let many = 0;
    let below = 0;
    for (let k = 0; k < blues.length; k++) {
      const one = blues[k]!;
      if (one > split) {
        above += one;
        many++;
      } else below += one;
    }
    split = 0.5 * (above / Math.max(1, many) + below / Math.max(1, blues.length - many));
  }
  const film = spread(blues, darks, split, Number.POSITIVE_INFINITY);
  const bare = spread(blues, darks, Number.NEGATIVE_INFINITY, split);
  if (!film || !bare) return 0;
  const xx = film.xx + bare.xx;
  const xy = film.xy + bare.xy;
  const yy = film.yy + bare.yy;
  const dx = film.x - bare.x;
  const dy = film.y - bare.y;
  const ratio = (xx * dy - xy * dx) / (yy * dx - xy * dy);
  const few = Math.max(0, Math.min(1, (most.manyPx - px_per_mm) / (most.manyPx - most.fewPx)));
  const limit = most.low + (most.high - most.low) * few;
  return ratio > 0 ? Math.min(limit, ratio) : 0;
}

/** Blueness and shade of one row's samples, from the k-th on, become more than bare surface and darker than it; the first of the next row. */
function lessBare(
  blues: Float32Array,
  darks: Float32Array,
  places: Int32Array,
  first: number,
  from: number,
  level: Float32Array,
  lit: Float32Array,
): number {
  let k = first;
  for (let i = places[k]! - from; i < level.length; i = places[k]! - from) {
    blues[k]! -= level[i]!;
    darks[k] = Math.max(brightest, Math.min(darkest, lit[i]! - darks[k]!));
    if (++k === places.length) break;
  }
  return k;
}

interface Spread {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Of those whose blueness is above `from` and at most `to`. */
function spread(xs: Float32Array, ys: Float32Array, from: number, to: number): Spread | undefined {
  let n = 0;
  let x = 0;
  let y = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let k = 0; k < xs.length; k++) {
    const a = xs[k]!;
    if (!(a > from && a <= to)) continue;
    const b = ys[k]!;
    n++;
    x += a;
    y += b;
    xx += a * a;
    xy += a * b;
    yy += b * b;
  }
  if (n < 8) return undefined;
  x /= n;
  y /= n;
  return { x, y, xx: xx / n - x * x, xy: xy / n - x * y, yy: yy / n - y * y };
}
