import { type Coarse, smoothMeans } from './coarse.ts';
import { quantile } from './quantile.ts';

/** Bare surface at each coarse element, and its scatter. */
export interface BareLevel {
  readonly level: Float32Array;
  readonly sigma: number;
}

const tile_mm = 12;
/** Of a tile, this share at least is taken to be bare. */
const bareQuantile = 0.2;
const smooth_mm = 14;
const rounds = 4;
/** What lies further from the level than this many sigma is not bare. */
const within = 2.5;

/**
 * How blue the bare surface looks, place by place: low quantiles of tiles, then masked smoothing over what lies near it. A
 * plain wide median is dragged along where blue covers more than half.
 *
 * @param out   1 where an element does not count
 * @param step_mm  side of a coarse element
 */
export function bareLevel(values: Float32Array, out: Uint8Array, coarse: Coarse, step_mm: number): BareLevel {
  const level = betweenTiles(tiles(values, out, coarse, tile_mm / step_mm), coarse);
  let sigma = 0;
  const counts = new Float32Array(values.length);
  const offs = new Float32Array(values.length);
  for (let round = 0; round < rounds; round++) {
    let square = 0;
    let below = 0;
    for (let k = 0; k < values.length; k++) {
      const off = values[k]! - level[k]!;
      if (out[k] || off >= 0) continue;
      square += off * off;
      below++;
    }
    sigma = Math.sqrt(square / Math.max(1, below));
    for (let k = 0; k < values.length; k++) {
      const off = values[k]! - level[k]!;
      const bare = !out[k] && Math.abs(off) < within * sigma;
      counts[k] = bare ? 1 : 0;
      offs[k] = off;
    }
    const change = smoothMeans(offs, counts, coarse, smooth_mm / step_mm, 0, 1e-3);
    for (let k = 0; k < level.length; k++) level[k]! += change[k]!;
  }
  return { level, sigma };
}

interface Tiles {
  readonly across: number;
  readonly down: number;
  readonly values: Float32Array;
}

/** Low quantile of each tile, the median of its neighbourhood taken. */
function tiles(values: Float32Array, out: Uint8Array, { width, height }: Coarse, side: number): Tiles {
  const across = Math.max(1, Math.round(width / side));
  const down = Math.max(1, Math.round(height / side));
  const low = new Float32Array(across * down);
  for (let J = 0; J < down; J++)
    for (let I = 0; I < across; I++) {
      const seen: number[] = [];
      const left = Math.floor((I * width) / across);
      const right = Math.floor(((I + 1) * width) / across);
      const bottom = Math.floor(((J + 1) * height) / down);
      for (let j = Math.floor((J * height) / down); j < bottom; j++)
        for (let k = j * width + left; k < j * width + right; k++) if (!out[k]) seen.push(values[k]!);
      low[J * across + I] = seen.length > 8 ? quantile(seen, bareQuantile) : Number.NaN;
    }
  const middle = low.map((_, k) => {
    const J = Math.floor(k / across);
    const I = k % across;
    const near: number[] = [];
    for (let b = Math.max(0, J - 1); b <= Math.min(down - 1, J + 1); b++)
      for (let a = Math.max(0, I - 1); a <= Math.min(across - 1, I + 1); a++) {
        const one = low[b * across + a]!;
        if (!Number.isNaN(one)) near.push(one);
      }
    return near.length ? quantile(near, 0.5) : 0;
  });
  return { across, down, values: middle };
}

function betweenTiles({ across, down, values }: Tiles, { width, height }: Coarse): Float32Array {
  const level = new Float32Array(width * height);
  for (let j = 0; j < height; j++) {
    const y = Math.max(0, Math.min(down - 1, ((j + 0.5) / height) * down - 0.5));
    const top = Math.floor(y);
    const below = Math.min(down - 1, top + 1);
    for (let i = 0; i < width; i++) {
      const x = Math.max(0, Math.min(across - 1, ((i + 0.5) / width) * across - 0.5));
      const left = Math.floor(x);
      const right = Math.min(across - 1, left + 1);
      const upper =
        values[top * across + left]! * (1 - (x - left)) + values[top * across + right]! * (x - left);
      const lower =
        values[below * across + left]! * (1 - (x - left)) + values[below * across + right]! * (x - left);
      level[j * width + i] = upper * (1 - (y - top)) + lower * (y - top);
    }
  }
  return level;
}
