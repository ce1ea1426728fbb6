import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { templateInput } from '../src/contract/template.ts';
import { rise } from '../src/core/body/displacement.ts';
import type { Vector } from '../src/core/body/vector.ts';
import { featureOf, poseOfRound } from '../src/core/estimate/pose.ts';
import { buildPlan } from '../src/core/ledger/template.ts';
import { readDeviation } from '../src/core/quantity/deviation.ts';
import { readSlope, saySlope } from '../src/core/quantity/slope.ts';
import { expectNear, expectPrinted } from './near.ts';

/*
 * Common practice of the trade: no standard says these, shops differ, and each is a default that may be changed. The one
 * measured example was seen in a thread on testing a lathe's facing by turning a faceplate half round.
 */
function um(typed: string): number {
  const read = readDeviation(typed, 'um');
  if (!read.ok) throw new Error(read.why);
  return read.um;
}
function urad(typed: string): number {
  const read = readSlope(typed, 'urad');
  if (!read.ok) throw new Error(read.why);
  return read.urad;
}
function saddlePlan() {
  const built = buildPlan(
    templateInput(JSON.parse(readFileSync('machines/lathe-saddle.json', 'utf8'))),
    {},
    'saddle',
  );
  if (!built.ok) throw new Error(JSON.stringify(built.refusals));
  return built.plan;
}

describe('a pass on soft liner (common practice)', () => {
  it('is about half a thou, 12.7 µm, however that is said', () => {
    for (const typed of ['half thou', '5 tenths', '.0005 in', '1/2 thou', 'half a thou', '0.5 thou'])
      expectNear(um(typed), 12.7, 1e-12);
  });
  it('and that is what a lined saddle starts from, with a third of it for doubt', () => {
    const { liner } = saddlePlan().passes;
    expectNear(liner!.um, um('half thou'), 1e-12);
    expect(liner!.sd_um / liner!.um).toBeGreaterThan(0.25);
    expect(liner!.sd_um / liner!.um).toBeLessThan(0.45);
  });
});

describe('the facing bias of a mid-size lathe (common practice): 6 to 7 tenths in 12 in concave', () => {
  it('is 15 to 17.5 µm in 300 mm', () => {
    expectPrinted(rise(urad('6 tenths in 12 in'), 300), '15');
    expectPrinted(rise(urad('7 tenths in 12 in'), 300), '17.5');
    expect(saySlope(urad('6 tenths in 12 in'), 'inch').text).toBe('+0.6\u00a0thou\u00a0in\u00a012\u00a0in');
  });
  it('lies in the band a saddle starts from, and flat or convex does not', () => {
    const facing = saddlePlan().targets.find((target) => target.feature === 'facing')!;
    for (const typed of ['6 tenths in 12 in', '7 tenths in 12 in']) {
      expect(urad(typed)).toBeGreaterThan(facing.low);
      expect(urad(typed)).toBeLessThan(facing.high);
    }
    expect(facing.low).toBeGreaterThan(0);
  });
});

describe('which way is concave', () => {
  it('the number climbing 0.045 mm from front to back over 100 mm is concave (seen: its owner called it so), 0.45 mm/m', () => {
    const points_mm: Vector[] = [0, 25, 60, 100].map((y) => [-20, y - 37, 80]);
    const pose = poseOfRound({
      sweeps: [
        {
          name: 'faceplate',
          rides: 'slide',
          touches: 'reference',
          plunger: [-1, 0, 0],
          points_mm,
          readings_um: [0, 25, 60, 100].map((mm) => 3 + 0.45 * mm),
          reading_sd_um: 2,
          face_slope_urad: 0,
          face_slope_sd_urad: 5,
        },
      ],
      levels: [],
    });
    // The contract: the turn about z is plus when facing comes out concave.
    expectPrinted(featureOf(pose, { name: 'facing', kind: 'turn', axis: 'z' })!.value / 1000, '0.4500');
    expect(saddlePlan().words.find((words) => words.feature === 'facing')!.plus).toBe('concave');
  });
});
