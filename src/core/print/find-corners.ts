import { cardShape } from './card-shape.ts';
import { type FoundCard, findCard, type NotFound } from './find-card.ts';
import { crossing } from './find-lines.ts';
import { grown, type Shrunk, shrunk } from './find-planes.ts';
import { areaOf, hullOf, largestQuad, type Quad, takeRegions, turn } from './find-regions.ts';
import { inOrder, shapeOff } from './find-shape.ts';
import { type FoundSide, foundSide, settledLine } from './find-sides.ts';
import { texture, tonesOf } from './find-texture.ts';
import { applied, inverted } from './homography.ts';
import type { Corners, Picture, PlacePx, SurfaceSize } from './picture.ts';

export interface FoundCorners {
  readonly corners: Corners;
  /** What bears it out: the card's scale, or the outline and its shape alone. */
  readonly how: 'card' | 'outline';
  /** Half-width of the doubt about the worst corner, px: two sd, from how well pieces of each side agree. */
  readonly doubt_px: number;
}

/**
 * Finds the printed surface: the four-cornered figure that is textured in every direction, blue or scraped, as nothing about it is.
 * Its sides are then placed in the whole photo. It is given only where all four sides are clear, it has the shape that is
 * stated, and no second one is in view; else `why` says what is missing and the user drags the corners.
 */
export function findCorners(picture: Picture, size: SurfaceSize): FoundCorners | NotFound {
  const { width_px, height_px } = picture;
  const small = shrunk(picture, 900);
  const card = findCard(picture, small);
  const seen = 'why' in card ? undefined : card;
  const rough = roughQuads(small, seen);
  if (rough.length === 0) return { why: 'nothing four-cornered stands out by its texture; drag the corners' };
  const tried = rough.map((quad) => refined(picture, quad, small.by));
  const good = apart(tried.filter((one): one is Refined => !('why' in one)));
  if (good.length === 0) return tried.find((one): one is NotFound => 'why' in one)!;
  const fits: FoundCorners[] = [];
  const whys: string[] = [];
  for (const { quad, doubt_px } of good) {
    const corners = inOrder(quad, size, width_px, height_px);
    const why = seen ? otherSize(corners, size, seen) : otherShape(corners, size, width_px, height_px);
    if (why !== undefined) whys.push(why);
    else fits.push({ corners, how: seen ? 'card' : 'outline', doubt_px });
  }
  if (fits.length > 1)
    return { why: `${fits.length} surfaces of this shape are in view; drag the corners to yours` };
  return fits[0] ?? { why: whys[0]! };
}

/** Figures at any level of texture, the largest first, in the shrunk photo; what lies on the card is left out. */
function roughQuads(small: Shrunk, card: FoundCard | undefined): Quad[] {
  const radius = Math.max(4, Math.round(small.width / 110));
  const whole = texture(tonesOf(small), radius);
  // The texture is a mean over some pixels: every second one of them tells all.
  const width = Math.floor(whole.width / 2);
  const height = Math.floor(whole.height / 2);
  const at = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) at[y * width + x] = whole.at[2 * y * whole.width + 2 * x]!;
  const off = card && cardPlaces(card, small.by);
  const found: Quad[] = [];
  const mask = new Uint8Array(width * height);
  for (let level = -4.6; level < -1.7; level += 0.1) {
    for (let i = 0; i < mask.length; i++) mask[i] = at[i]! > level ? 1 : 0;
    for (const region of takeRegions(mask, width, height, 0.02 * width * height)) {
      if (region.cut) continue;
      const hull = hullOf(region);
      const half = largestQuad(hull);
      if (half === undefined) continue;
      const quad = half.map(({ x, y }) => ({ x: 2 * x, y: 2 * y })) as unknown as Quad;
      const area = areaOf(half);
      if (area < 0.9 * areaOf(hull) || region.area < 0.75 * areaOf(hull)) continue;
      if (off?.some((p) => inside(quad, p))) continue;
      if (found.some((one) => sameQuad(one, quad, 0.015 * small.width))) continue;
      found.push(quad);
    }
  }
  return found;
}

interface Refined {
  readonly quad: Quad;
  readonly doubt_px: number;
}

/** Its sides placed in the photo: first widely, then closely. */
function refined(picture: Picture, rough: Quad, by: number): Refined | NotFound {
  let quad = rough.map((p) => grown(p, by));
  let sides: FoundSide[] = [];
  // What is small in the photo: a few of these must hold a bevel.
  const unit = Math.max(2, by);
  let inward = 4;
  const reaches = [8, 8, 8, 8, 8, 6, 5, 5, 5].map((one) => one * unit);
  for (const [round, reach] of reaches.entries()) {
    if (inward < 0 && reach === 8 * unit) continue;
    const found = quad.map((p, i) => foundSide(picture, p, quad[(i + 1) % 4]!, reach));
    if (found.some((one) => one === undefined))
      return {
        why: 'the surface runs close to the edge of the photo; step back a little or drag the corners',
      };
    sides = found as FoundSide[];
    // Smoother inside than outside: that is the edge of the part the surface is on; the surface begins farther in.
    const passed = sides.map(({ rougher }) => rougher < 0.1 && inward > 0 && reach === 8 * unit);
    inward = passed.some(Boolean) ? inward - 1 : -1;
    const last = round === reaches.length - 1;
    const lines = sides.map((side, i) => {
      const { line } = side;
      if (passed[i]) return { ...line, far: line.far - reach };
      // Once it is known which of a bevel's edges it is, the likeliest line is the steadier.
      return last ? settledLine(side, quad[i]!, quad[(i + 1) % 4]!, 1.5 * unit) : line;
    });
    const next = lines.map((line, i) => crossing(lines[(i + 3) % 4]!, line));
    if (next.some((one) => one === undefined)) return { why: 'its sides do not meet; drag the corners' };
    quad = next as PlacePx[];
  }
  if (sides.some(({ rougher }) => rougher < 0.25))
    return { why: 'what stands out is smoother than what lies beside it: not a print; drag the corners' };
  const doubts = sides.map((side) => lineDoubt(side, unit));
  const weakest = Math.min(...sides.map(({ contrast }) => contrast));
  if (weakest < 0.2)
    return { why: 'one side of the surface hardly stands out from what lies beside it; drag the corners' };
  const doubt_px = Math.max(...doubts.map((one, i) => Math.hypot(one, doubts[(i + 1) % 4]!)));
  if (doubt_px > 10)
    return { why: `its sides are known to ${doubt_px.toFixed(0)} px only; drag the corners` };
  return { quad: quad as unknown as Quad, doubt_px };
}

/**
 * Two sd of a line's place at its end, px: from the scatter of its pieces, the end of a fitted line being known half as well as
 * its middle; and from how steep the step in roughness is, which a weak one blurs over a bevel (calibrated on rendered prints).
 */
function lineDoubt({ scatter_px, rougher }: FoundSide, unit: number): number {
  const sorted = scatter_px.map(Math.abs).sort((a, b) => a - b);
  const n = sorted.length;
  const sd = n === 0 ? 10 : 1.4826 * ((sorted[(n - 1) >> 1]! + sorted[n >> 1]!) / 2);
  return Math.hypot((2 * 2 * sd) / Math.sqrt(Math.max(1, n)), (1.1 * unit) / rougher);
}

/** One of each: of those that lie on one another the one with the least doubt. */
function apart(all: readonly Refined[]): Refined[] {
  const kept: Refined[] = [];
  for (const one of [...all].sort((a, b) => a.doubt_px - b.doubt_px)) {
    const middle = { x: mean(one.quad, 'x'), y: mean(one.quad, 'y') };
    const clash = kept.some(
      (other) =>
        inside(other.quad, middle) ||
        inside(one.quad, { x: mean(other.quad, 'x'), y: mean(other.quad, 'y') }),
    );
    if (!clash) kept.push(one);
  }
  return kept;
}

function mean(quad: Quad, axis: 'x' | 'y'): number {
  return quad.reduce((sum, p) => sum + p[axis], 0) / 4;
}

/** As it was typed, without the dust of binary fractions. */
function stated({ length_mm, width_mm }: SurfaceSize): string {
  return `${Number(length_mm.toFixed(3))} × ${Number(width_mm.toFixed(3))} mm`;
}

function otherShape(
  corners: Corners,
  size: SurfaceSize,
  width_px: number,
  height_px: number,
): string | undefined {
  if (shapeOff(corners, size, width_px, height_px) < 0.05) return undefined;
  return `what stands out has not the shape of ${stated(size)}; drag the corners, or check the size`;
}

function otherSize(corners: Corners, size: SurfaceSize, card: FoundCard): string | undefined {
  const back = inverted(card.homography);
  const [a, b, c, d] = corners.map((p) => applied(back, p)) as unknown as Corners;
  const length = [Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(d.x - c.x, d.y - c.y)] as const;
  const width = [Math.hypot(c.x - b.x, c.y - b.y), Math.hypot(a.x - d.x, a.y - d.y)] as const;
  const close = (seen: readonly number[], mm: number) =>
    seen.every((one) => Math.abs(one - mm) < 1 + 0.01 * mm);
  if (close(length, size.length_mm) && close(width, size.width_mm)) return undefined;
  const across = `${((length[0] + length[1]) / 2).toFixed(1)} × ${((width[0] + width[1]) / 2).toFixed(1)} mm`;
  return `by the card what stands out is ${across}, not ${stated(size)}; drag the corners, or check the size`;
}

function cardPlaces({ homography }: FoundCard, by: number): PlacePx[] {
  const { length_mm, width_mm } = cardShape;
  return [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((u) =>
    [0.1, 0.5, 0.9].map((v) => {
      const { x, y } = applied(homography, { x: u * length_mm, y: v * width_mm });
      return { x: x / by, y: y / by };
    }),
  );
}

function inside(quad: Quad, p: PlacePx): boolean {
  return quad.every((a, i) => turn(a, quad[(i + 1) % 4]!, p) > 0);
}

function sameQuad(a: Quad, b: Quad, within: number): boolean {
  return [0, 1, 2, 3].some((first) =>
    a.every((p, i) => {
      const q = b[(i + first) % 4]!;
      return Math.hypot(p.x - q.x, p.y - q.y) < within;
    }),
  );
}
