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

/** What is averaged in the middle of a block, elements across: half a mm, so that scatter does not hang on the block. */
const middle = 4;

/** Means of the middle of each block: what varies over many blocks is told as well by them as by whole blocks. */
export function sampled(
  fine: Float32Array | Uint8Array,
  width: number,
  height: number,
  coarse: Coarse,
): Float32Array {
  const { block } = coarse;
  const means = new Float32Array(coarse.width * coarse.height);
  for (let J = 0; J < coarse.height; J++) {
    const high = Math.min(block, height - J * block);
    const top = J * block + ((high - Math.min(high, middle)) >> 1);
    const bottom = top + Math.min(high, middle);
    for (let I = 0; I < coarse.width; I++) {
      const wide = Math.min(block, width - I * block);
      const left = I * block + ((wide - Math.min(wide, middle)) >> 1);
      means[J * coarse.width + I] = meanOf(fine, width, top, bottom, left, left + Math.min(wide, middle));
    }
  }
  return means;
}

function meanOf(
  fine: Float32Array | Uint8Array,
  width: number,
  top: number,
  bottom: number,
  left: number,
  right: number,
): number {
  let sum = 0;
  for (let o = top * width; o < bottom * width; o += width)
    for (let i = left; i < right; i++) sum += fine[o + i]!;
  return sum / ((bottom - top) * (right - left));
}

/**
 * Straight pieces that a row of the fine raster is put together of: from its edge to the first block's centre, between
 * centres, from the last one to the edge. Piece p begins where p − 1 ends, at 0 the first.
 */
export interface Pieces {
  readonly ends: Int32Array;
  /** Where a piece's first centre lies: before the row for piece 0. */
  readonly centres: Float64Array;
}

export function piecesOf(coarse: Coarse, width: number): Pieces {
  const { block } = coarse;
  const many = coarse.width + 1;
  const centres = Float64Array.from({ length: many }, (_, p) => (p - 0.5) * block - 0.5);
  const ends = Int32Array.from(centres, (centre, p) =>
    p === many - 1 ? width : Math.min(width, Math.ceil(centre + block)),
  );
  return { ends, centres };
}

/** Values of the coarse raster at the ends of the pieces of row j: `ends[p]` and `ends[p + 1]` are piece p's. Two more than the raster is wide. */
export function endsInRow(values: Float32Array, coarse: Coarse, j: number, ends: Float64Array): void {
  const { width, height, block } = coarse;
  const y = Math.max(0, Math.min(height - 1, (j + 0.5) / block - 0.5));
  const top = Math.floor(y);
  const fy = y - top;
  const a = top * width;
  const b = Math.min(height - 1, top + 1) * width;
  for (let I = 0; I < width; I++) ends[I + 1] = values[a + I]! + fy * (values[b + I]! - values[a + I]!);
  ends[0] = ends[1]!;
  ends[width + 1] = ends[width]!;
}

/** Row j of the fine raster, put between the block centres; written into `row`. */
export function refineRow(
  values: Float32Array,
  coarse: Coarse,
  j: number,
  { ends, centres }: Pieces,
  row: Float32Array,
): void {
  const level = new Float64Array(coarse.width + 2);
  endsInRow(values, coarse, j, level);
  for (let p = 0, i = 0; p < ends.length; p++) {
    const slope = (level[p + 1]! - level[p]!) / coarse.block;
    let at = level[p]! + slope * (i - centres[p]!);
    for (; i < ends[p]!; i++, at += slope) row[i] = at;
  }
}

/**
 * Smooth means of what counts, on the same raster; where nothing near counts, `otherwise`.
 *
 * @param counts  how much each element is worth
 * @param sd      of the smoothing, in elements
 * @param least   weight below which nothing near counts
 * @param pull    weight of `otherwise` beside what counts
 */
export function smoothMeans(
  values: Float32Array,
  counts: Float32Array,
  { width, height }: Coarse,
  sd: number,
  otherwise: number | Float32Array,
  least: number,
  pull = 0,
): Float32Array {
  const worth = new Float32Array(values.length);
  for (let k = 0; k < worth.length; k++) worth[k] = values[k]! * counts[k]!;
  const sums = widelySmoothed(worth, width, height, sd);
  const weights = widelySmoothed(counts, width, height, sd);
  for (let k = 0; k < sums.length; k++) {
    const other = typeof otherwise === 'number' ? otherwise : otherwise[k]!;
    const weight = weights[k]! + pull;
    sums[k] = weight > least ? (sums[k]! + pull * other) / weight : other;
  }
  return sums;
}
