import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Feature } from '../body/feature.ts';
import type { Vector } from '../body/vector.ts';
import type { Round } from '../observe/round.ts';
import type { Sweep } from '../observe/sweep.ts';
import { faceErrorOf, featureOf, poseOfRound } from './pose.ts';
import { fitSweep } from './sweep-fit.ts';

const facing: Feature = { name: 'facing', kind: 'turn', axis: 'z' };
const across: Feature = { name: 'level across', kind: 'turn', axis: 'x' };

/** Nine stops from the operator's side to the back; plunger toward the headstock, riding the slide: reading = +ω_z · y. */
function square(slope_urad: number, change: Partial<Sweep> = {}): Sweep {
  const points_mm = Array.from({ length: 9 }, (_, i): Vector => [-31, -70 + 23 * i, 95]);
  const wiggle = [0.7, -0.4, 1.1, -1.3, 0.2, 0.9, -0.8, -0.6, 0.5];
  return {
    name: 'square',
    rides: 'slide',
    touches: 'reference',
    plunger: [-1, 0, 0],
    points_mm,
    readings_um: points_mm.map((p, i) => 4.2 + (slope_urad * p[1]) / 1000 + wiggle[i]!),
    reading_sd_um: 1.2,
    face_slope_urad: 0,
    face_slope_sd_urad: 3.5,
    ...change,
  };
}

const round = (...sweeps: Sweep[]): Round => ({ sweeps, levels: [] });
const facingOf = (r: Round) => featureOf(poseOfRound(r), facing)!;

describe('the pose of one round', () => {
  it('reads concave as plus: the number climbs toward the back when the tool goes toward the headstock', () => {
    expect(facingOf(round(square(90))).value).toBeGreaterThan(80);
    expect(facingOf(round(square(-90))).value).toBeLessThan(-80);
  });

  it('an indicator turned to the other side flips the sign of its readings and nothing of the answer', () => {
    const here = square(57);
    const there = { ...here, plunger: [1, 0, 0] as Vector, readings_um: here.readings_um.map((r) => -r) };
    expect(facingOf(round(there)).value).toBeCloseTo(facingOf(round(here)).value, 9);
    expect(facingOf(round({ ...here, plunger: [1, 0, 0] })).value).toBeCloseTo(
      -facingOf(round(here)).value,
      9,
    );
  });

  it('swapping what rides and what touches flips the sign', () => {
    const swapped = square(57, { rides: 'reference', touches: 'slide' });
    expect(facingOf(round(swapped)).value).toBeCloseTo(-facingOf(round(square(57))).value, 9);
  });

  it('a lever arm that is the same at every stop sees nothing, however its mean is rounded', () => {
    const along: Feature = { name: 'level along', kind: 'turn', axis: 'y' };
    for (let stops = 2; stops <= 24; stops++)
      for (const z of [90, 95, 110.3, 0.7]) {
        const points_mm = Array.from({ length: stops }, (_, i): Vector => [-31, 20 * i, z]);
        const sweep = square(0, { points_mm, readings_um: points_mm.map(() => 0) });
        expect(featureOf(poseOfRound(round(sweep)), along), `${stops} stops at ${z} mm`).toBeUndefined();
        expect(featureOf(poseOfRound(round(sweep)), facing)).toBeDefined();
      }
  });

  it('no constant added to a sweep changes anything', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (shift) => {
        const moved = square(33, { readings_um: square(33).readings_um.map((r) => r + shift) });
        expect(facingOf(round(moved)).value).toBeCloseTo(facingOf(round(square(33))).value, 6);
      }),
    );
  });

  it('a known slope of the face is taken off', () => {
    const bare = facingOf(round(square(33))).value;
    expect(facingOf(round(square(33, { face_slope_urad: 12 }))).value - bare).toBeCloseTo(12, 9);
  });

  it('two sweeps with the square turned over part its own error from the slide’s (reversal)', () => {
    // The slide turns 40, the face's own slope is 25: one way the sum reads 40 − 25, the other 40 + 25.
    const one = square(40 - 25, { face: 'square', face_slope_sd_urad: 200 });
    const other = square(40 + 25, {
      face: 'square',
      face_slope_sd_urad: 200,
      turned_over: true,
      name: 'turned',
    });
    const pose = poseOfRound(round(one, other));
    const alone = fitSweep(square(0)).slope_urad;
    expect(featureOf(pose, facing)!.value).toBeCloseTo(40 + alone, 6);
    expect(faceErrorOf(pose, 'square')!.value).toBeCloseTo(25, 1);
    expect(featureOf(pose, facing)!.sd).toBeLessThan(facingOf(round(one)).sd);
  });

  it('a feature that no reading sees is not given a number', () => {
    expect(featureOf(poseOfRound(round(square(5))), across)).toBeUndefined();
  });

  it('a bumped point is left out and named, wherever it stands', () => {
    for (let bumped = 0; bumped < 9; bumped++) {
      const readings_um = square(61).readings_um.map((r, i) => (i === bumped ? r + 15 : r));
      const sweep = square(61, { readings_um });
      const fit = fitSweep(sweep);
      expect(fit.outliers.map((o) => o.point)).toEqual([bumped]);
      expect(fit.outliers[0]!.off_um).toBeGreaterThan(10);
      expect(Math.abs(facingOf(round(sweep)).value - 61)).toBeLessThan(12);
    }
  });

  it('scatter far beyond the stated sd widens the doubt instead of dropping points', () => {
    const wild = square(61, { readings_um: square(61).readings_um.map((r, i) => r + 9 * (i % 2 ? 1 : -1)) });
    const fit = fitSweep(wild);
    expect(fit.outliers).toEqual([]);
    expect(fit.widen).toBeGreaterThan(3);
    expect(facingOf(round(wild)).sd).toBeGreaterThan(2 * facingOf(round(square(61))).sd);
  });
});
