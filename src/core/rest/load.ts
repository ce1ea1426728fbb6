import { displacementRow, type PoseNumbers, poseSize } from '../body/displacement.ts';
import { zoneRows } from '../body/settle.ts';
import { type Slide, zonesOf } from '../body/slide.ts';
import { unit, type Vector } from '../body/vector.ts';

/** A force on the slide: its own weight through the centre of mass, or the cut. */
export interface Load {
  readonly force_N: number;
  readonly at_mm: Vector;
  /** Which way the force pushes the slide. */
  readonly direction: Vector;
}

/** A force and its moments as work per unit of each pose number: work = wrench · pose, N·µm. */
export type Wrench = PoseNumbers;

/** The work a load does for a µm or µrad of each pose number, N·µm. */
export function wrenchOf(load: Load): Wrench {
  const row = displacementRow(unit(load.direction), load.at_mm);
  return row.map((part) => part * load.force_N) as unknown as Wrench;
}

/**
 * The wrench that presses every zone with the same pressure: what a well placed weight, and a gib where there is one,
 * do to a part that bears evenly. It stands in for a load that nobody has weighed.
 * @param pressure_N_per_mm2  above 0
 */
export function evenWrench(slide: Slide, pressure_N_per_mm2: number): Wrench {
  const wrench = Array<number>(poseSize).fill(0);
  const zones = zonesOf(slide);
  zoneRows(slide).forEach((row, z) => {
    row.forEach((part, j) => {
      wrench[j]! -= part * pressure_N_per_mm2 * zones[z]!.area_mm2;
    });
  });
  return wrench as unknown as Wrench;
}
