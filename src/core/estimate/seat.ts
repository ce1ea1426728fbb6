import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import type { Settling } from '../body/settle.ts';
import { covarianceWith, type Gaussian, product } from '../math/gaussian.ts';
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

/** What all gaps at rest have in common: P Jᵀ, the covariance of the state with the settled pose, one line a pose number. */
export const poseSeen = ({ layout }: SlideModel, state: Gaussian, settled: Settling): Float64Array[] =>
  settled.response.map((line) => {
    const row = new Float64Array(layout.size);
    row.set(line);
    return covarianceWith(state, row);
  });

/**
 * The gap of every zone at rest, µm. As h + A J h its variance needs no product with the whole covariance for each zone:
 *
 *     var = P_zz + 2 a (P Jᵀ)_zᵀ + a (J P Jᵀ) aᵀ      a the zone's row over the pose
 */
export function seatedGaps(
  model: SlideModel,
  state: Gaussian,
  settled: Settling,
): { readonly mean: number; readonly sd: number }[] {
  const { rows, layout } = model;
  const pose = settledMean(model, state, settled);
  const seen = poseSeen(model, state, settled);
  const ofPose = seen.map((line) => settled.response.map((back) => product(back, line)));
  return rows.map((row, z) => {
    let variance = state.covariance[z * layout.size + z]!;
    for (let j = 0; j < poseSize; j++) variance += row[j]! * (2 * seen[j]![z]! + product(row, ofPose[j]!));
    return { mean: state.mean[z]! + product(row, pose), sd: Math.sqrt(Math.max(0, variance)) };
  });
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
