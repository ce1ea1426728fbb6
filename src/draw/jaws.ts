import { boxCorners } from './hatch.ts';
import { chamfered, pathThrough, rectangle } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';

/** The band a value must lie in, in the shown unit; a side that is left out is open. */
export interface GaugeBand {
  readonly low?: number;
  readonly high?: number;
  /** The limits as written: "+6", "+20". */
  readonly low_text?: string;
  readonly high_text?: string;
}

export interface JawPlace {
  /** Places of the limits, px; undefined where the band is open. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly top: number;
  readonly bottom: number;
  /** Where the gap of an open band ends, px. */
  readonly left: number;
  readonly right: number;
  readonly thick: number;
  readonly chamfer: number;
}

/** The gap between the limits as the brightest thing there, and a jaw at each limit with a lead-in chamfer inside. */
export function jaws(place: JawPlace): Shape[] {
  const { top, bottom, thick, chamfer } = place;
  const from = place.low ?? place.left;
  const to = place.high ?? place.right;
  const jaw = (corners: ReturnType<typeof boxCorners>, cuts: number[]): Shape =>
    shape('path', { d: pathThrough(chamfered(corners, cuts), true), fill: palette.ink });
  const tall = bottom - top;
  return [
    rectangle(from, top, Math.max(to - from, 0), tall, palette.sheet),
    ...(place.low === undefined
      ? []
      : [jaw(boxCorners(place.low - thick, top, thick, tall), [0, chamfer, chamfer, 0])]),
    ...(place.high === undefined
      ? []
      : [jaw(boxCorners(place.high, top, thick, tall), [chamfer, 0, 0, chamfer])]),
  ];
}
