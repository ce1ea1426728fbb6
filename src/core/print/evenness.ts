import { mean, sampleSd } from '../math/line-fit.ts';
import { type Bits, setInBytes, without } from './bits.ts';
import { isReadable } from './readable-square.ts';
import type { Cell, Evenness } from './reading.ts';
import { rasterPxPerMm } from './rectified.ts';

/**
 * How evenly it bears. Dispersion is variance over mean of the counts in whole squares (quadrat statistics: 1 random, less
 * regular, more clumped; (n − 1) times it is chi-square with n − 1 degrees when random).
 */
export function evennessOf(cells: readonly Cell[], bears: Bits, out: Bits): Evenness {
  const squares = cells.filter((cell) => !cell.partial && isReadable(cell));
  const counts = squares.map((cell) => cell.count);
  const shares = squares.map((cell) => cell.bearing_pct);
  const holds = without(bears, out);
  return {
    ...(squares.length > 1 && mean(counts) > 0 ? { dispersion: sampleSd(counts) ** 2 / mean(counts) } : {}),
    ...(squares.length > 1 && mean(shares) > 0 ? { bearing_cv: sampleSd(shares) / mean(shares) } : {}),
    empty_squares: squares.filter((cell) => cell.count === 0).length,
    longest_bare_mm: longestBare(holds, out) / rasterPxPerMm,
    ...trendOf(holds, out),
  };
}

/** Elements; bands of a mm across the surface stand for a line, so that a scratch of blue does not end a bare run and one miss does not make one. */
function longestBare(holds: Bits, out: Bits): number {
  const { width, height, across } = holds;
  const touched = new Int32Array(across);
  const passed = new Int32Array(across);
  let longest = 0;
  for (let top = 0; top + rasterPxPerMm <= height; top += rasterPxPerMm) {
    touched.fill(0);
    passed.fill(-1);
    for (let j = top; j < top + rasterPxPerMm; j++)
      for (let k = 0; k < across; k++) {
        touched[k]! |= holds.words[j * across + k]!;
        passed[k]! &= out.words[j * across + k]!;
      }
    let run = 0;
    for (let i = 0; i < width; i++) {
      const bit = 1 << (i & 31);
      if (passed[i >> 5]! & bit) continue;
      run = touched[i >> 5]! & bit ? 0 : run + 1;
      if (run > longest) longest = run;
    }
  }
  return longest;
}

/**
 * First-order fit of contact over the net area, by least squares: difference from end to end and from edge to edge,
 * percentage points. Blocks of a mm stand for their elements: a block's row is a byte of a word.
 */
function trendOf(holds: Bits, out: Bits): { along_pct: number; across_pct: number } {
  const { width, height, across } = holds;
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
  for (let top = 0; top < height; top += block) {
    const rows = Math.min(block, height - top);
    const v = (top + block / 2) / height - 0.5;
    for (let k = 0; k < across; k++) {
      let heldBytes = 0;
      let outBytes = 0;
      for (let j = top; j < top + rows; j++) {
        heldBytes += setInBytes(holds.words[j * across + k]!);
        outBytes += setInBytes(out.words[j * across + k]!);
      }
      for (let left = 32 * k, shift = 0; shift < 32 && left < width; left += block, shift += block) {
        const held = (heldBytes >>> shift) & 255;
        const net = rows * Math.min(block, width - left) - ((outBytes >>> shift) & 255);
        const u = (left + block / 2) / width - 0.5;
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
    }
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
