import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { steerInput } from '../../contract/steer.ts';
import { settledPose } from '../body/settle.ts';
import { featureOf, poseOfRound } from '../estimate/pose.ts';
import { passesCost, planPasses } from './passes.ts';
import { planProblem } from './problem.ts';
import type { Solve } from './program.ts';

/** The case with its zones' least passes, and a solver that ran out of time with far more of them in hand. */
async function outOfTime(k: number) {
  const given = JSON.parse(readFileSync(`checks/data/cases/steer-${k}.json`, 'utf8'));
  const input = steerInput(given.input);
  const pose = poseOfRound(input.rounds[0]!);
  const values = Object.fromEntries(input.features.map((f) => [f.name, featureOf(pose, f)!.value]));
  const problem = planProblem(input, values, input.passes);
  const dear: Solve = async (program) => {
    const columns = program.columns.map((column) => ({ ...column, low: 6 }));
    const found = await solveWithHighs({ ...program, columns, gap: 0.05, most_s: 5 });
    if (found.kind !== 'found') throw new Error(found.kind);
    return { ...found, proven: false };
  };
  return { problem, values, dear, least: given.expected.passes_cost as number };
}

describe('passes of a solver that ran out of time', () => {
  it.each([1, 3, 5])('case %d: lose most of what is too much, every rule kept', async (k) => {
    const { problem, dear, least } = await outOfTime(k);
    const answer = await planPasses(problem, dear);
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.proven).toBe(false);
    // Six passes and more on each of 18 zones were handed over: four to six times the least.
    expect(answer.cost).toBeLessThan(1.5 * least);
    expect(passesCost(problem, answer.passes)).toBeCloseTo(answer.cost, 9);
    const depths = answer.passes.map((m, z) => m * problem.pass_um[z]!);
    const settled = settledPose(problem.settled, depths);
    const along = (row: ArrayLike<number>) => settled.reduce((sum, part, j) => sum + part * row[j]!, 0);
    for (const target of problem.wanted) {
      const after = target.now + along(target.row);
      expect(after).toBeGreaterThan(target.low - 1e-6);
      expect(after).toBeLessThan(target.high + 1e-6);
    }
    problem.settled.rows.forEach((row, z) => {
      expect(Math.abs(depths[z]! + along(row))).toBeLessThan(problem.pass_um[z]! + 1e-6);
    });
  });
});
