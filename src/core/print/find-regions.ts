import type { PlacePx } from './picture.ts';

/** A connected region of a mask: neighbours share a side. */
export interface Region {
  readonly area: number;
  /** The first row it has a pixel in. */
  readonly top: number;
  /** Leftmost and rightmost pixel of each row from `top` down. */
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Whether it reaches the edge of the mask. */
  readonly cut: boolean;
}

/** Connected regions of at least `least` pixels where `mask` is not 0; `mask` is set to 0 on the way. */
export function takeRegions(mask: Uint8Array, width: number, height: number, least: number): Region[] {
  const found: Region[] = [];
  const stack: number[] = [];
  const low = new Int32Array(height).fill(width);
  const high = new Int32Array(height).fill(-1);
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0) continue;
    mask[start] = 0;
    stack.push(start);
    const top = Math.floor(start / width);
    let bottom = top;
    let area = 0;
    while (stack.length > 0) {
      const p = stack.pop()!;
      const y = Math.floor(p / width);
      const x = p - y * width;
      area++;
      if (x < low[y]!) low[y] = x;
      if (x > high[y]!) high[y] = x;
      if (y > bottom) bottom = y;
      if (x > 0 && mask[p - 1] !== 0) {
        mask[p - 1] = 0;
        stack.push(p - 1);
      }
      if (x + 1 < width && mask[p + 1] !== 0) {
        mask[p + 1] = 0;
        stack.push(p + 1);
      }
      if (y > 0 && mask[p - width] !== 0) {
        mask[p - width] = 0;
        stack.push(p - width);
      }
      if (y + 1 < height && mask[p + width] !== 0) {
        mask[p + width] = 0;
        stack.push(p + width);
      }
    }
    const left = [...low.subarray(top, bottom + 1)];
    const right = [...high.subarray(top, bottom + 1)];
    low.fill(width, top, bottom + 1);
    high.fill(-1, top, bottom + 1);
    if (area < least) continue;
    const cut =
      top === 0 || bottom === height - 1 || Math.min(...left) === 0 || Math.max(...right) === width - 1;
    found.push({ area, top, left, right, cut });
  }
  return found;
}

/** Its convex hull through pixel centres, clockwise as seen (x right, y down). Andrew's monotone chain. */
export function hullOf({ top, left, right }: Region): PlacePx[] {
  const rows = left.map((_, i) => top + i);
  const rightSide = chain(rows.map((y, i) => ({ x: right[i]!, y })));
  const leftSide = chain(rows.map((y, i) => ({ x: left[i]!, y })).reverse());
  return [...rightSide, ...leftSide].filter((p, i, all) => {
    const before = all[(i + all.length - 1) % all.length]!;
    return p.x !== before.x || p.y !== before.y;
  });
}

function chain(places: readonly PlacePx[]): PlacePx[] {
  const kept: PlacePx[] = [];
  for (const p of places) {
    while (kept.length >= 2 && turn(kept[kept.length - 2]!, kept[kept.length - 1]!, p) <= 0) kept.pop();
    kept.push(p);
  }
  return kept;
}

/** Twice the area of the triangle: plus when a, b, c go clockwise as seen. */
export function turn(a: PlacePx, b: PlacePx, c: PlacePx): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

export type Quad = readonly [PlacePx, PlacePx, PlacePx, PlacePx];

export function areaOf(places: readonly PlacePx[]): number {
  let twice = 0;
  places.forEach((p, i) => {
    const q = places[(i + 1) % places.length]!;
    twice += p.x * q.y - p.y * q.x;
  });
  return Math.abs(twice) / 2;
}

/** The largest four-cornered figure with its corners on the hull, clockwise as seen; absent when the hull has fewer than four corners. */
export function largestQuad(hull: readonly PlacePx[]): Quad | undefined {
  const places = thinned(hull, 80);
  const n = places.length;
  let best: Quad | undefined;
  let most = 0;
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      const a = places[i]!;
      const c = places[j]!;
      let b = -1;
      let d = -1;
      let far = 0;
      let behind = 0;
      for (let k = i + 1; k < j; k++) {
        const t = Math.abs(turn(a, places[k]!, c));
        if (t > far) {
          far = t;
          b = k;
        }
      }
      for (let k = j + 1; k < n + i; k++) {
        const t = Math.abs(turn(a, places[k % n]!, c));
        if (t > behind) {
          behind = t;
          d = k % n;
        }
      }
      if (b >= 0 && d >= 0 && far + behind > most) {
        most = far + behind;
        best = [a, places[b]!, c, places[d]!];
      }
    }
  return best;
}

/** Drops the flattest corners until no more than `limit` are left. */
function thinned(hull: readonly PlacePx[], limit: number): readonly PlacePx[] {
  if (hull.length <= limit) return hull;
  const ranked = hull
    .map((p, i) => ({
      i,
      bend: Math.abs(turn(hull[(i + hull.length - 1) % hull.length]!, p, hull[(i + 1) % hull.length]!)),
    }))
    .sort((a, b) => b.bend - a.bend)
    .slice(0, limit)
    .sort((a, b) => a.i - b.i);
  return ranked.map(({ i }) => hull[i]!);
}
