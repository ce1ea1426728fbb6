import type { Pad } from '../body/pad.ts';
import type { Vector } from '../body/vector.ts';
import { add } from '../body/vector.ts';
import type { Sweep } from '../observe/sweep.ts';
import { axisOf, type BarSide, type HeldBar, planeOf, sideSign, type TurnedBar } from './bar-axis.ts';

/** Where a bar stands in the frame of the slide that carries its spindle. */
export interface BarPlace {
  /** Where it is held. */
  readonly nose_mm: Vector;
  /** Which way it points along x: +1 from a headstock, −1 from a tailstock. */
  readonly toward: 1 | -1;
}

/** A line along a test bar, as a set-up of the bench has it. */
export interface BarLine {
  readonly plunger: Vector;
  readonly from_mm: Vector;
  readonly to_mm: Vector;
}

/** From the indicator to the bar. */
const plungers: Record<BarSide, Vector> = {
  top: [0, 0, -1],
  bottom: [0, 0, 1],
  front: [0, 1, 0],
  back: [0, -1, 0],
};

/** A bar points away from the part that holds it: it is held at the end of the line that lies nearer to the middle of the pads. */
export function barPlace({ from_mm, to_mm }: BarLine, pads: readonly Pad[]): BarPlace {
  const middle = pads.reduce((sum, pad) => sum + pad.centre_mm[0], 0) / pads.length;
  const [held, free] =
    Math.abs(from_mm[0] - middle) < Math.abs(to_mm[0] - middle) ? [from_mm, to_mm] : [to_mm, from_mm];
  return { nose_mm: held, toward: free[0] > held[0] ? 1 : -1 };
}

/** Whether a bar read on this side tells what the set-up's line tells: up and down, or sideways. */
export const readsAlong = ({ plunger }: BarLine, side: BarSide): boolean =>
  Math.abs(plunger[planeOf(side) === 'up' ? 2 : 1]) > 0.9;

/**
 * A bar that was turned half round as one sweep for the planner of the part that carries its spindle: the means of the two turns at
 * its two places, the sag taken out, so that it sees the slope that `axisOf` tells and doubts it as much.
 * @throws RangeError  places out of order, see `axisOf`
 */
export function barSweep(held: HeldBar, place: BarPlace, reading: TurnedBar): Sweep {
  const { side } = reading;
  const { slope_urad, sd_urad } = axisOf(held, reading);
  const at = (out_mm: number): Vector => add(place.nose_mm, [place.toward * out_mm, 0, 0]);
  const between_mm = held.far_mm - held.near_mm;
  return {
    name: `test bar, ${side}`,
    rides: 'reference',
    touches: 'slide',
    plunger: plungers[side],
    points_mm: [at(held.near_mm), at(held.far_mm)],
    readings_um: [0, (sideSign(side) * slope_urad * between_mm) / 1000 + 0],
    // Each of the two carries half the variance of the slope over the distance between them.
    reading_sd_um: (sd_urad * between_mm) / 1000 / Math.SQRT2,
    face_slope_urad: 0,
    face_slope_sd_urad: 0,
    face: 'test bar, turned half round',
  };
}
