import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import type { Settling } from '../body/settle.ts';
import { type Gaussian, product, varianceOf } from '../math/gaussian.ts';
import type { SlideModel } from './model.ts';

/** Dirt and chance touching move each zone's seat anew at each setting down: this share of the roughness. */
const seatShare = 0.38;

/** A row over the pose as a row over the state: the pose is the settled one, q = response · h. */
export function settledRow(model: SlideModel, settled: Settling, row: ArrayLike<number>): Float64Array {
  const out = new Float64Array(model.layout.size);
  for (let j = 0; j < poseSize; j++) {
    const part = row[j]!;
    if (part === 0) continue;
    const line = settled.response[j]!;
    for (let z = 0; z < model.layout.zones; z++) out[z]! += part * line[z]!;
  }
  return out;
}

/** The gap of zone z at rest, h + n·u(q), as a row over the state. */
export function seatedGapRow(model: SlideModel, settled: Settling, z: number): Float64Array {
  const row = settledRow(model, settled, model.rows[z]!);
  row[z]! += 1;
  return row;
}

/** The gap of zone z at rest, µm. */
export function seatedGap(model: SlideModel, state: Gaussian, settled: Settling, z: number) {
  const row = seatedGapRow(model, settled, z);
  return { mean: product(row, state.mean), sd: Math.sqrt(Math.max(0, varianceOf(state, row))) };
}

/** 6 × 6: covariance of the pose from setting down to setting down, through the settling. */
export function seatCovariance(settled: Settling, rough_um: readonly number[]): number[][] {
  return settled.response.map((a) =>
    settled.response.map((b) => {
      let sum = 0;
      for (let z = 0; z < rough_um.length; z++) sum += a[z]! * b[z]! * (seatShare * rough_um[z]!) ** 2;
      return sum;
    }),
  );
}

/** Pose at rest, µm and µrad. */
export const settledMean = (model: SlideModel, state: Gaussian, settled: Settling): PoseNumbers =>
  settled.response.map((line) => {
    let sum = 0;
    for (let z = 0; z < model.layout.zones; z++) sum += line[z]! * state.mean[z]!;
    return sum;
  }) as unknown as PoseNumbers;
