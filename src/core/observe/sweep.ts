import { displacementRow, type PoseNumbers, rise } from '../body/displacement.ts';
import { length, scale, subtract, unit, type Vector } from '../body/vector.ts';

/** The two sides of a reading: the slide being scraped, or the fixed way and anything set true to it. */
export type Side = 'slide' | 'reference';

/** An indicator carried along a line. The reading is plus when the plunger is pushed in. */
export interface Sweep {
  readonly name: string;
  /** What the indicator's body rides on. */
  readonly rides: Side;
  /** What its plunger touches. */
  readonly touches: Side;
  /** From the indicator's body to the touched face. */
  readonly plunger: Vector;
  readonly points_mm: readonly Vector[];
  readonly readings_um: readonly number[];
  readonly reading_sd_um: number;
  /** The touched face's own slope along the sweep, from its certificate or a reversal, and how well that is known. */
  readonly face_slope_urad: number;
  readonly face_slope_sd_urad: number;
  /** The touched face, when several sweeps touch the same one: its error is then one error. Left out: the sweep's name. */
  readonly face?: string;
  /** The reference was turned over for this sweep, so its face's slope counts with the opposite sign (reversal). */
  readonly turned_over?: boolean;
}

/** The error of which face this sweep carries. */
export const faceOf = (sweep: Sweep): string => sweep.face ?? sweep.name;

/** Distance of each point from the sweep's first, mm. */
export const sweepDistances = (sweep: Pick<Sweep, 'points_mm'>): number[] =>
  sweep.points_mm.map((p) => length(subtract(p, sweep.points_mm[0]!)));

/** How many times a displacement of the slide counts: +1 when only the rider moves with it, −1 when only the touched face does. */
export const sweepSense = (sweep: Pick<Sweep, 'rides' | 'touches'>): -1 | 0 | 1 =>
  ((sweep.rides === 'slide' ? 1 : 0) - (sweep.touches === 'slide' ? 1 : 0)) as -1 | 0 | 1;

/**
 * What each point of a sweep sees of the slide's pose, µm.
 *
 *     reading(p) = s · (u_rider(p) − u_touched(p)) − face_slope · distance + constant
 *
 * @returns one row over the pose for each point: the s · (…) part; plus pushes the plunger in
 */
export function sweepRows(sweep: Sweep): PoseNumbers[] {
  const s = scale(unit(sweep.plunger), sweepSense(sweep));
  return sweep.points_mm.map((p) => displacementRow(s, p));
}

/** The part of each reading that one µrad of the face's own slope makes, µm: −distance, or +distance when it is turned over. */
export function faceColumn(sweep: Sweep): number[] {
  return sweepDistances(sweep).map((d) => rise(sweep.turned_over ? 1 : -1, d));
}
