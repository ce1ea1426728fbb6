import { displacementRow, type PoseNumbers } from './displacement.ts';
import { type AxisName, axisVector, unit, type Vector } from './vector.ts';

/** What is asked of a slide: a turn about an axis (µrad), or the shift of a point along a direction (µm). */
export type Feature =
  | { readonly name: string; readonly kind: 'turn'; readonly axis: AxisName }
  | { readonly name: string; readonly kind: 'shift'; readonly at_mm: Vector; readonly direction: Vector };

/** The band a feature must lie in, in µrad for a turn and µm for a shift; `aim` is where the plan brings it. */
export interface Target {
  readonly feature: string;
  readonly low: number;
  readonly high: number;
  readonly aim?: number;
  /** Share of each half band that whole passes keep clear of, 0 to 1; 0 when left out. */
  readonly guard?: number;
}

export const featureUnit = (feature: Feature): 'urad' | 'um' => (feature.kind === 'turn' ? 'urad' : 'um');

/** The row r with r · pose = the feature's value. */
export function featureRow(feature: Feature): PoseNumbers {
  if (feature.kind === 'shift') return displacementRow(unit(feature.direction), feature.at_mm);
  const axis = axisVector(feature.axis);
  return [0, 0, 0, axis[0], axis[1], axis[2]];
}
