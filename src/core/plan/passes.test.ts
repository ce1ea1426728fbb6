import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { steerInput } from '../../contract/steer.ts';
import type { Vector } from '../body/vector.ts';
import { featureOf, poseOfRound } from '../estimate/pose.ts';
import type { SteerInput } from '../observe/round.ts';
import { planDepth } from './depth.ts';
import { planPasses } from './passes.ts';
import { type PlanProblem, planProblem } from './problem.ts';

const steerCase = (k: number): SteerInput =>
  steerInput(JSON.parse(readFileSync(`checks/data/cases/steer-${k}.json`, 'utf8')).input);

function problemOf(input: SteerInput): PlanProblem {
  const pose = poseOfRound(input.rounds[0]!);
  const values = Object.fromEntries(input.features.map((f) => [f.name, featureOf(pose, f)!.value]));
  return planProblem(input, values, input.passes);
}

type Move = (v: Vector) => Vector;

/** The whole case carried by a motion: places by `place`, directions by `turn`. */
function carried(input: SteerInput, place: Move, turn: Move): SteerInput {
  return {
    ...input,
    slide: {
      ...input.slide,
      pads: input.slide.pads.map((pad) => ({
        ...pad,
        centre_mm: place(pad.centre_mm),
        normal: turn(pad.normal),
      })),
    },
    rounds: input.rounds.map((round) => ({
      ...round,
      sweeps: round.sweeps.map((s) => ({
        ...s,
        plunger: turn(s.plunger),
        points_mm: s.points_mm.map(place),
      })),
    })),
  };
}

const depthOf = async (input: SteerInput) => {
  const depths = await planDepth(problemOf(input), solveWithHighs);
  if (!depths.ok) throw new Error(depths.text);
  return depths;
};

describe('depths and passes', () => {
  it('a case shifted as a whole keeps its depths', async () => {
    const input = steerCase(3);
    const shift: Move = (p) => [p[0] + 731, p[1] - 212, p[2] + 57];
    const here = await depthOf(input);
    const there = await depthOf(carried(input, shift, (v) => v));
    there.depth_um.forEach((d, z) => {
      expect(d).toBeCloseTo(here.depth_um[z]!, 4);
    });
  });

  it('a case turned half round about z, level along with it, turns its answer: zones run the other way', async () => {
    const input = steerCase(2);
    const half: Move = (p) => [-p[0], -p[1], p[2]];
    // A level along −x or −y reads the negative of one along +x or +y, and so do the features about x and y.
    const turned: SteerInput = {
      ...carried(input, half, half),
      rounds: input.rounds.map((round) => ({
        ...carried(input, half, half).rounds[0]!,
        levels: round.levels.map((level) => ({ ...level, along: half(level.along) })),
      })),
      targets: input.targets.map((t) =>
        t.feature === 'facing' ? t : { ...t, low: -t.high, high: -t.low, aim: -t.aim! },
      ),
    };
    const here = await depthOf(input);
    const there = await depthOf(turned);
    const zones = input.slide.pads[0]!.zones;
    here.depth_um.forEach((d, z) => {
      const pad = Math.floor(z / zones);
      expect(there.depth_um[pad * zones + (zones - 1 - (z % zones))]).toBeCloseTo(d, 4);
    });
    expect(there.volume_mm3).toBeCloseTo(here.volume_mm3, 4);
  });

  it('a case mirrored end for end with facing’s sign turned gives the mirrored passes’ cost', async () => {
    const input = steerCase(5);
    const mirror: Move = (p) => [-p[0], p[1], p[2]];
    const mirrored: SteerInput = {
      ...carried(input, mirror, mirror),
      rounds: input.rounds.map((round) => ({
        ...carried(input, mirror, mirror).rounds[0]!,
        levels: round.levels.map((level) => ({ ...level, along: mirror(level.along) })),
      })),
      // Turns about z and y change sign in a mirror across x; about x they do not.
      targets: input.targets.map((t) =>
        t.feature === 'level across' ? t : { ...t, low: -t.high, high: -t.low, aim: -t.aim! },
      ),
    };
    const here = await planPasses(problemOf(input), solveWithHighs, { gap: 1e-6 });
    const there = await planPasses(problemOf(mirrored), solveWithHighs, { gap: 1e-6 });
    if (!here.ok || !there.ok) throw new Error('no passes');
    expect(there.cost).toBeCloseTo(here.cost, 6);
  });

  it('material is never added, and never more than the stock is taken', async () => {
    for (let k = 1; k <= 6; k++) {
      const input = steerCase(k);
      const { depth_um } = await depthOf(input);
      expect(Math.min(...depth_um)).toBeGreaterThanOrEqual(0);
      const stock_um = Math.max(...depth_um) + 3;
      const held = await depthOf({
        ...input,
        slide: { ...input.slide, pads: input.slide.pads.map((pad) => ({ ...pad, stock_um })) },
      });
      expect(Math.max(...held.depth_um)).toBeLessThanOrEqual(stock_um + 1e-6);
    }
  });

  it('a stock that is too thin is named, with how much is short', async () => {
    const input = steerCase(1);
    const full = Math.max(...(await depthOf(input)).depth_um.slice(0, 6));
    const pads = input.slide.pads.map((pad, k) => (k === 0 ? { ...pad, stock_um: full - 11 } : pad));
    const answer = await planDepth(problemOf({ ...input, slide: { ...input.slide, pads } }), solveWithHighs);
    if (answer.ok) throw new Error('an answer where there is none');
    expect(answer.why).toBe('limits');
    expect(answer.limits.map((limit) => limit.name)).toEqual(['front flank']);
    expect(answer.limits[0]!.short).toBeCloseTo(11, 4);
  });

  it('a sink limit is kept, or named when it cannot be', async () => {
    const input = steerCase(1);
    const sink = (most_um: number) => [{ name: 'lead screw', at_mm: [0, -80, -40] as Vector, most_um }];
    const answer = await planDepth(problemOf({ ...input, sink: sink(4) }), solveWithHighs);
    if (answer.ok) throw new Error('an answer where there is none');
    expect(answer.limits[0]).toMatchObject({ kind: 'sink', name: 'lead screw' });
    expect((await planDepth(problemOf({ ...input, sink: sink(400) }), solveWithHighs)).ok).toBe(true);
  });
});
