import { cardShape } from './card-shape.ts';
import { crossing, edgePlaces, steadyLine } from './find-lines.ts';
import { boxMean, grey, grown, type Plane, type Shrunk, shrunk } from './find-planes.ts';
import { areaOf, hullOf, largestQuad, type Quad, takeRegions, turn } from './find-regions.ts';
import { applied, fitted, type Homography, surfaceToPhoto } from './homography.ts';
import type { Picture, PlaceMm, PlacePx } from './picture.ts';

/** The corner card as it lies in a photo. */
export interface FoundCard {
  /** The 16 corners of its squares: square by square, each clockwise from its top left, as `cardCorners` has them. */
  readonly corners_px: readonly PlacePx[];
  /** From the card, mm, to the photo, px. */
  readonly homography: Homography;
  /** Distance of the 16 corners from where the projection puts them, root mean square, px. */
  readonly rms_px: number;
}

export interface NotFound {
  /** Why not, in words for the user. */
  readonly why: string;
}

/** The 16 corners of the squares on the card, mm: square by square, each clockwise from its top left. */
export function cardCorners(): PlaceMm[] {
  const side = cardShape.square_mm;
  return cardShape.squares.flatMap(({ x, y }) => [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]);
}

/** A dark four-cornered figure with a bright ring about it, in the shrunk photo. */
interface DarkSquare {
  readonly quad: Quad;
  readonly middle: PlacePx;
  /** Bright in its middle. */
  readonly dot: boolean;
  /** Length of its mean side. */
  readonly side: number;
}

/**
 * Finds the corner card: dark squares with a bright ring about them, four of which a projection fits; the one with the
 * white dot tells which way round it lies. The photo is looked through shrunk; corners come from straight lines fitted to
 * where the light crosses halfway, in the whole photo.
 */
export function findCard(picture: Picture, small: Shrunk = shrunk(picture, 900)): FoundCard | NotFound {
  const squares = darkSquares(grey(small));
  if (squares.length < 4) return { why: 'no corner card in view: fewer than four dark squares on white' };
  const four = cardAmong(squares);
  if (four === undefined) return { why: 'no corner card in view: no four dark squares lie as on the card' };
  const corners_px: PlacePx[] = [];
  for (const quad of four) {
    const sharp = sharpened(
      picture,
      quad.map((p) => grown(p, small.by)),
      small.by,
    );
    if (sharp === undefined)
      return { why: 'a square of the corner card has no clear edges; take the photo again' };
    corners_px.push(...sharp);
  }
  const mm = cardCorners();
  const homography = fitted(mm, corners_px);
  const square = corners_px.map((p, i) => {
    const q = applied(homography, mm[i]!);
    return (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
  });
  const rms_px = Math.sqrt(square.reduce((sum, one) => sum + one, 0) / square.length);
  if (rms_px > 3)
    return { why: `the corner card is bent or half hidden: its corners are off by ${rms_px.toFixed(1)} px` };
  return { corners_px, homography, rms_px };
}

/** Corners from lines fitted along each side; twice, the second time close to the first. */
function sharpened(picture: Picture, rough: readonly PlacePx[], by: number): PlacePx[] | undefined {
  let now = [...rough];
  const side = Math.sqrt(areaOf(rough));
  for (const reach of [Math.min(0.3 * side, 2.5 * by + 2), Math.min(0.3 * side, 6)]) {
    const lines = now.map((p, i) => steadyLine(edgePlaces(picture, p, now[(i + 1) % 4]!, reach)));
    const next: PlacePx[] = [];
    for (let i = 0; i < 4; i++) {
      const before = lines[(i + 3) % 4];
      const after = lines[i];
      const at = before && after && crossing(before, after);
      if (at === undefined || Math.hypot(at.x - now[i]!.x, at.y - now[i]!.y) > 0.5 * side) return undefined;
      next.push(at);
    }
    now = next;
  }
  return now;
}

function darkSquares(plane: Plane): DarkSquare[] {
  const { width, height } = plane;
  const found: DarkSquare[] = [];
  for (const radius of [12, 36]) {
    const mean = boxMean(plane, Math.round((radius * Math.max(width, height)) / 1000));
    const dark = new Uint8Array(width * height);
    for (let i = 0; i < dark.length; i++) dark[i] = plane.at[i]! < 0.62 * mean.at[i]! ? 1 : 0;
    for (const region of takeRegions(dark, width, height, 30)) {
      if (region.cut || region.area > (width * height) / 60) continue;
      const hull = hullOf(region);
      const quad = largestQuad(hull);
      if (quad === undefined) continue;
      const area = areaOf(quad);
      const side = Math.sqrt(area);
      // Pixel centres lie half a pixel inside the figure's edge.
      if (region.area < 0.72 * (side + 1) ** 2 || area < 0.86 * areaOf(hull)) continue;
      const middle = middleOf(quad);
      const inside = [0.62, 0.7].flatMap((share) => ringOf(plane, quad, middle, share));
      const ring = ringOf(plane, quad, middle, 1 + 5 / side + 0.12);
      const darkest = Math.max(...inside);
      if (Math.min(...ring) < 1.5 * darkest) continue;
      if (found.some((one) => Math.hypot(one.middle.x - middle.x, one.middle.y - middle.y) < 0.4 * side))
        continue;
      const bright = Math.min(...ring);
      const dot = valueAt(plane, middle) > darkest + 0.3 * (bright - darkest);
      found.push({ quad, middle, dot, side });
    }
  }
  return found;
}

/** Brightness along the figure blown up about its middle by `share`: corners' directions and the sides' middles. */
function ringOf(plane: Plane, quad: Quad, middle: PlacePx, share: number): number[] {
  return quad.flatMap((p, i) => {
    const q = quad[(i + 1) % 4]!;
    return [0, 0.25, 0.5, 0.75].map((t) =>
      valueAt(plane, {
        x: middle.x + share * (p.x + t * (q.x - p.x) - middle.x),
        y: middle.y + share * (p.y + t * (q.y - p.y) - middle.y),
      }),
    );
  });
}

function valueAt({ width, height, at }: Plane, { x, y }: PlacePx): number {
  const col = Math.min(width - 1, Math.max(0, Math.round(x)));
  const row = Math.min(height - 1, Math.max(0, Math.round(y)));
  return at[row * width + col]!;
}

/** Where the diagonals cross: a projection keeps it the square's middle. */
function middleOf([a, b, c, d]: Quad): PlacePx {
  const t = turn(a, b, d) / (turn(a, b, d) + turn(c, d, b));
  return { x: a.x + t * (c.x - a.x), y: a.y + t * (c.y - a.y) };
}

/** Four squares that lie as on the card, the one with the dot first, each with its corners in the card's order. */
function cardAmong(squares: readonly DarkSquare[]): Quad[] | undefined {
  const side = cardShape.square_mm;
  const middles = cardShape.squares.map(({ x, y }) => ({ x: x + side / 2, y: y + side / 2 }));
  const [first, across, , down] = middles;
  const size = { length_mm: across!.x - first!.x, width_mm: down!.y - first!.y };
  const mm = cardCorners().map((p) => ({ x: p.x - first!.x, y: p.y - first!.y }));
  let best: Quad[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const one of squares.filter(({ dot }) => dot)) {
    const others = squares.filter(
      (s) => s !== one && !s.dot && s.side < 2.5 * one.side && s.side > one.side / 2.5,
    );
    if (others.length > 40) continue;
    for (const second of others)
      for (const third of others) {
        if (third === second || turn(one.middle, second.middle, third.middle) <= 0) continue;
        for (const fourth of others) {
          if (fourth === second || fourth === third) continue;
          if (turn(one.middle, third.middle, fourth.middle) <= 0) continue;
          if (turn(second.middle, third.middle, fourth.middle) <= 0) continue;
          if (turn(fourth.middle, one.middle, second.middle) <= 0) continue;
          const set = [one, second, third, fourth];
          const h = surfaceToPhoto([one.middle, second.middle, third.middle, fourth.middle], size);
          const placed = mm.map((p) => applied(h, p));
          let worst = 0;
          const quads = set.map((s, i) => {
            const { quad, off } = turned(s.quad, placed.slice(4 * i, 4 * i + 4));
            worst = Math.max(worst, off / s.side);
            return quad;
          });
          if (worst < 0.3 && worst < least) {
            least = worst;
            best = quads;
          }
        }
      }
  }
  return best;
}

/** The figure begun at the corner that fits the four places best, and its largest distance from them. */
function turned(quad: Quad, to: readonly PlacePx[]): { quad: Quad; off: number } {
  let best = { quad, off: Number.POSITIVE_INFINITY };
  for (let first = 0; first < 4; first++) {
    const order: Quad = [
      quad[first]!,
      quad[(first + 1) % 4]!,
      quad[(first + 2) % 4]!,
      quad[(first + 3) % 4]!,
    ];
    const off = Math.max(...order.map((p, i) => Math.hypot(p.x - to[i]!.x, p.y - to[i]!.y)));
    if (off < best.off) best = { quad: order, off };
  }
  return best;
}
