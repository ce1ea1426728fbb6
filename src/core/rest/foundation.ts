import { type PoseNumbers, poseSize, rise } from '../body/displacement.ts';
import { zoneRows } from '../body/settle.ts';
import { type Slide, zonesOf } from '../body/slide.ts';
import { symmetricParts } from '../math/symmetric.ts';
import type { Wrench } from './load.ts';

/**
 * A slide's zones as springs, over the pose directions that its pads hold.
 *
 * The pose is q = basis · c. The basis is scaled by the zones' areas, so that with every zone pressed the stiffness over c
 * is the same in all directions; what no pad holds has no c and stays 0.
 */
export interface Foundation {
  readonly zones: number;
  /** How many directions are held: 5 for a V and a flat. */
  readonly held: number;
  /** poseSize × held, row-major. */
  readonly basis: Float64Array;
  /** zones × held, row-major: each zone's movement along its normal, µm, for a unit of each c. */
  readonly rows: Float64Array;
  /** Spring of each zone, N/µm. */
  readonly spring_N_per_um: Float64Array;
  readonly area_mm2: Float64Array;
}

/** @param stiffness_N_per_mm3  pressure for a mm of approach, above 0 */
export function foundation(slide: Slide, stiffness_N_per_mm3: number): Foundation {
  const zones = zonesOf(slide);
  const full = zoneRows(slide);
  const area_mm2 = Float64Array.from(zones, (zone) => zone.area_mm2);
  const normal = Array.from({ length: poseSize }, (_, i) =>
    Array.from({ length: poseSize }, (_, j) =>
      full.reduce((sum, row, z) => sum + row[i]! * area_mm2[z]! * row[j]!, 0),
    ),
  );
  const directions = symmetricParts(normal).held;
  const held = directions.length;
  const basis = new Float64Array(poseSize * held);
  directions.forEach((direction, k) => {
    for (let i = 0; i < poseSize; i++) basis[i * held + k] = direction[i]!;
  });
  const rows = new Float64Array(zones.length * held);
  full.forEach((row, z) => {
    for (let k = 0; k < held; k++)
      for (let i = 0; i < poseSize; i++) rows[z * held + k]! += row[i]! * basis[i * held + k]!;
  });
  // N/mm³ × mm² = N/mm; a µm is a thousandth of that.
  const spring_N_per_um = area_mm2.map((area) => rise(stiffness_N_per_mm3, area));
  return { zones: zones.length, held, basis, rows, spring_N_per_um, area_mm2 };
}

/** A pose as coordinates over the held directions: c = basisᵀ (AᵀWA) q. */
export function heldCoordinates(ground: Foundation, slide: Slide, pose: PoseNumbers): Float64Array {
  const { held, rows, area_mm2 } = ground;
  const c = new Float64Array(held);
  zoneRows(slide).forEach((row, z) => {
    const moved = row.reduce((sum, part, i) => sum + part * pose[i]!, 0) * area_mm2[z]!;
    for (let k = 0; k < held; k++) c[k]! += rows[z * held + k]! * moved;
  });
  return c;
}

/** Held coordinates → pose, µm and µrad. */
export function poseOf(ground: Foundation, c: Float64Array): PoseNumbers {
  const { held, basis } = ground;
  return Array.from({ length: poseSize }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < held; k++) sum += basis[i * held + k]! * c[k]!;
    return sum;
  }) as unknown as PoseNumbers;
}

/** A wrench over the held directions; what works along a direction that nothing holds drops out. */
export function heldForce(ground: Foundation, wrench: Wrench): Float64Array {
  const { held, basis } = ground;
  const force = new Float64Array(held);
  for (let k = 0; k < held; k++)
    for (let i = 0; i < poseSize; i++) force[k]! += basis[i * held + k]! * wrench[i]!;
  return force;
}
