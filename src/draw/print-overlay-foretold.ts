import type { PlaceMm, PlacePx, SurfaceSize } from '../core/print/picture.ts';
import { drawing } from './drawing.ts';
import { overPhotoColours } from './print-overlay-marks.ts';
import { type OverlayView, onScreen } from './print-overlay-view.ts';
import { type Shape, shape } from './shape.ts';
import { type BearingSpot, bearingSpots, seedOf } from './spots.ts';

export interface ForetoldPrint {
  readonly title: string;
  readonly view: OverlayView;
  readonly size: SurfaceSize;
  /** What each zone is to bear, from the minus end, 0 to 1; null where nothing is foretold. */
  readonly shares: readonly (number | null | undefined)[];
  /** What the spots are thrown by: the same gives the same, so that they do not crawl. */
  readonly seed: string;
}

/** Longer half of a middle spot, mm: with full cover some twenty spots in a 25 mm square. Common practice, no source. */
const spot_mm = 2.4;
/** Places round a spot. */
const round = 10;

/**
 * A print that is foretold, drawn as the pad lies in its photo: spots thrown at random over each zone until they cover its share.
 * Where a spot stands says nothing; how many there are does.
 */
export function foretoldPrint({ title, view, size, shares, seed }: ForetoldPrint): Shape {
  const { sheet, blue } = overPhotoColours;
  const long = size.length_mm / Math.max(1, shares.length);
  const spots = shares.flatMap((share, k) =>
    typeof share === 'number'
      ? bearingSpots(
          { x: k * long, y: 0, width: long, height: size.width_mm },
          share,
          spot_mm,
          seedOf(`${seed} ${k}`),
        )
      : [],
  );
  const face: PlaceMm[] = [
    { x: 0, y: 0 },
    { x: size.length_mm, y: 0 },
    { x: size.length_mm, y: size.width_mm },
    { x: 0, y: size.width_mm },
  ];
  const path = (places: readonly PlaceMm[]) => `M${places.map((at) => text(onScreen(view, at))).join('L')}z`;
  return drawing({ title, width: view.width, height: view.height }, [
    shape('path', { d: path(face), fill: sheet }),
    shape('path', { d: spots.map((one) => path(edge(one))).join(''), fill: blue }),
  ]);
}

const text = ({ x, y }: PlacePx): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;

/** A spot's edge on the surface, mm. */
function edge({ x, y, long, short, turn_deg }: BearingSpot): PlaceMm[] {
  const turn = (turn_deg * Math.PI) / 180;
  return Array.from({ length: round }, (_, k) => {
    const angle = (2 * Math.PI * k) / round;
    const [a, b] = [long * Math.cos(angle), short * Math.sin(angle)];
    return { x: x + a * Math.cos(turn) - b * Math.sin(turn), y: y + a * Math.sin(turn) + b * Math.cos(turn) };
  });
}
