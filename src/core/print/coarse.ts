import { widelySmoothed } from './smooth.ts';

/** A raster with one element for a block of `block` × `block` elements of the fine one; those at the far edges may be smaller. */
export interface Coarse {
  readonly width: number;
  readonly height: number;
  readonly block: number;
}

export const coarseOf = (width: number, height: number, block: number): Coarse => ({
  width: Math.ceil(width / block),
  height: Math.ceil(height / block),
  block,
});

/** Block means. */
export function coarsened(
  fine: ArrayLike<number>,
  width: number,
  height: number,
  coarse: Coarse,
): Float32Array {
  const { block } = coarse;
  const means = new Float32Array(coarse.width * coarse.height);
  for (let J = 0; J < coarse.height; J++) {
    const high = Math.min(block, height - J * block);
    for (let j = J * block; j < J * block + high; j++) {
      const o = j * width;
      for (let I = 0, i = 0; I < coarse.width; I++) {
        const end = Math.min(width, i + block);
        let sum = 0;
        for (; i < end; i++) sum += fine[o + i]!;
        means[J * coarse.width + I]! += sum;
      }
    }
    for (let I = 0; I < coarse.width; I++)
      means[J * coarse.width + I]! /= high * Math.min(block, width - I * block);
  }
  return means;
}

/** Row j of the fine raster, put between the block centres; written into `row`. */
export function refineRow(
  values: Float32Array,
  coarse: Coarse,
  j: number,
  width: number,
  row: Float32Array,
): void {
  const y = Math.max(0, Math.min(coarse.height - 1, (j + 0.5) / coarse.block - 0.5));
  const top = Math.min(coarse.height - 1, Math.floor(y));
  const below = Math.min(coarse.height - 1, top + 1);
  const fy = y - top;
  const a = top * coarse.width;
  const b = below * coarse.width;
  const each = 1 / coarse.block;
  const last = coarse.width - 1;
  let x = 0.5 * each - 0.5;
  for (let i = 0; i < width; i++, x += each) {
    const at = x < 0 ? 0 : x > last ? last : x;
    const left = at | 0;
    const right = left < last ? left + 1 : last;
    const fx = at - left;
    const upper = values[a + left]! + fx * (values[a + right]! - values[a + left]!);
    const lower = values[b + left]! + fx * (values[b + right]! - values[b + left]!);
    row[i] = upper + fy * (lower - upper);
  }
}

/** Of a coarse raster, blocks this wide are smoothed: what varies over millimetres needs no finer. */
const smoothBlock = 4;

/**
 * Smooth means of what counts, put back on the same raster; where nothing near counts, `otherwise`.
 *
 * @param counts  how much each element is worth
 * @param sd      of the smoothing, in elements; well above smoothBlock
 * @param least   weight below which nothing near counts
 */
export function smoothMeans(
  values: Float32Array,
  counts: Float32Array,
  coarse: Coarse,
  sd: number,
  otherwise: number | Float32Array,
  least: number,
  pull = 0,
): Float32Array {
  const { width, height } = coarse;
  const wide = coarseOf(width, height, smoothBlock);
  const worth = values.map((one, k) => one * counts[k]!);
  const narrow = sd / smoothBlock;
  const sums = widelySmoothed(coarsened(worth, width, height, wide), wide.width, wide.height, narrow);
  const weights = widelySmoothed(coarsened(counts, width, height, wide), wide.width, wide.height, narrow);
  const sum = new Float32Array(width);
  const weight = new Float32Array(width);
  const result = new Float32Array(values.length);
  for (let j = 0; j < height; j++) {
    refineRow(sums, wide, j, width, sum);
    refineRow(weights, wide, j, width, weight);
    for (let i = 0, k = j * width; i < width; i++, k++) {
      const other = typeof otherwise === 'number' ? otherwise : otherwise[k]!;
      const w = weight[i]! + pull;
      result[k] = w > least ? (sum[i]! + pull * other) / w : other;
    }
  }
  return result;
}
