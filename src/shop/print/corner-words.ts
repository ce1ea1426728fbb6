import type { TurnedOver } from '../../core/ledger/entry.ts';
import type { PlaceWords } from '../../core/ledger/setup.ts';
import type { Corners, PlacePx, SurfaceSize } from '../../core/print/picture.ts';
import type { CornersAnswer } from './photo-desk.ts';

/** The four corners by what stands there, in the order of `Corners`; the first is the one marked on the map. */
export const cornerNames = (places: PlaceWords): readonly [string, string, string, string] => [
  `${places.minus_end}, ${places.minus_side}`,
  `${places.plus_end}, ${places.minus_side}`,
  `${places.plus_end}, ${places.plus_side}`,
  `${places.minus_end}, ${places.plus_side}`,
];

/** Half a turn: the other end becomes the first. */
export const turnedRound = ([a, b, c, d]: Corners): Corners => [c, d, a, b];

/** Edge for edge: a face seen in a mirror, or a way seen from above where the part was meant. */
export const mirrored = ([a, b, c, d]: Corners): Corners => [d, c, b, a];

/** A quarter turn: the length runs along the other pair of sides. */
export const quarterTurned = ([a, b, c, d]: Corners): Corners => [b, c, d, a];

/**
 * Found corners begun at the end where the map has its first corner: turned end over end it lies at the right and nearest, front
 * to back at the left and farthest. The photo is taken to be held as the part lies; else the person turns it.
 */
export function asItLies(corners: Corners, turned: TurnedOver): Corners {
  const away = (p: PlacePx) => (turned === 'end over end' ? p.x + p.y : -p.x - p.y);
  return away(corners[0]) >= away(corners[2]) ? corners : turnedRound(corners);
}

/** Corners to begin with where none are found: the surface's shape in the middle of the photo, along its longer side. */
export function startCorners(
  photo: { readonly width_px: number; readonly height_px: number },
  { length_mm, width_mm }: SurfaceSize,
  turned: TurnedOver,
): Corners {
  const { width_px, height_px } = photo;
  const level = width_px >= height_px === length_mm >= width_mm;
  const [along, across] = level ? [width_px, height_px] : [height_px, width_px];
  const fit = Math.min((0.7 * along) / length_mm, (0.7 * across) / width_mm);
  // A narrow pad still gets a figure that four thumbs can tell apart.
  const long = Math.max(0.15 * along, fit * length_mm) / 2;
  const wide = Math.max(0.15 * across, fit * width_mm) / 2;
  const middle = { x: (width_px - 1) / 2, y: (height_px - 1) / 2 };
  const at = (u: number, v: number): PlacePx =>
    level
      ? { x: middle.x + u * long, y: middle.y + v * wide }
      : { x: middle.x - v * wide, y: middle.y + u * long };
  return asItLies([at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)], turned);
}

/** How the corners were come by, and what to do with them. */
export function cornersFoundWords(answer: CornersAnswer): string {
  if ('why' in answer) return `Corners not found: ${answer.why}.`;
  const by = answer.how === 'card' ? 'by the corner card' : 'by the outline of the surface';
  return `Corners found ${by}, within ${Math.max(1, Math.round(answer.doubt_px))} pixels. Look at each, then read the print.`;
}
