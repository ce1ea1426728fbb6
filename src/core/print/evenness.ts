import { mean, sampleSd } from '../math/line-fit.ts';
import type { Cell, Evenness } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';

/** A square with more glare than this, %, does not count. */
export const readableGlare_pct = 5;

/**
 * How evenly it bears. Dispersion is variance over mean of the counts in whole squares (quadrat statistics: 1 random, less
 * regular, more clumped; (n − 1) times it is chi-square with n − 1 degrees when random).
 */
export function evennessOf(
  cells: readonly Cell[],
  label: Int32Array,
  out: Uint8Array,
  width: number,
  height: number,
): Evenness {
  const squares = cells.filter((cell) => !cell.partial && cell.unreadable_pct <= readableGlare_pct);
  const counts = squares.map((cell) => cell.count);
  const shares = squares.map((cell) => cell.bearing_pct);
  const trend = trendOf(label, out, width, height);
  return {
    ...(squares.length > 1 && mean(counts) > 0 ? { dispersion: sampleSd(counts) ** 2 / mean(counts) } : {}),
    ...(squares.length > 1 && mean(shares) > 0 ? { bearing_cv: sampleSd(shares) / mean(shares) } : {}),
    empty_squares: squares.filter((cell) => cell.count === 0).length,
    longest_bare_mm: longestBare(label, out, width, height) / rasterPxPerMm,
    ...trend,
  };
}

/** Elements; bands of a mm across the surface stand for a line, so that a scratch of blue does not end a bare run and one miss does not make one. */
function longestBare(label: Int32Array, out: Uint8Array, width: number, height: number): number {
  let longest = 0;
  for (let top = 0; top + rasterPxPerMm <= height; top += rasterPxPerMm) {
    let run = 0;
    for (let i = 0; i < width; i++) {
      let touched = false;
      let counts = false;
      for (let j = top; j < top + rasterPxPerMm; j++) {
        const o = j * width + i;
        if (out[o]) continue;
        counts = true;
        if (label[o] !== 0) {
          touched = true;
          break;
        }
      }
      if (!counts) continue;
      run = touched ? 0 : run + 1;
      if (run > longest) longest = run;
    }
  }
  return longest;
}

/** First-order fit of contact over the net area, by least squares: difference from end to end and from edge to edge, percentage points. */
function trendOf(
  label: Int32Array,
  out: Uint8Array,
  width: number,
  height: number,
): { along_pct: number; across_pct: number } {
  const block = rasterPxPerMm;
  let n = 0;
  let x = 0;
  let y = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let b = 0;
  let bx = 0;
  let by = 0;
  for (let J = 0; J < height; J += block)
    for (let I = 0; I < width; I += block) {
      let net = 0;
      let held = 0;
      for (let j = J; j < Math.min(height, J + block); j++)
        for (let i = I, o = j * width + I; i < Math.min(width, I + block); i++, o++) {
          if (out[o]) continue;
          net++;
          if (label[o] !== 0) held++;
        }
      const u = (I + block / 2) / width - 0.5;
      const v = (J + block / 2) / height - 0.5;
      n += net;
      x += net * u;
      y += net * v;
      xx += net * u * u;
      xy += net * u * v;
      yy += net * v * v;
      b += held;
      bx += held * u;
      by += held * v;
    }
  if (n === 0) return { along_pct: 0, across_pct: 0 };
  const sxx = xx - (x * x) / n;
  const sxy = xy - (x * y) / n;
  const syy = yy - (y * y) / n;
  const sbx = bx - (b * x) / n;
  const sby = by - (b * y) / n;
  const det = sxx * syy - sxy * sxy;
  if (!(det > 1e-9 * n * n)) return { along_pct: 0, across_pct: 0 };
  return {
    along_pct: (100 * (sbx * syy - sby * sxy)) / det,
    across_pct: (100 * (sby * sxx - sbx * sxy)) / det,
  };
}
