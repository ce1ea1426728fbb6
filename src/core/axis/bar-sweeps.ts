import { add, type Vector } from '../body/vector.ts';
import type { Sweep } from '../observe/sweep.ts';
import { type BarReading, type HeldBar, planeOf, sagBetween, sideSign } from './bar-axis.ts';

/** Where a bar stands in the frame of the slide that carries its spindle. */
export interface BarPlace {
  /** Where it is held. */
  readonly nose_mm: Vector;
  /** Which way it points along x: +1 from a headstock, −1 from a tailstock. */
  readonly toward: 1 | -1;
}

/** From the indicator to the bar. */
const plungers: Record<BarReading['side'], Vector> = {
  top: [0, 0, -1],
  bottom: [0, 0, 1],
  front: [0, 1, 0],
  back: [0, -1, 0],
};

/** How far out a bar's own axis may stand from the spindle's before it is turned, one sd, µrad; common practice. */
const barSlope_sd_urad = 30;

/**
 * The readings as sweeps for the planner of the part that carries the spindle: the same bar, as it is and turned half
 * round, so that its error is one unknown that the two part; its sag taken out beforehand.
 */
export function barSweeps(held: HeldBar, place: BarPlace, reading: BarReading): Sweep[] {
  const { side } = reading;
  const at = (out_mm: number): Vector => add(place.nose_mm, [place.toward * out_mm, 0, 0]);
  const sag_um = planeOf(side) === 'up' ? sideSign(side) * sagBetween(held) : 0;
  const sweep = (turned: boolean): Sweep => {
    const key = turned ? 'turned_um' : 'first_um';
    return {
      name: `test bar, ${side}${turned ? ', turned half round' : ''}`,
      rides: 'reference',
      touches: 'slide',
      plunger: plungers[side],
      points_mm: [at(held.near_mm), at(held.far_mm)],
      readings_um: [reading.near[key], reading.far[key] + sag_um],
      reading_sd_um: held.reading_sd_um,
      face_slope_urad: 0,
      face_slope_sd_urad: barSlope_sd_urad,
      face: `test bar, ${side}`,
      ...(turned ? { turned_over: true } : {}),
    };
  };
  return [sweep(false), sweep(true)];
}
