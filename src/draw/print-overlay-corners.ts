import type { Corners, PlacePx } from '../core/print/picture.ts';
import { drawing } from './drawing.ts';
import { overPhotoColours, plate, punchMark, rimmedPath } from './print-overlay-marks.ts';
import { type Shape, shape } from './shape.ts';

/** A whole photo on the screen. */
export interface StageFit {
  readonly photo: { readonly width_px: number; readonly height_px: number };
  /** Of the stage, px on the screen. */
  readonly width: number;
  readonly height: number;
  /** Screen px a photo px. */
  readonly scale: number;
  /** Where the photo's first pixel's outer corner lies on the stage. */
  readonly left: number;
  readonly top: number;
}

/** Room round the photo, px: a grip at its very edge is still whole. */
const rim = 20;

/** The whole photo in the room there is. */
export function stageFit(photo: StageFit['photo'], width: number, most_height: number): StageFit {
  const scale = Math.min((width - 2 * rim) / photo.width_px, (most_height - 2 * rim) / photo.height_px);
  return {
    photo,
    width,
    height: Math.round(photo.height_px * scale + 2 * rim),
    scale,
    left: (width - photo.width_px * scale) / 2,
    top: rim,
  };
}

const placeOf = ({ x, y }: PlacePx, fit: StageFit): PlacePx => ({
  x: fit.left + (x + 0.5) * fit.scale,
  y: fit.top + (y + 0.5) * fit.scale,
});

/** How far a grip's middle lies outside its corner, px: the thumb covers the grip and not the corner. */
const gripReach = 38;
/** Grips are at least this far apart, px. */
const leastApart = 50;

/**
 * Middles of the four grips on the stage: outside the figure on the corner's own diagonal, within the stage, and pushed along the
 * figure's sides where two would cover each other.
 */
export function stageGrips(corners: Corners, fit: StageFit): PlacePx[] {
  const at = corners.map((corner) => placeOf(corner, fit));
  const unit = (from: PlacePx, to: PlacePx): PlacePx => {
    const far = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { x: (to.x - from.x) / far, y: (to.y - from.y) / far };
  };
  const grips = at.map((here, k) => {
    const a = unit(at[(k + 1) % 4]!, here);
    const b = unit(at[(k + 3) % 4]!, here);
    const away = unit({ x: 0, y: 0 }, { x: a.x + b.x, y: a.y + b.y });
    return inside({ x: here.x + away.x * gripReach, y: here.y + away.y * gripReach }, fit);
  });
  // Against the stage’s edge a push comes back by half: these many rounds are enough.
  for (let round = 0; round < 60; round++)
    for (let i = 0; i < 4; i++)
      for (let j = i + 1; j < 4; j++) {
        const [p, q] = [grips[i]!, grips[j]!];
        const dx = Math.abs(p.x - q.x);
        const dy = Math.abs(p.y - q.y);
        if (dx >= leastApart || dy >= leastApart) continue;
        // Along the way they are apart already, so that they keep their order.
        const level = Math.abs(at[i]!.x - at[j]!.x) >= Math.abs(at[i]!.y - at[j]!.y);
        const first = (level ? at[i]!.x - at[j]!.x : at[i]!.y - at[j]!.y) <= 0;
        const push = ((leastApart - (level ? dx : dy)) / 2 + 0.5) * (first ? -1 : 1);
        grips[i] = inside(level ? { x: p.x + push, y: p.y } : { x: p.x, y: p.y + push }, fit);
        grips[j] = inside(level ? { x: q.x - push, y: q.y } : { x: q.x, y: q.y - push }, fit);
      }
  return grips;
}

const inside = ({ x, y }: PlacePx, { width, height }: StageFit): PlacePx => ({
  x: Math.min(Math.max(x, 25), width - 25),
  y: Math.min(Math.max(y, 25), height - 25),
});

export interface CornerFigure {
  readonly corners: Corners;
  readonly fit: StageFit;
  readonly ends: { readonly minus: string; readonly plus: string };
  readonly chosen?: number | undefined;
}

/** The figure that the corners make, its grips tied to them, both ends by name and the first corner marked as on the map. */
export function cornerFigure({ corners, fit, ends, chosen }: CornerFigure): Shape {
  const at = corners.map((corner) => placeOf(corner, fit));
  const grips = stageGrips(corners, fit);
  return drawing(
    { title: 'The corners of the surface in the photo', width: fit.width, height: fit.height },
    rimmedPath(at, 2, true),
    grips.flatMap((grip, k) => [
      ...rimmedPath([at[k]!, grip], 1.5),
      shape('circle', {
        cx: grip.x,
        cy: grip.y,
        r: 15,
        fill: k === chosen ? overPhotoColours.ink : overPhotoColours.sheet,
        stroke: k === chosen ? overPhotoColours.sheet : overPhotoColours.ink,
        'stroke-width': 2.5,
      }),
    ]),
    at.flatMap((place, k) => (k === 0 ? punchMark(place, 7) : punchFree(place))),
    endPlate(at[0]!, at[3]!, at[1]!, ends.minus, fit),
    endPlate(at[1]!, at[2]!, at[0]!, ends.plus, fit),
  );
}

const punchFree = ({ x, y }: PlacePx): Shape[] => [
  shape('circle', { cx: x, cy: y, r: 4.5, fill: overPhotoColours.sheet }),
  shape('circle', { cx: x, cy: y, r: 2.5, fill: overPhotoColours.ink }),
];

/** An end of the figure shorter than this has no room for its name, px. */
const leastEnd = 64;

/** An end's name: a little inside the figure from its end's middle, or beside a narrow one, clear of the grips. */
function endPlate(a: PlacePx, b: PlacePx, across: PlacePx, words: string, fit: StageFit): Shape[] {
  const wide = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const far = Math.hypot(across.x - a.x, across.y - a.y) || 1;
  const inward = { x: (across.x - a.x) / far, y: (across.y - a.y) / far };
  const over = { x: (a.x - b.x) / wide, y: (a.y - b.y) / wide };
  const halfAlong = (d: PlacePx) => Math.abs(d.x) * 52 + Math.abs(d.y) * 12;
  const reach = halfAlong(inward) + 10;
  const aside = wide < leastEnd ? wide / 2 + halfAlong(over) + 6 : 0;
  const at = {
    x: (a.x + b.x) / 2 + inward.x * reach + over.x * aside,
    y: (a.y + b.y) / 2 + inward.y * reach + over.y * aside,
  };
  return plate({ at, words, weight: 560 }, fit);
}
