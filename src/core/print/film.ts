import { type Coarse, coarseOf, endsInRow, type Pieces, piecesOf, sampled, smoothMeans } from './coarse.ts';
import { type Colour, colourOf } from './colour.ts';
import { bendOf, bent } from './half-cover.ts';
import { type Levels, levelsOf } from './levels.ts';
import { quantile } from './quantile.ts';
import { type Rectified, rasterPxPerMm } from './rectified.ts';
import { samplePlaces, valuesAt } from './samples.ts';
import { sharpen } from './smooth.ts';

/** How strongly each element is blue: 0 bare, 1 full film as it is nearby. */
export interface Film {
  readonly strength: Float32Array;
  readonly gleam: Float32Array;
  /** Scatter of bare surface, as a share of full film. */
  readonly noise: number;
  /** Share of all that is blue at all which is between film and bare: blur, haze and thin film. */
  readonly haze: number;
  /** Sd of the blur of film edges, mm. */
  readonly blur_mm: number;
}

/** A coarse element, mm. */
const coarse_mm = 2;
/** Sharpening undoes blur of about this many pixels of the photo; more of it where a millimetre has few of them. */
const sharper = { width_px: 1.6, by: 1.5, more: 1, fewPx: 4.5, manyPx: 6 };
/** Local film strength is smoothed over this, mm, and held to the forecast by a pull of this weight. */
const local = { mm: 5.5, pull: 0.05, above: 0.6, turns: 2 };
/** Veil of glare, log of brighter: beyond this nothing is left to see. */
const mostVeil = 4;
const veilSteps = 1024;
/** Between these, of full film, an element is neither bare nor film. */
const mid = { from: 0.25, to: 0.6 };
export function filmOf(rect: Rectified, out: Uint8Array): Film {
  const { width, height, px_per_mm } = rect;
  const coarse = coarseOf(width, height, Math.round(coarse_mm * rasterPxPerMm));
  const outShare = sampled(out, width, height, coarse);
  const outCoarse = Uint8Array.from(outShare, (share) => (share > 0.01 ? 1 : 0));
  const places = samplePlaces(width, height, out);
  const colour = colourOf(rect, places, outCoarse, coarse);
  const strength = colour.film;
  const edges = edgesOf(strength, width, places);
  const few = (sharper.manyPx - px_per_mm) / (sharper.manyPx - sharper.fewPx);
  const by = sharper.by + sharper.more * Math.max(0, Math.min(1, few));
  sharpen(strength, width, height, (sharper.width_px * rasterPxPerMm) / px_per_mm, by);

  const levels = levelsOf(valuesAt(strength, places));
  const nearby = localFilm(strength, colour, levels, width, height, places, outCoarse, coarse);
  asShare(strength, levels.bare, nearby, coarse, width, height);
  return {
    strength,
    gleam: colour.gleam,
    noise: levels.sigma / (levels.film - levels.bare),
    haze: hazeOf(valuesAt(strength, places)),
    blur_mm: blurOf(edges, levels),
  };
}

/** What was log units becomes the share of full film nearby, bent so that half cover lies at the same share everywhere. */
function asShare(
  values: Float32Array,
  bare: number,
  { full, lets }: LocalFilm,
  coarse: Coarse,
  width: number,
  height: number,
): void {
  const share = full.map((one) => 1 / (one - bare));
  const bend = lets.map(bendOf);
  const pieces = piecesOf(coarse, width);
  const shares = new Float64Array(coarse.width + 2);
  const bends = new Float64Array(coarse.width + 2);
  for (let j = 0; j < height; j++) {
    endsInRow(share, coarse, j, shares);
    endsInRow(bend, coarse, j, bends);
    scaleRow(values, j * width, bare, pieces, coarse.block, shares, bends);
  }
}

function scaleRow(
  values: Float32Array,
  from: number,
  bare: number,
  { ends, centres }: Pieces,
  block: number,
  shares: Float64Array,
  bends: Float64Array,
): void {
  for (let p = 0, i = 0; p < ends.length; p++) {
    const end = ends[p]!;
    const shareStep = (shares[p + 1]! - shares[p]!) / block;
    const bendStep = (bends[p + 1]! - bends[p]!) / block;
    let share = shares[p]! + shareStep * (i - centres[p]!);
    let bend = bends[p]! + bendStep * (i - centres[p]!);
    for (; i < end; i++, share += shareStep, bend += bendStep)
      values[from + i] = bent((values[from + i]! - bare) * Math.fround(share), Math.fround(bend));
  }
}

/** Film at its fullest nearby, on the coarse raster. */
interface LocalFilm {
  /** How blue it is, log units. */
  readonly full: Float32Array;
  /** Its light over that of bare surface: what it lets through, and any veil over both. */
  readonly lets: Float32Array;
}

/**
 * Full film, place by place on the coarse raster. Glare lays a veil of equal light over all channels, which lessens the
 * contrast of film in a way that can be worked out from how much brighter the bare surface looks there; what is seen of film
 * nearby then corrects the forecast.
 */
function localFilm(
  values: Float32Array,
  { gleam, bareShade, weight }: Colour,
  { bare, film }: Levels,
  width: number,
  height: number,
  places: Int32Array,
  outCoarse: Uint8Array,
  coarse: Coarse,
): LocalFilm {
  const strong = places.filter((o) => values[o]! > bare + 0.75 * (film - bare));
  const dark = strong.length ? Math.max(0.3, -quantile(valuesAt(gleam, strong), 0.5)) : 1.2;
  const red = Math.exp(-dark);
  const blue = Math.min(1, red * Math.exp(Math.max(0.2, film - bare - weight * dark)));
  const seen = bareShade.filter((_, k) => !outCoarse[k]);
  const usual = seen.length ? quantile(seen, 0.5) : 0;
  const contrast = (veil: number): number =>
    Math.log((blue + veil) / (red + veil)) - weight * Math.log((red + veil) / (1 + veil));
  const whole = contrast(0);
  // A table over the log of how much brighter it is: it is wanted once for each coarse element.
  const table = Float32Array.from({ length: veilSteps + 1 }, (_, k) => {
    const veil = Math.exp((k * mostVeil) / veilSteps) - 1;
    return bare + ((film - bare) * contrast(veil)) / whole;
  });
  const forecast = bareShade.map((shade) => {
    const brighter = Math.max(0, Math.min(mostVeil, shade - usual));
    return table[Math.round((brighter * veilSteps) / mostVeil)]!;
  });
  const means = sampled(values, width, height, coarse);
  const sd = (local.mm * rasterPxPerMm) / coarse.block;
  let full: Float32Array = forecast;
  let counts = new Float32Array(means.length);
  for (let turn = 0; turn < local.turns; turn++) {
    const from = full;
    counts = means.map((one, k) => (!outCoarse[k] && one > bare + local.above * (from[k]! - bare) ? 1 : 0));
    full = smoothMeans(means, counts, coarse, sd, forecast, 1e-4, local.pull);
  }
  const light = sampled(gleam, width, height, coarse).map(Math.exp);
  return {
    full: full.map((one) => Math.max(one, bare + 1e-3)),
    lets: smoothMeans(light, counts, coarse, sd, red, 1e-4, local.pull),
  };
}

/** @param sample  of strength */
function hazeOf(sample: Float32Array): number {
  let between = 0;
  let above = 0;
  for (let k = 0; k < sample.length; k++) {
    if (sample[k]! >= mid.to) above++;
    else if (sample[k]! >= mid.from) between++;
  }
  return between / Math.max(1, between + above);
}

/** Film at the sampled places before it is sharpened, and how steeply it rises there, an element. */
interface Edges {
  readonly film: Float32Array;
  readonly steep: Float32Array;
}

function edgesOf(film: Float32Array, width: number, places: Int32Array): Edges {
  const steep = new Float32Array(places.length);
  for (let k = 0; k < places.length; k++) {
    const o = places[k]!;
    const along = film[o + 1]! - film[o - 1]!;
    const across = film[o + width]! - film[o - width]!;
    steep[k] = Math.sqrt(along * along + across * across) / 2;
  }
  return { film: valuesAt(film, places), steep };
}

/** A step blurred with sd s rises with at most height / (s √2π): the steep end of the gradients on film edges tells s. */
function blurOf(edges: Edges, { bare, film }: Levels): number {
  const steep = edges.steep.filter((_, k) => {
    const here = (edges.film[k]! - bare) / (film - bare);
    return here >= 0.3 && here <= 0.7;
  });
  if (steep.length < 30) return 0;
  const most = (quantile(steep, 0.9) * rasterPxPerMm) / (film - bare);
  return 1 / (most * Math.sqrt(2 * Math.PI));
}
