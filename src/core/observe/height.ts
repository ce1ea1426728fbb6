import { displacementRow, type PoseNumbers } from '../body/displacement.ts';
import { unit, type Vector } from '../body/vector.ts';

/** A gauge between a face of the slide and the reference: how far the slide stands from nominal at a point; plus along `direction`. */
export interface Height {
  readonly name: string;
  readonly at_mm: Vector;
  readonly direction: Vector;
  readonly reading_um: number;
  readonly sd_um: number;
}

/** What a height gauge sees of the pose, µm. */
export const heightRow = (height: Pick<Height, 'at_mm' | 'direction'>): PoseNumbers =>
  displacementRow(unit(height.direction), height.at_mm);
