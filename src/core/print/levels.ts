import { quantile } from './quantile.ts';

/** How blue bare surface is, its scatter, and how blue full film, log units. */
export interface Levels {
  readonly bare: number;
  readonly sigma: number;
  readonly film: number;
}

/** Full film is at least so much bluer than bare surface, log units: else a smooth picture of one colour would be all film. Thin film on glare is at 1.7. */
const faintest = 0.25;
/** Counted in bins of a log unit's 80th from −1, smoothed over nine. */
const bins = { many: 400, each: 80, from: -1, reach: 4 };

/** Bare surface: the peak of the lower values and their scatter below it. Full film: median of what is well above half of it, from the top down. */
export function levelsOf(sample: Float32Array): Levels {
  if (sample.length === 0) return { bare: 0, sigma: 1e-3, film: 1 };
  const bare = peakOf(counted(sample), 0.5 * quantile(sample, 0.995));
  const sigma = Math.max(1e-3, scatterBelow(sample, bare));
  const film = medianOfFilm(sample, bare, sigma);
  return { bare, sigma, film: Math.max(film, bare + Math.max(3 * sigma, faintest)) };
}

function counted(sample: Float32Array): Int32Array {
  const counts = new Int32Array(bins.many);
  for (let k = 0; k < sample.length; k++) {
    const bin = Math.floor((sample[k]! - bins.from) * bins.each);
    if (bin >= 0 && bin < counts.length) counts[bin]!++;
  }
  return counts;
}

/** Where most are, no further up than `last`; between bins by the parabola through the highest and those at its sides. */
function peakOf(counts: Int32Array, last: number): number {
  let peak = 0;
  let highest = -1;
  for (let k = 0; k < counts.length && k / bins.each + bins.from <= last; k++) {
    const near = countNear(counts, k);
    if (near > highest) {
      highest = near;
      peak = k;
    }
  }
  const before = countNear(counts, peak - bins.reach);
  const after = countNear(counts, peak + bins.reach);
  const bend = before + after - 2 * highest;
  const off = bend < 0 ? Math.max(-1, Math.min(1, (0.5 * bins.reach * (before - after)) / bend)) : 0;
  return (peak + off) / bins.each + bins.from;
}

function countNear(counts: Int32Array, k: number): number {
  let near = 0;
  for (let d = -bins.reach; d <= bins.reach; d++)
    near += counts[Math.max(0, Math.min(counts.length - 1, k + d))]!;
  return near;
}

function scatterBelow(sample: Float32Array, bare: number): number {
  let square = 0;
  let below = 0;
  for (let k = 0; k < sample.length; k++) {
    const off = sample[k]! - bare;
    if (off >= 0) continue;
    square += off * off;
    below++;
  }
  return Math.sqrt(square / Math.max(1, below));
}

function medianOfFilm(sample: Float32Array, bare: number, sigma: number): number {
  const sorted = above(sample, bare + 3 * sigma).sort();
  const rank = sorted.length - 1 - Math.round(0.0005 * sample.length);
  let film = rank >= 0 ? sorted[rank]! : bare;
  for (let turn = 0; turn < 12; turn++) {
    const first = firstAbove(sorted, bare + Math.max(3 * sigma, 0.5 * (film - bare)));
    if (first < sorted.length) film = sorted[Math.floor((first + sorted.length - 1) / 2)]!;
  }
  return film;
}

/** Those greater than `from`. */
function above(sample: Float32Array, from: number): Float32Array {
  const kept = new Float32Array(sample.length);
  let many = 0;
  for (let k = 0; k < sample.length; k++) if (sample[k]! > from) kept[many++] = sample[k]!;
  return kept.subarray(0, many);
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
