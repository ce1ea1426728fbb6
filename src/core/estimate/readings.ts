import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { poseSize } from '../body/displacement.ts';
import { heightRow } from '../observe/height.ts';
import { levelRow } from '../observe/level.ts';
import type { Round } from '../observe/round.ts';
import { faceOf } from '../observe/sweep.ts';
import { sweepObservations } from './pose.ts';
import type { SweepFit } from './sweep-fit.ts';

/**
 * All readings of a round, said again in as few numbers as they have directions: independent, each with an sd of 1.
 * Rows are over the pose (6) and then the errors of the faces.
 */
export interface RoundReadings {
  readonly rows: readonly (readonly number[])[];
  readonly values: readonly number[];
  /** Sum of squares that no pose can explain: the same set-up read differently. */
  readonly residual: number;
  /** The readings' information over pose and faces, row by row. */
  readonly information: readonly (readonly number[])[];
  readonly seen: readonly number[];
}

/** Directions with less than this share of the largest information say nothing. */
const nothing = 1e-12;

/**
 * Gathers a round's readings by their normal equations and takes those apart into independent ones.
 * @param faces     all faces of the job, in the order of the state
 * @param reversed  names of sweeps entered with the wrong sign, to be turned back
 */
export function roundReadings(
  round: Round,
  fits: readonly SweepFit[],
  faces: readonly string[],
  reversed: ReadonlySet<string> = new Set(),
): RoundReadings {
  const size = poseSize + faces.length;
  const information = Array.from({ length: size }, () => Array<number>(size).fill(0));
  const seen = Array<number>(size).fill(0);
  let square = 0;
  const take = (row: readonly number[], value: number, sd: number): void => {
    const weight = 1 / (sd * sd);
    square += weight * value * value;
    for (let i = 0; i < size; i++) {
      const part = row[i]!;
      if (part === 0) continue;
      seen[i]! += part * weight * value;
      const line = information[i]!;
      for (let j = 0; j < size; j++) line[j]! += part * weight * row[j]!;
    }
  };
  const row = Array<number>(size).fill(0);
  const place = (pose: readonly number[]): void => {
    row.fill(0);
    for (let j = 0; j < poseSize; j++) row[j] = pose[j]!;
  };
  round.sweeps.forEach((sweep, k) => {
    const turned = reversed.has(sweep.name)
      ? { ...sweep, readings_um: sweep.readings_um.map((reading) => -reading) }
      : sweep;
    const fit = fits[k]!;
    const face = poseSize + faces.indexOf(faceOf(sweep));
    for (const point of sweepObservations(turned, fit)) {
      place(point.pose);
      row[face] = point.face;
      take(row, point.value, sweep.reading_sd_um * fit.widen);
    }
  });
  for (const level of round.levels) {
    place(levelRow(level));
    take(row, level.reading_urad, level.sd_urad);
  }
  for (const height of round.heights ?? []) {
    place(heightRow(height));
    take(row, height.reading_um, height.sd_um);
  }
  const parts = independentParts(information, seen);
  const explained = parts.values.reduce((sum, value) => sum + value * value, 0);
  return { ...parts, residual: Math.max(0, square - explained), information, seen };
}

/** N x = b as independent rows with an sd of 1, by the eigenvectors of N scaled to a unit diagonal. */
function independentParts(information: readonly (readonly number[])[], seen: readonly number[]) {
  const used = information.flatMap((line, i) => (line[i]! > 0 ? [i] : []));
  const rows: number[][] = [];
  const values: number[] = [];
  if (used.length === 0) return { rows, values };
  const size = used.map((i) => 1 / Math.sqrt(information[i]![i]!));
  const scaled = new Matrix(
    used.map((i, a) => used.map((j, b) => information[i]![j]! * size[a]! * size[b]!)),
  );
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(scaled, {
    assumeSymmetric: true,
  });
  const largest = Math.max(...realEigenvalues);
  realEigenvalues.forEach((value, k) => {
    if (value <= largest * nothing) return;
    const root = Math.sqrt(value);
    const row = Array<number>(information.length).fill(0);
    let sum = 0;
    used.forEach((i, a) => {
      const part = eigenvectorMatrix.get(a, k);
      row[i] = (root * part) / size[a]!;
      sum += part * seen[i]! * size[a]!;
    });
    rows.push(row);
    values.push(sum / root);
  });
  return { rows, values };
}
