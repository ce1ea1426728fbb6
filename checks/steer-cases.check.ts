import { readFileSync } from 'node:fs';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { beforeAll, describe, expect, it } from 'vitest';
import { solveWithHighs } from '../src/adapters/solver/highs.ts';
import { steerInput } from '../src/contract/steer.ts';
import type { SteerInput } from '../src/core/observe/round.ts';
import type { SteerAnswer } from '../src/core/plan/answer.ts';
import { steer } from '../src/shop/steer.ts';
import { expectWithin } from './near.ts';

/*
 * Source: cases of `steer` computed by an independent solver (not this code), handed over with the contract; seen. The
 * settled pose is worked out here again, from the contract's formula alone, by singular values instead of normal equations.
 */
interface Expected {
  estimate: Record<string, { value: number; sd: number }>;
  minimum_volume_mm3: number;
  passes_cost: number;
}

/** n·u at each zone's middle over [t_y, t_z, ω_x, ω_y, ω_z] (the travel x is free), and each zone's area. */
function zonesOf(input: SteerInput) {
  return input.slide.pads.flatMap((pad) => {
    const size = Math.hypot(...pad.normal);
    const [nx, ny, nz] = pad.normal.map((v) => v / size) as [number, number, number];
    return Array.from({ length: pad.zones }, (_, k) => {
      const x = pad.centre_mm[0] + (pad.length_mm * (k + 0.5)) / pad.zones - pad.length_mm / 2;
      const [, y, z] = pad.centre_mm;
      const arm = [y * nz - z * ny, z * nx - x * nz, x * ny - y * nx].map((mm) => mm / 1000);
      return {
        row: [ny, nz, ...arm],
        area: (pad.length_mm * pad.width_mm) / pad.zones,
        material: pad.material,
      };
    });
  });
}

/** The area-weighted least-squares pose after taking these depths off: [t_y, t_z, ω_x, ω_y, ω_z]. */
function settle(input: SteerInput, depths: readonly number[]): number[] {
  const zones = zonesOf(input);
  const left = new Matrix(zones.map(({ row, area }) => row.map((part) => part * Math.sqrt(area))));
  const right = Matrix.columnVector(zones.map(({ area }, z) => -depths[z]! * Math.sqrt(area)));
  return new SingularValueDecomposition(left).solve(right).to1DArray();
}

/**
 * How far a turn read off a sweep may be moved by the readings' own rounding to three decimals, µrad: the cases' estimates
 * were made before it. Half a digit on each reading, all pulling the same way.
 */
function roundingReach(input: SteerInput): number {
  const reach = input.rounds[0]!.sweeps.map((sweep) => {
    const first = sweep.points_mm[0]!;
    const along = sweep.points_mm.map((p) => Math.hypot(...p.map((v, i) => v - first[i]!)));
    const mean = along.reduce((sum, d) => sum + d, 0) / along.length;
    const spread = along.reduce((sum, d) => sum + (d - mean) ** 2, 0);
    return (0.0005 * along.reduce((sum, d) => sum + Math.abs(d - mean), 0) * 1000) / spread;
  });
  return Math.max(...reach);
}

/** The feature's change in a pose; the cases ask for turns only. */
const turned = (input: SteerInput, name: string, pose: readonly number[]): number => {
  const feature = input.features.find((f) => f.name === name)!;
  if (feature.kind !== 'turn') throw new Error(`${name}: a case asks for a shift`);
  return pose[{ x: 2, y: 3, z: 4 }[feature.axis]]!;
};

describe.each([1, 2, 3, 4, 5, 6])('steer against an independent solver, case %d', (k) => {
  const text = JSON.parse(readFileSync(`checks/data/cases/steer-${k}.json`, 'utf8'));
  const input = steerInput(text.input);
  const expected = text.expected as Expected;
  const zones = zonesOf(input);
  let answer: SteerAnswer;
  beforeAll(async () => {
    const given = await steer(input, solveWithHighs);
    if (!given.ok) throw new Error(given.text);
    answer = given;
  });

  it('estimates every feature and its sd within 1e-3, or what the rounding of the printed readings can do', () => {
    const rounding = roundingReach(input);
    expect(rounding).toBeLessThan(
      1e-3 * Math.min(...Object.values(expected.estimate).map(({ sd }) => 2 * sd)),
    );
    expect(answer.estimate.features).toHaveLength(Object.keys(expected.estimate).length);
    for (const { name, value, sd } of answer.estimate.features) {
      const wanted = expected.estimate[name]!;
      expectWithin(value, wanted.value, Math.max(1e-3, 1e-3 * Math.abs(wanted.value), rounding));
      expectWithin(sd, wanted.sd, 1e-3 * Math.max(1, wanted.sd));
    }
  });

  it('takes depths that settle rigidly to the aims, with no more metal than needed', () => {
    const depths = answer.plan.zones.map((zone) => zone.depth_um);
    expect(depths).toHaveLength(zones.length);
    const pose = settle(input, depths);
    for (const [z, { row }] of zones.entries()) {
      const sunk = -row.reduce((sum, part, j) => sum + part * pose[j]!, 0);
      expect(depths[z]!).toBeGreaterThanOrEqual(0);
      expectWithin(depths[z]!, sunk, 0.01);
    }
    for (const target of input.targets) {
      const now = answer.estimate.features.find((f) => f.name === target.feature)!.value;
      expectWithin(now + turned(input, target.feature, pose), target.aim!, 0.01);
    }
    const volume_mm3 = zones.reduce((sum, { area }, z) => sum + (area * depths[z]!) / 1000, 0);
    expectWithin(volume_mm3 / expected.minimum_volume_mm3, 1, 1e-3);
    expectWithin(answer.plan.volume_mm3 / volume_mm3, 1, 1e-9);
  });

  it('makes whole passes that end in every band, on their seats, for at most 2 % over the reference cost', () => {
    const passes = answer.plan.zones.map((zone) => zone.passes);
    const pass_um = zones.map(({ material }) => input.passes[material]!.um);
    const depths = passes.map((m, z) => m * pass_um[z]!);
    const pose = settle(input, depths);
    for (const m of passes) expect(Number.isInteger(m) && m >= 0).toBe(true);
    for (const target of input.targets) {
      const now = answer.estimate.features.find((f) => f.name === target.feature)!.value;
      const then = now + turned(input, target.feature, pose);
      expect(then).toBeGreaterThanOrEqual(target.low - 1e-4);
      expect(then).toBeLessThanOrEqual(target.high + 1e-4);
    }
    for (const [z, { row }] of zones.entries()) {
      const gap = depths[z]! + row.reduce((sum, part, j) => sum + part * pose[j]!, 0);
      expectWithin(gap, 0, pass_um[z]! * (1 + 1e-6));
    }
    const mean = zones.reduce((sum, { area }) => sum + area, 0) / zones.length;
    const cost = zones.reduce((sum, { area }, z) => sum + (area / mean) * passes[z]!, 0);
    expect(cost).toBeLessThanOrEqual(expected.passes_cost * 1.02);
  });
});
