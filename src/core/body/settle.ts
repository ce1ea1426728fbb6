import { isDetermined, symmetricParts } from '../math/symmetric.ts';
import { displacementRow, type PoseNumbers, poseSize } from './displacement.ts';
import { type Slide, zonesOf } from './slide.ts';

/** How a slide sinks when metal comes off its zones. */
export interface Settling {
  /** One row a zone over the pose: the zone's movement along its normal, µm. */
  readonly rows: readonly PoseNumbers[];
  /** 6 × zones: the pose that follows from removal depths, q = response · depths (µm and µrad for a µm). */
  readonly response: readonly (readonly number[])[];
  /** Pose directions (unit, 6 numbers) that the pads do not hold: the travel, and whatever else they leave free. */
  readonly free: readonly (readonly number[])[];
}

/** One row a zone over the pose, n · u at the zone's middle. */
export const zoneRows = (slide: Slide): PoseNumbers[] =>
  zonesOf(slide).map((zone) => displacementRow(zone.normal, zone.centre_mm));

/**
 * The settling of a slide whose zones carry in proportion to their weights.
 *
 *     q = −(AᵀWA)⁺ AᵀW d
 *
 * A has a row n·u for each zone, W the weights. With gaps h in place of d it gives the pose in which a part of
 * that form comes to rest. Directions that no pad holds stay 0.
 *
 * @param weights  one a zone, 0 or above; left out: the zones' areas, mm² (the contract's rule)
 */
export const settling = (slide: Slide, weights?: ArrayLike<number>): Settling =>
  settlingOfRows(zoneRows(slide), weights ?? zonesOf(slide).map((zone) => zone.area_mm2));

/** The same of a slide whose zones' rows are at hand. */
export function settlingOfRows(rows: readonly PoseNumbers[], w: ArrayLike<number>): Settling {
  const normal = Array.from({ length: poseSize }, () => Array<number>(poseSize).fill(0));
  rows.forEach((row, z) => {
    for (let i = 0; i < poseSize; i++)
      for (let j = 0; j < poseSize; j++) normal[i]![j]! += row[i]! * w[z]! * row[j]!;
  });
  const { inverse, free } = symmetricParts(normal);
  const response = inverse.map((line) =>
    rows.map((row, z) => -w[z]! * line.reduce((sum, part, j) => sum + part * row[j]!, 0)),
  );
  return { rows, response, free };
}

/** The pose after removing the given depths (µm, one a zone). */
export const settledPose = (settled: Settling, depths_um: ArrayLike<number>): PoseNumbers =>
  settled.response.map((line) =>
    line.reduce((sum, part, z) => sum + part * depths_um[z]!, 0),
  ) as unknown as PoseNumbers;

/** Whether the pads hold what a row over the pose asks for. */
export const isHeld = (settled: Settling, row: ArrayLike<number>): boolean => isDetermined(row, settled.free);
