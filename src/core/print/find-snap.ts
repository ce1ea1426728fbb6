import { crossing, type Line } from './find-lines.ts';
import { turn } from './find-regions.ts';
import { type FoundSide, foundSide, settledLine } from './find-sides.ts';
import type { Picture, PlacePx } from './picture.ts';

/**
 * Pulls a corner put down by thumb to the surface's corner near it.
 *
 * Its two sides are placed along the first stretch toward the neighbouring corners. Where one of them is not clear, or they cross
 * outside the radius, the place is given back as it is.
 * @param neighbours the two corners next to it, in either order, as well as they are known
 */
export function snapCorner(
  picture: Picture,
  near: PlacePx,
  radius_px: number,
  neighbours: readonly [PlacePx, PlacePx],
): PlacePx {
  const placed = towards(picture, near, radius_px, neighbours);
  return placed !== undefined && distance(placed, near) <= radius_px ? placed : near;
}

function distance(a: PlacePx, b: PlacePx): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function towards(
  picture: Picture,
  near: PlacePx,
  radius_px: number,
  [one, other]: readonly [PlacePx, PlacePx],
): PlacePx | undefined {
  // Clockwise as seen: before, near, next.
  const [before, next] = turn(one, near, other) > 0 ? [one, other] : [other, one];
  // Widely first; where that reaches past a narrow rim, less so.
  for (const wide of [1, 0.6]) {
    const reaches = [wide, 0.6 * wide, 0.6 * wide, 0.5 * wide].map((share) =>
      Math.max(14, share * radius_px),
    );
    const found = sharpened(picture, near, before, next, reaches);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The crossing of its two sides, placed as the surface's sides are, ever closer; absent when one of them is not clear. */
function sharpened(
  picture: Picture,
  rough: PlacePx,
  before: PlacePx,
  next: PlacePx,
  reaches: readonly number[],
): PlacePx | undefined {
  let at = rough;
  let from = before;
  let to = next;
  for (const [round, reach] of reaches.entries()) {
    // A wide strip is short and a close one long: about as many pixels in each.
    const long = round === 0 ? 300 : 600;
    const out = foundSide(picture, at, stretch(at, to, long), reach, 0.08, 1);
    const back = foundSide(picture, stretch(at, from, long), at, reach, 0, 0.92);
    if (out === undefined || back === undefined) return undefined;
    if (Math.min(out.contrast, back.contrast) < 0.2 || Math.min(out.rougher, back.rougher) < 0.2)
      return undefined;
    // Widely, the likeliest line is the steadier; closer, its pieces tell a bevel's inner edge from its outer; then the likeliest again.
    const line = (side: FoundSide, end: PlacePx): Line => {
      if (round === 0) return side.likely;
      return round < reaches.length - 1 ? side.line : settledLine(side, at, end, 3);
    };
    const ahead = line(out, to);
    const behind = line(back, from);
    const corner = crossing(ahead, behind);
    if (corner === undefined) return undefined;
    at = corner;
    from = onto(behind, before);
    to = onto(ahead, next);
  }
  return at;
}

/** A place on the way from one to the other, `long` px away and no farther than 0.7 of the way. */
function stretch(from: PlacePx, to: PlacePx, long: number): PlacePx {
  const share = Math.min(0.7, long / Math.max(1, distance(from, to)));
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

/** The foot on the line. */
function onto({ nx, ny, far }: Line, { x, y }: PlacePx): PlacePx {
  const off = nx * x + ny * y - far;
  return { x: x - off * nx, y: y - off * ny };
}
