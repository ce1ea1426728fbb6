import { type Coarse, coarseOf, refineRow, sampled, smoothMeans } from './coarse.ts';
import { type Colour, colourOf } from './colour.ts';
import { quantile, sampleStep, sortedQuantile } from './quantile.ts';
import { type Rectified, rasterPxPerMm } from './rectified.ts';
import { narrowlySmoothed } from './smooth.ts';

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
const coarse_mm = 1;
/** Sharpening undoes blur of about this many pixels of the photo; more of it where a millimetre has few of them. */
const sharpen = { width_px: 1.6, by: 1.5, more: 1, fewPx: 4.5, manyPx: 6 };
/** Local film strength is smoothed over this, mm, and held to the forecast by a pull of this weight. */
const local = { mm: 7, pull: 0.05, above: 0.6, turns: 2 };
/** Veil of glare, log of brighter: beyond this nothing is left to see. */
const mostVeil = 4;
const veilSteps = 1024;
/** Between these, of full film, an element is neither bare nor film. */
const mid = { from: 0.25, to: 0.6 };
/** Full film is at least so much bluer than bare surface, log units: else a smooth picture of one colour would be all film. Thin film on glare is at 1.7. */
const faintest = 0.25;

export function filmOf(rect: Rectified, out: Uint8Array): Film {
  const { width, height, px_per_mm } = rect;
  const coarse = coarseOf(width, height, Math.round(coarse_mm * rasterPxPerMm));
  const outShare = sampled(out, width, height, coarse);
  const outCoarse = Uint8Array.from(outShare, (share) => (share > 0.01 ? 1 : 0));
  const colour = colourOf(rect, out, outCoarse, coarse);
  const plain = colour.film;
  const strength = narrowlySmoothed(plain, width, height, (sharpen.width_px * rasterPxPerMm) / px_per_mm);
  const few = (sharpen.manyPx - px_per_mm) / (sharpen.manyPx - sharpen.fewPx);
  const by = sharpen.by + sharpen.more * Math.max(0, Math.min(1, few));
  for (let j = 0; j < height; j++) sharpenRow(strength, plain, by, j * width, (j + 1) * width);

  const levels = levelsOf(strength, width, height, out);
  const full = localFilm(strength, colour, levels, width, height, out, outCoarse, coarse);
  asShare(strength, levels.bare, full, coarse, width, height);
  return {
    strength,
    gleam: colour.gleam,
    noise: levels.sigma / (levels.film - levels.bare),
    haze: hazeOf(strength, width, height, out),
    blur_mm: blurOf(plain, levels, width, height, out),
  };
}

/** What is smooth becomes what stands out from it, added to the plain row. */
function sharpenRow(smooth: Float32Array, plain: Float32Array, by: number, from: number, to: number): void {
  for (let o = from; o < to; o++) smooth[o] = (1 + by) * plain[o]! - by * smooth[o]!;
}

/** What was log units becomes the share of full film nearby. */
function asShare(
  values: Float32Array,
  bare: number,
  full: Float32Array,
  coarse: Coarse,
  width: number,
  height: number,
): void {
  const share = full.map((one) => 1 / (one - bare));
  const row = new Float32Array(width);
  for (let j = 0; j < height; j++) {
    refineRow(share, coarse, j, width, row);
    scaleRow(values, j * width, bare, row);
  }
}

function scaleRow(values: Float32Array, from: number, bare: number, share: Float32Array): void {
  for (let i = 0; i < share.length; i++) values[from + i] = (values[from + i]! - bare) * share[i]!;
}

interface Levels {
  readonly bare: number;
  readonly sigma: number;
  readonly film: number;
}

/** Bare surface: the peak of the lower values and their scatter below it. Full film: median of what is well above half of it, from the top down. */
function levelsOf(values: Float32Array, width: number, height: number, out: Uint8Array): Levels {
  const list: number[] = [];
  const stride = sampleStep(width, height);
  for (let j = 1; j < height; j += stride)
    for (let i = 1; i < width; i += stride) if (!out[j * width + i]) list.push(values[j * width + i]!);
  const sample = Float32Array.from(list).sort();
  if (sample.length === 0) return { bare: 0, sigma: 1e-3, film: 1 };
  const top = sortedQuantile(sample, 0.995);
  // Counted in 80ths of a log unit from −1, smoothed over nine.
  const bins = new Float32Array(400);
  for (const one of sample) {
    const bin = Math.floor((one + 1) * 80);
    if (bin >= 0 && bin < bins.length) bins[bin]! += 1;
  }
  let peak = 0;
  let highest = -1;
  for (let k = 0; k < bins.length && k / 80 - 1 <= 0.5 * top; k++) {
    let near = 0;
    for (let d = -4; d <= 4; d++) near += bins[Math.max(0, Math.min(bins.length - 1, k + d))]!;
    if (near > highest) {
      highest = near;
      peak = k;
    }
  }
  const bare = peak / 80 - 1;
  let square = 0;
  let below = 0;
  for (const one of sample) {
    if (one >= bare) break;
    square += (one - bare) ** 2;
    below++;
  }
  const sigma = Math.max(1e-3, Math.sqrt(square / Math.max(1, below)));
  let film = sortedQuantile(sample, 0.9995);
  for (let turn = 0; turn < 12; turn++) {
    const from = bare + Math.max(3 * sigma, 0.5 * (film - bare));
    const first = firstAbove(sample, from);
    if (first < sample.length) film = sample[Math.floor((first + sample.length - 1) / 2)]!;
  }
  return { bare, sigma, film: Math.max(film, bare + Math.max(3 * sigma, faintest)) };
}

function firstAbove(sorted: Float32Array, from: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! > from) high = middle;
    else low = middle + 1;
  }
  return low;
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
  out: Uint8Array,
  outCoarse: Uint8Array,
  coarse: Coarse,
): Float32Array {
  const darks: number[] = [];
  const stride = sampleStep(width, height);
  for (let j = 1; j < height; j += stride)
    for (let i = 1; i < width; i += stride) {
      const o = j * width + i;
      if (!out[o] && values[o]! > bare + 0.75 * (film - bare)) darks.push(-gleam[o]!);
    }
  const dark = darks.length ? Math.max(0.3, quantile(darks, 0.5)) : 1.2;
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
  for (let turn = 0; turn < local.turns; turn++) {
    const from = full;
    const counts = means.map((one, k) =>
      !outCoarse[k] && one > bare + local.above * (from[k]! - bare) ? 1 : 0,
    );
    full = smoothMeans(means, counts, coarse, sd, forecast, 1e-4, local.pull);
  }
  return full.map((one) => Math.max(one, bare + 1e-3));
}

function hazeOf(strength: Float32Array, width: number, height: number, out: Uint8Array): number {
  const stride = sampleStep(width, height);
  let between = 0;
  let above = 0;
  for (let j = 1; j < height; j += stride)
    for (let i = 1; i < width; i += stride) {
      const o = j * width + i;
      if (out[o]) continue;
      if (strength[o]! >= mid.to) above++;
      else if (strength[o]! >= mid.from) between++;
    }
  return between / Math.max(1, between + above);
}

/** A step blurred with sd s rises with at most height / (s √2π): the steep end of the gradients on film edges tells s. */
function blurOf(plain: Float32Array, levels: Levels, width: number, height: number, out: Uint8Array): number {
  const { bare, film } = levels;
  const steep: number[] = [];
  for (let j = 1; j < height - 1; j += 3)
    for (let i = 1; i < width - 1; i += 3) {
      const o = j * width + i;
      const here = (plain[o]! - bare) / (film - bare);
      if (out[o] || here < 0.3 || here > 0.7) continue;
      steep.push(Math.hypot(plain[o + 1]! - plain[o - 1]!, plain[o + width]! - plain[o - width]!) / 2);
    }
  if (steep.length < 30) return 0;
  const most = (quantile(steep, 0.9) * rasterPxPerMm) / (film - bare);
  return 1 / (most * Math.sqrt(2 * Math.PI));
}
