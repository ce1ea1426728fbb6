import type { PoseNumbers } from '../body/displacement.ts';
import { cross, unit, type Vector } from '../body/vector.ts';

/** A level lying on the slide along `along`; its reading is plus when the end that `along` points to is high. */
export interface Level {
  readonly name: string;
  readonly along: Vector;
  readonly reading_urad: number;
  readonly sd_urad: number;
}

/**
 * What a level sees of the pose: the rise along a of the surface it lies on, ẑ · (ω × a) = ω · (a × ẑ).
 * Along y it is +ω_x, along x it is −ω_y. µrad.
 */
export function levelRow(level: Pick<Level, 'along'>): PoseNumbers {
  const arm = cross(unit(level.along), [0, 0, 1]);
  return [0, 0, 0, arm[0], arm[1], arm[2]];
}
