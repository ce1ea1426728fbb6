import type { Picture, PlacePx } from './picture.ts';
import { srgbLight } from './srgb.ts';

/** A straight line in the photo: x · nx + y · ny = far, (nx, ny) of length 1. */
export interface Line {
  readonly nx: number;
  readonly ny: number;
  readonly far: number;
}

export function lineThrough(a: PlacePx, b: PlacePx): Line {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const nx = (b.y - a.y) / long;
  const ny = -(b.x - a.x) / long;
  return { nx, ny, far: nx * a.x + ny * a.y };
}

/** Where two lines cross; absent when they are closer than 3° to each other's direction. */
export function crossing(a: Line, b: Line): PlacePx | undefined {
  const det = a.nx * b.ny - a.ny * b.nx;
  if (Math.abs(det) < 0.05) return undefined;
  return { x: (a.far * b.ny - b.far * a.ny) / det, y: (a.nx * b.far - b.nx * a.far) / det };
}

/** The line with the least squared distances to the places; absent with fewer than two of them. */
export function closestLine(places: readonly PlacePx[]): Line | undefined {
  const n = places.length;
  if (n < 2) return undefined;
  const x = places.reduce((sum, p) => sum + p.x, 0) / n;
  const y = places.reduce((sum, p) => sum + p.y, 0) / n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of places) {
    xx += (p.x - x) ** 2;
    xy += (p.x - x) * (p.y - y);
    yy += (p.y - y) ** 2;
  }
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  const nx = Math.sin(along);
  const ny = -Math.cos(along);
  return { nx, ny, far: nx * x + ny * y };
}

/** The same, without the places that lie farther off than three times the median distance (0.3 px at least). */
export function steadyLine(places: readonly PlacePx[]): Line | undefined {
  let kept = places;
  let line = closestLine(kept);
  for (let round = 0; round < 3 && line !== undefined; round++) {
    const { nx, ny, far } = line;
    const off = (p: PlacePx) => Math.abs(nx * p.x + ny * p.y - far);
    const sorted = kept.map(off).sort((a, b) => a - b);
    const limit = Math.max(0.3, 3 * (sorted[sorted.length >> 1] ?? 0));
    const close = kept.filter((p) => off(p) <= limit);
    if (close.length === kept.length || close.length < 3) break;
    kept = close;
    line = closestLine(kept);
  }
  return line;
}

/**
 * A line that up to half the places do not move: of those through two places the one with the least median distance
 * (Rousseeuw, JASA 79 (1984), 871, on pairs), then the closest line to the places near it. For a dozen places.
 */
export function surestLine(places: readonly PlacePx[]): Line | undefined {
  let best: Line | undefined;
  let least = Number.POSITIVE_INFINITY;
  const offAll = ({ nx, ny, far }: Line) => places.map((p) => Math.abs(nx * p.x + ny * p.y - far));
  places.forEach((a, i) => {
    for (const b of places.slice(i + 2)) {
      const line = lineThrough(a, b);
      const off = offAll(line).sort((one, other) => one - other);
      const middle = off[off.length >> 1]!;
      if (middle < least) {
        least = middle;
        best = line;
      }
    }
  });
  if (best === undefined) return closestLine(places);
  const off = offAll(best);
  const limit = Math.max(0.7, 3 * least);
  return closestLine(places.filter((_, i) => off[i]! <= limit)) ?? best;
}

/** Light of each byte. */
const lightOf = Float32Array.from({ length: 256 }, (_, byte) => srgbLight(byte));

/** Mean light of the three colours at a place between pixels, 0 to 1; the edge's pixel goes on outside the photo. */
export function lightAt({ width_px, height_px, rgb }: Picture, x: number, y: number): number {
  const left = Math.min(width_px - 1, Math.max(0, Math.floor(x)));
  const top = Math.min(height_px - 1, Math.max(0, Math.floor(y)));
  const u = Math.min(1, Math.max(0, x - left));
  const v = Math.min(1, Math.max(0, y - top));
  const right = Math.min(width_px - 1, left + 1);
  const below = Math.min(height_px - 1, top + 1) * width_px;
  const light = (p: number) => lightOf[rgb[3 * p]!]! + lightOf[rgb[3 * p + 1]!]! + lightOf[rgb[3 * p + 2]!]!;
  const above = top * width_px;
  const upper = light(above + left) * (1 - u) + light(above + right) * u;
  const lower = light(below + left) * (1 - u) + light(below + right) * u;
  return (upper * (1 - v) + lower * v) / 3;
}

/**
 * Places on a dark figure's side from a to b (clockwise as seen, so that light lies to the left hand's side), where
 * the light crosses the middle between inside and outside, within `reach` px of the straight line from a to b.
 */
export function edgePlaces(picture: Picture, a: PlacePx, b: PlacePx, reach: number): PlacePx[] {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const dx = (b.x - a.x) / long;
  const dy = (b.y - a.y) / long;
  const n = Math.max(8, Math.min(60, Math.round(0.75 * long)));
  const steps = Math.ceil(4 * reach);
  const found: PlacePx[] = [];
  const profile = new Float32Array(steps + 1);
  for (let i = 0; i < n; i++) {
    const s = long * (0.14 + (0.72 * (i + 0.5)) / n);
    for (let k = 0; k <= steps; k++) {
      const d = (2 * reach * k) / steps - reach;
      profile[k] = lightAt(picture, a.x + s * dx + d * dy, a.y + s * dy - d * dx);
    }
    const end = Math.max(2, Math.floor(steps / 6));
    let dark = 0;
    let bright = 0;
    for (let k = 0; k < end; k++) {
      dark += profile[k]! / end;
      bright += profile[steps - k]! / end;
    }
    if (bright - dark < 0.04) continue;
    const middle = (dark + bright) / 2;
    let k = 1;
    while (k <= steps && !(profile[k - 1]! < middle && profile[k]! >= middle)) k++;
    if (k > steps) continue;
    const between = (middle - profile[k - 1]!) / (profile[k]! - profile[k - 1]!);
    const d = (2 * reach * (k - 1 + between)) / steps - reach;
    found.push({ x: a.x + s * dx + d * dy, y: a.y + s * dy - d * dx });
  }
  return found;
}
