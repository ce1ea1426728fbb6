import type { Verdict } from '../core/prove/verdict.ts';
import { pathThrough, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';

/** How a pin is made: by its verdict, or as a round that is past, or as a forecast. */
export type PinLook = Verdict | 'past' | 'forecast' | 'as found';

export interface PinPlace {
  /** Middle of the value and half its doubt's width, px. */
  readonly x: number;
  readonly half: number;
  readonly y: number;
  readonly height: number;
  /** The drawing's edges, px: a pin that runs off one is pointed there. */
  readonly left: number;
  readonly right: number;
}

const leastHalf = 3.5;
const leastMarked = 10;

/** The left and right end of a pin as drawn, px. */
export function pinEnds(place: PinPlace): readonly [number, number] {
  const half = Math.max(place.half, leastHalf);
  const tip = place.height * 0.9;
  if (place.x > place.right) return [place.right - tip, place.right];
  if (place.x < place.left) return [place.left, place.left + tip];
  return [Math.max(place.x - half, place.left), Math.min(place.x + half, place.right)];
}

/** A pin as wide as its doubt: solid, hollow or dashed as it is looked at, pointed at an edge it runs off. */
export function pin(place: PinPlace, look: PinLook): Shape {
  const [from, to] = pinEnds(place);
  const half = Math.max(place.half, leastHalf);
  const offRight = place.x + half > place.right + 0.5;
  const offLeft = place.x - half < place.left - 0.5;
  const outline = pinOutline(from, to, place.y, place.height, offLeft, offRight);
  const hollow = look === 'not proven' || look === 'as found';
  const dashed = look === 'forecast';
  const ink = look === 'within' ? palette.blue : look === 'outside' ? palette.lead : palette.ink;
  const fill = look === 'past' ? palette.edge : ink;
  const thick = place.height < 14 ? 1.8 : 2.5;
  const body = shape('path', {
    d: outline,
    fill: dashed || hollow ? 'none' : fill,
    stroke: dashed || hollow ? (look === 'as found' ? palette.edge : palette.ink) : undefined,
    'stroke-width': dashed || hollow ? thick : undefined,
    'stroke-dasharray': dashed ? '5 3.5' : undefined,
  });
  // A mark knocked out of a pin hardly wider than it would make it look hollow, which says something else.
  const roomy = dashed || hollow || to - from >= leastMarked;
  const centred = roomy && place.x >= from + 1 && place.x <= to - 1 && look !== 'as found';
  if (!centred) return body;
  const tall = place.height * (dashed || hollow ? 0.84 : 0.62);
  const mark = shape('path', {
    d: pathThrough([
      [place.x, place.y - tall / 2],
      [place.x, place.y + tall / 2],
    ]),
    stroke: dashed || hollow ? palette.ink : palette.sheet,
    'stroke-width': place.height < 14 ? 1.6 : 2.2,
  });
  return shape('g', {}, body, mark);
}

function pinOutline(
  from: number,
  to: number,
  y: number,
  height: number,
  pointLeft: boolean,
  pointRight: boolean,
): string {
  const h = height / 2;
  const tip = Math.min(height * 0.6, to - from);
  if (pointLeft || pointRight) {
    const left: Spot[] = pointLeft
      ? [
          [from + tip, y + h],
          [from, y],
          [from + tip, y - h],
        ]
      : [
          [from, y + h],
          [from, y - h],
        ];
    const right: Spot[] = pointRight
      ? [
          [to - tip, y - h],
          [to, y],
          [to - tip, y + h],
        ]
      : [
          [to, y - h],
          [to, y + h],
        ];
    return pathThrough([...left, ...right], true);
  }
  const r = Math.min(h, (to - from) / 2);
  const n = (value: number): number => Math.round(value * 100) / 100;
  const turn = `A${n(r)} ${n(h)} 0 0 1`;
  return `M${n(from + r)} ${n(y - h)}H${n(to - r)}${turn} ${n(to - r)} ${n(y + h)}H${n(from + r)}${turn} ${n(from + r)} ${n(y - h)}Z`;
}
