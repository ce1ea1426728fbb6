import { displacementRow, type PoseNumbers, poseSize, rise } from '../body/displacement.ts';
import { unit, type Vector } from '../body/vector.ts';
import { cholesky } from '../math/gaussian.ts';
import type { Cell } from './cells.ts';

/** The weight of the part, and how stiff a face is. */
export interface Weight {
  readonly force_N: number;
  readonly at_mm: Vector;
  readonly direction: Vector;
  readonly stiffness_N_per_mm3: number;
}

/** A share of the stiffness of all cells that is always kept, so that a part touching at one point still has a next step. */
const kept = 1e-6;

/**
 * How a part of these gaps comes to rest under its weight: one-sided springs, the pose of least energy.
 *
 *     E(q) = ½ Σ kₐ max(0, −g)² − F·u,   g = gap + row · q                                                     (1)
 *
 * Newton's steps over the touching cells; a step that does not lower the energy is halved.
 * @returns the pose (µm, µrad)
 */
export function seatCells(
  cells: readonly Cell[],
  gaps_um: ArrayLike<number>,
  weight: Weight,
  start: ArrayLike<number>,
): PoseNumbers {
  // Stiffness of a cell in N per µm, the rise() of a micrometre being a thousandth of a millimetre.
  const springs = cells.map((cell) => weight.stiffness_N_per_mm3 * rise(1, cell.area_mm2));
  const pull = displacementRow(unit(weight.direction), weight.at_mm).map((part) => part * weight.force_N);
  const all = stiffnessOf(cells, springs, () => true);
  const gapAt = (q: ArrayLike<number>, c: number): number => {
    const row = cells[c]!.row;
    let gap = gaps_um[c]!;
    for (let j = 0; j < poseSize; j++) gap += row[j]! * q[j]!;
    return gap;
  };
  const energy = (q: ArrayLike<number>): number => {
    let sum = 0;
    for (let c = 0; c < cells.length; c++) {
      const gap = gapAt(q, c);
      if (gap < 0) sum += 0.5 * springs[c]! * gap * gap;
    }
    for (let j = 0; j < poseSize; j++) sum -= pull[j]! * q[j]!;
    return sum;
  };

  let q = Array.from(start);
  let least = energy(q);
  for (let turn = 0; turn < 80; turn++) {
    const touching = cells.map((_, c) => gapAt(q, c) < 0);
    const force = [...pull];
    touching.forEach((touches, c) => {
      if (!touches) return;
      const push = -springs[c]! * gapAt(q, c);
      for (let j = 0; j < poseSize; j++) force[j]! += push * cells[c]!.row[j]!;
    });
    const stiffness = stiffnessOf(cells, springs, (c) => touching[c]!);
    const step = solve(
      stiffness.map((line, i) => line.map((part, j) => part + kept * all[i]![j]!)),
      force,
    );
    let share = 1;
    let next = q;
    let found = least;
    for (let halving = 0; halving < 40; halving++) {
      next = q.map((part, j) => part + share * step[j]!);
      found = energy(next);
      if (found < least) break;
      share /= 2;
    }
    if (!(found < least - 1e-12 * Math.max(1, Math.abs(least)))) break;
    q = next;
    least = found;
  }
  return q as unknown as PoseNumbers;
}

function stiffnessOf(cells: readonly Cell[], springs: readonly number[], counts: (c: number) => boolean) {
  const matrix = Array.from({ length: poseSize }, () => Array<number>(poseSize).fill(0));
  cells.forEach(({ row }, c) => {
    if (!counts(c)) return;
    for (let i = 0; i < poseSize; i++)
      for (let j = 0; j < poseSize; j++) matrix[i]![j]! += springs[c]! * row[i]! * row[j]!;
  });
  return matrix;
}

/** Solves a symmetric system; directions without stiffness (the travel) do not move. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const largest = Math.max(...matrix.map((line, i) => line[i]!));
  const size = matrix.map((line, i) => (line[i]! > 1e-12 * largest ? 1 / Math.sqrt(line[i]!) : 0));
  const scaled = matrix.map((line, i) =>
    line.map((part, j) => (i === j ? (size[i] ? 1 + 1e-9 : 1) : part * size[i]! * size[j]!)),
  );
  const lower = cholesky(scaled);
  const n = right.length;
  const y = right.map((part, i) => part * size[i]!);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) y[i]! -= lower[i]![k]! * y[k]!;
    y[i]! /= lower[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i]! -= lower[k]![i]! * y[k]!;
    y[i]! /= lower[i]![i]!;
  }
  return y.map((part, i) => part * size[i]!);
}
