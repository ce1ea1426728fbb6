import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import { type Feature, featureRow } from '../body/feature.ts';
import { isDetermined, symmetricParts } from '../math/symmetric.ts';
import { heightRow } from '../observe/height.ts';
import { levelRow } from '../observe/level.ts';
import type { Round } from '../observe/round.ts';
import { faceColumn, faceOf, type Sweep, sweepRows } from '../observe/sweep.ts';
import { fitSweep, type SweepFit } from './sweep-fit.ts';

/** A pose as one round's readings tell it, with nothing else believed. */
export interface RoundPose {
  /** Pose and the errors of the touched faces (µrad), by least squares. */
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Directions over pose and face errors that no reading sees. */
  readonly free: readonly (readonly number[])[];
  readonly faces: readonly string[];
  readonly sweeps: readonly SweepFit[];
}

/** A number and its standard deviation, in µrad or µm as the feature has it. */
export interface Doubtful {
  readonly value: number;
  readonly sd: number;
}

/**
 * The pose that fits one round's readings best, by generalised least squares; no prior holds the pose.
 *
 *     reading = s · u(p) + (face column) · (face slope + its error) + constant + noise
 *
 * Each sweep's constant is dropped by centring, which is the same as leaving it free. A face's error is one unknown for
 * all sweeps that touch it, held by its stated sd; with the reference turned over its column changes sign, and the two
 * sweeps part the face's error from the slide's (reversal).
 * Source of the reversal: Evans, Hocken and Estler 1996, held to numbers in checks/reversal.check.ts.
 */
export function poseOfRound(round: Round): RoundPose {
  const faces = [...new Set(round.sweeps.map(faceOf))];
  const size = poseSize + faces.length;
  const information = Array.from({ length: size }, () => Array<number>(size).fill(0));
  const seen = Array<number>(size).fill(0);

  const take = (row: readonly number[], value: number, sd: number): void => {
    const weight = 1 / sd ** 2;
    for (let i = 0; i < size; i++) {
      if (row[i] === 0) continue;
      seen[i]! += row[i]! * weight * value;
      for (let j = 0; j < size; j++) information[i]![j]! += row[i]! * weight * row[j]!;
    }
  };

  const fits = round.sweeps.map(fitSweep);
  round.sweeps.forEach((sweep, k) => {
    const rows = sweepObservations(sweep, fits[k]!);
    const place = poseSize + faces.indexOf(faceOf(sweep));
    for (const { pose, face, value } of rows) {
      const row = Array<number>(size).fill(0);
      pose.forEach((part, i) => {
        row[i] = part;
      });
      row[place] = face;
      take(row, value, sweep.reading_sd_um * fits[k]!.widen);
    }
  });
  const still = (row: PoseNumbers): number[] => [...row, ...faces.map(() => 0)];
  for (const level of round.levels) take(still(levelRow(level)), level.reading_urad, level.sd_urad);
  for (const height of round.heights ?? []) take(still(heightRow(height)), height.reading_um, height.sd_um);
  faces.forEach((face, f) => {
    const sd = faceSd(round.sweeps, face);
    const row = Array<number>(size).fill(0);
    row[poseSize + f] = 1;
    take(row, 0, sd);
  });

  const { inverse, free } = symmetricParts(information);
  const mean = inverse.map((line) => line.reduce((sum, part, j) => sum + part * seen[j]!, 0));
  return { mean, covariance: inverse, free, faces, sweeps: fits };
}

/** A face said to be perfect is held this tightly, µrad: far below any reading, and no division by zero. */
const perfect_urad = 1e-4;

/** How well a touched face's own slope is known, µrad: the widest of what its sweeps say. */
export const faceSd = (sweeps: readonly Sweep[], face: string): number =>
  Math.max(perfect_urad, ...sweeps.filter((s) => faceOf(s) === face).map((s) => s.face_slope_sd_urad));

/** One kept point of a sweep, freed of the sweep's constant and of the face's stated slope. */
export interface SweepObservation {
  readonly pose: PoseNumbers;
  /** What a µrad of error of the face's slope makes here, µm. */
  readonly face: number;
  readonly value: number;
}

/** Below this share of it a number's distance from a mean is the mean's own rounding, far below any real lever arm. */
const roundingShare = 1e-12;

/**
 * How far a part lies from the mean of all. A lever arm that is the same at every stop leaves nothing: its rounding must not pass for
 * a reading of what the sweep cannot see.
 */
const beside = (part: number, mean: number): number =>
  Math.abs(part - mean) <= roundingShare * Math.abs(mean) ? 0 : part - mean;

/** The kept points of a sweep as rows over pose and face error, centred so that the sweep's constant drops out. */
export function sweepObservations(sweep: Sweep, fit: SweepFit): SweepObservation[] {
  const used = sweep.readings_um.flatMap((_, i) => (fit.kept[i] ? [i] : []));
  const rows = sweepRows(sweep);
  const column = faceColumn(sweep);
  const value = sweep.readings_um.map((reading, i) => reading - column[i]! * sweep.face_slope_urad);
  const mean = (of: (i: number) => number) => used.reduce((sum, i) => sum + of(i), 0) / used.length;
  const middle = Array.from({ length: poseSize }, (_, k) => mean((i) => rows[i]![k]!));
  const face = mean((i) => column[i]!);
  const middleValue = mean((i) => value[i]!);
  return used.map((i) => ({
    pose: rows[i]!.map((part, k) => beside(part, middle[k]!)) as unknown as PoseNumbers,
    face: beside(column[i]!, face),
    value: value[i]! - middleValue,
  }));
}

/** A feature as a round's pose tells it, or undefined when no reading sees it. */
export function featureOf(pose: RoundPose, feature: Feature): Doubtful | undefined {
  const row = [...featureRow(feature), ...pose.faces.map(() => 0)];
  return isDetermined(row, pose.free) ? along(pose, row) : undefined;
}

/** The error of a touched face's slope beyond its stated value, µrad. */
export function faceErrorOf(pose: RoundPose, face: string): Doubtful | undefined {
  const row = pose.mean.map((_, i) => (i === poseSize + pose.faces.indexOf(face) ? 1 : 0));
  return pose.faces.includes(face) ? along(pose, row) : undefined;
}

function along(pose: RoundPose, row: readonly number[]): Doubtful {
  const value = row.reduce((sum, part, i) => sum + part * pose.mean[i]!, 0);
  const variance = row.reduce(
    (sum, a, i) => sum + (a === 0 ? 0 : a * row.reduce((s, b, j) => s + b * pose.covariance[i]![j]!, 0)),
    0,
  );
  return { value, sd: Math.sqrt(variance) };
}
