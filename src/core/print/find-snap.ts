import { crossing, type Line } from './find-lines.ts';
import type { Plane } from './find-planes.ts';
import { turn } from './find-regions.ts';
import { foundSide } from './find-sides.ts';
import { hueTone, lightTone, texture } from './find-texture.ts';
import type { Picture, PlacePx } from './picture.ts';

const rays = 48;

/** A corner of a figure: where, and the rays between which the figure lies, clockwise as seen from the first to the last. */
interface Wedge {
  readonly at: PlacePx;
  readonly first: number;
  readonly last: number;
  /** 1: all inside it on one side of the middle between the two kinds of pixels, all outside on the other. */
  readonly score: number;
}

/**
 * Pulls a corner put down by thumb to the surface's corner near it.
 *
 * With the two neighbouring corners, in either order and roughly known, its sides are placed along the first stretch toward
 * them. Without them it looks within the radius for the wedge that parts textured from plain best and places that one's
 * sides. Where no clear corner is found, or only outside the radius, the place is given back as it is.
 */
export function snapCorner(
  picture: Picture,
  near: PlacePx,
  radius_px: number,
  neighbours?: readonly [PlacePx, PlacePx],
): PlacePx {
  const placed = neighbours ? towards(picture, near, radius_px, neighbours) : alone(picture, near, radius_px);
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
  const stretch = (to: PlacePx): PlacePx => {
    const share = Math.min(0.6, Math.max(300, 8 * radius_px) / Math.max(1, distance(near, to)));
    return { x: near.x + share * (to.x - near.x), y: near.y + share * (to.y - near.y) };
  };
  // Clockwise as seen: before, near, next.
  const clockwise = turn(one, near, other) > 0;
  const before = stretch(clockwise ? one : other);
  const next = stretch(clockwise ? other : one);
  return sharpened(
    picture,
    near,
    before,
    next,
    [1, 0.6, 0.35].map((share) => Math.max(12, share * radius_px)),
  );
}

function alone(picture: Picture, near: PlacePx, radius_px: number): PlacePx | undefined {
  const window = windowAbout(picture, near, Math.max(8, Math.round(radius_px)));
  if (window === undefined) return undefined;
  const wedge = bestWedge(window.rough, window);
  if (wedge.score < 0.45) return undefined;
  const rough: PlacePx = { x: wedge.at.x + window.left, y: wedge.at.y + window.top };
  const along = (ray: number) => {
    const angle = (2 * Math.PI * ray) / rays;
    return { x: rough.x + radius_px * Math.cos(angle), y: rough.y + radius_px * Math.sin(angle) };
  };
  const reaches = [0.5, 0.4, 0.4].map((share) => Math.max(12, share * radius_px));
  return sharpened(picture, rough, along(wedge.last), along(wedge.first), reaches);
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
    const out = foundSide(picture, at, to, reach, 0.08, 1);
    const back = foundSide(picture, from, at, reach, 0, 0.92);
    if (out === undefined || back === undefined) return undefined;
    if (Math.min(out.contrast, back.contrast) < 0.2 || Math.min(out.rougher, back.rougher) < 0.2)
      return undefined;
    const [ahead, behind] = round === 1 ? [out.line, back.line] : [out.likely, back.likely];
    const corner = crossing(ahead, behind);
    if (corner === undefined) return undefined;
    at = corner;
    from = onto(behind, from);
    to = onto(ahead, to);
  }
  return at;
}

/** The foot on the line. */
function onto({ nx, ny, far }: Line, { x, y }: PlacePx): PlacePx {
  const off = nx * x + ny * y - far;
  return { x: x - off * nx, y: y - off * ny };
}

interface Window {
  readonly left: number;
  readonly top: number;
  readonly middle: PlacePx;
  readonly radius: number;
  readonly rough: Plane;
}

/** The part of the photo about a place; absent when that lies outside. */
function windowAbout(
  { width_px, height_px, rgb }: Picture,
  near: PlacePx,
  radius: number,
): Window | undefined {
  const left = Math.max(0, Math.round(near.x) - radius);
  const top = Math.max(0, Math.round(near.y) - radius);
  const width = Math.min(width_px, Math.round(near.x) + radius + 1) - left;
  const height = Math.min(height_px, Math.round(near.y) + radius + 1) - top;
  if (!(width >= radius && height >= radius)) return undefined;
  const light = { width, height, at: new Float32Array(width * height) };
  const hue = { width, height, at: new Float32Array(width * height) };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const p = 3 * ((y + top) * width_px + x + left);
      light.at[y * width + x] = lightTone(rgb[p]!, rgb[p + 1]!, rgb[p + 2]!);
      hue.at[y * width + x] = hueTone(rgb[p]!, rgb[p + 2]!);
    }
  const rough = texture({ light, hue }, Math.max(2, Math.round(radius / 9)));
  return { left, top, middle: { x: near.x - left, y: near.y - top }, radius, rough };
}

/** The wedge whose inside lies highest above the middle of the values, and its outside lowest. */
function bestWedge({ width, height, at }: Plane, { middle, radius }: Window): Wedge {
  const sorted = Float32Array.from(at).sort();
  const low = sorted[Math.floor(0.15 * sorted.length)]!;
  const high = sorted[Math.floor(0.85 * sorted.length)]!;
  const scale = 2 / Math.max(1e-6, high - low);
  const cos = Array.from({ length: rays }, (_, i) => Math.cos((2 * Math.PI * (i + 0.5)) / rays));
  const sin = Array.from({ length: rays }, (_, i) => Math.sin((2 * Math.PI * (i + 0.5)) / rays));
  const gain = new Float64Array(2 * rays + 1);
  let best: Wedge = { at: middle, first: 0, last: 0, score: Number.NEGATIVE_INFINITY };
  const step = Math.max(2, Math.round(radius / 12));
  const tried = (place: PlacePx) => {
    let all = 0;
    let area = 0;
    for (let i = 0; i < rays; i++) {
      let sum = 0;
      for (let r = 1; ; r += 2) {
        const x = Math.round(place.x + r * cos[i]!);
        const y = Math.round(place.y + r * sin[i]!);
        if (x < 0 || y < 0 || x >= width || y >= height) break;
        if ((x - middle.x) ** 2 + (y - middle.y) ** 2 > radius * radius) break;
        sum += r * Math.max(-1, Math.min(1, (at[y * width + x]! - (low + high) / 2) * scale));
        area += r;
      }
      gain[i + 1] = sum;
      all += sum;
    }
    for (let i = 0; i < rays; i++) gain[rays + i + 1] = gain[i + 1]!;
    for (let i = 1; i <= 2 * rays; i++) gain[i]! += gain[i - 1]!;
    for (let first = 0; first < rays; first++)
      for (let wide = 6; wide <= 19; wide++) {
        const score = (2 * (gain[first + wide]! - gain[first]!) - all) / area;
        if (score > best.score) best = { at: place, first, last: first + wide, score };
      }
  };
  for (let y = -0.8 * radius; y <= 0.8 * radius; y += step)
    for (let x = -0.8 * radius; x <= 0.8 * radius; x += step)
      if (x * x + y * y < 0.64 * radius * radius) tried({ x: middle.x + x, y: middle.y + y });
  const { x, y } = best.at;
  for (let j = -step; j <= step; j += step / 2)
    for (let i = -step; i <= step; i += step / 2) tried({ x: x + i, y: y + j });
  return best;
}
