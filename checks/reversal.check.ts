import { describe, it } from 'vitest';
import type { Feature } from '../src/core/body/feature.ts';
import type { Vector } from '../src/core/body/vector.ts';
import { faceErrorOf, featureOf, poseOfRound } from '../src/core/estimate/pose.ts';
import type { Sweep } from '../src/core/observe/sweep.ts';
import { readSlope, slopeSize } from '../src/core/quantity/slope.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Source: C. J. Evans, R. J. Hocken, W. T. Estler, Self-calibration: reversal, redundancy, error separation, and "absolute
 * testing", CIRP Annals 45(2), 1996, 617–634; formulae from memory, and the same sum and difference seen for a level
 * (Ia = et + el, Ib = et − el). No worked example with numbers was found in print: the numbers are derived.
 */
const facing: Feature = { name: 'facing', kind: 'turn', axis: 'z' };

/** The cross ways swept against a face of which nothing is known: an indicator riding the slide, plunger to the headstock. */
function sweep(
  name: string,
  y_mm: readonly number[],
  readings_um: readonly number[],
  turned_over: boolean,
): Sweep {
  return {
    name,
    rides: 'slide',
    touches: 'reference',
    plunger: [-1, 0, 0],
    points_mm: y_mm.map((y): Vector => [-25, y, 90]),
    readings_um,
    reading_sd_um: 5,
    face_slope_urad: 0,
    face_slope_sd_urad: 1e5,
    face: 'square',
    turned_over,
  };
}

/** The slide's turn and the face's own slope, from one sweep as it stands and one turned over, µrad. */
function parted(y_mm: readonly number[], straight: readonly number[], turned: readonly number[]) {
  const pose = poseOfRound({
    sweeps: [sweep('as it stands', y_mm, straight, false), sweep('turned over', y_mm, turned, true)],
    levels: [],
  });
  return { slide: featureOf(pose, facing)!.value, face: faceErrorOf(pose, 'square')!.value };
}

describe('a square turned over', () => {
  it('t1 = 12″ and t2 = −4″: the machine is 4″ out, the square 8″', () => {
    const arcsec = slopeSize('arcsec');
    const y = [0, 60, 130, 210, 300];
    // reading = turn · y − face slope · distance, so a face slope of −8″ adds 8″ as it stands.
    const fall = (seconds: number) => y.map((mm) => 7 + (seconds * arcsec * mm) / 1000);
    const { slide, face } = parted(y, fall(12), fall(-4));
    expectPrinted(slide / arcsec, '4.00000');
    expectPrinted(face / arcsec, '-8.00000');
    const said = readSlope('4 arcsec', 'urad');
    expectWithin(said.ok ? said.urad : Number.NaN, slide, 5e-5);
  });
  it('as it stands +18, turned −6 over 300 mm: the ways +6, the face 12 the other way', () => {
    const { slide, face } = parted([0, 300], [0, 18], [0, -6]);
    expectPrinted(slide * 0.3, '6.00000');
    expectPrinted(face * 0.3, '-12.0000');
  });
});

describe('a straightedge turned over: I1 = M + S, I2 = M − S', () => {
  const y = [0, 100, 200, 300, 400, 500];
  const one = [0, 1, 6, 8, 3, 0];
  const two = [0, -5, -4, 0, 1, 0];
  it('the means and half differences of the readings are M and S', () => {
    expectSame(
      one.map((r, i) => (r + two[i]!) / 2),
      [0, -2, 1, 4, 2, 0],
    );
    expectSame(
      one.map((r, i) => (r - two[i]!) / 2),
      [0, 3, 5, 4, 1, 0],
    );
  });
  it('slopes: those of M and S by least squares, 7.5/17.5 and −3.5/17.5 µm in 100 mm', () => {
    const { slide, face } = parted(y, one, two);
    expectPrinted(slide / 10, '0.42857');
    expectPrinted(face / 10, '0.20000');
  });
  it('where the indicator was set to zero changes nothing', () => {
    const there = parted(
      y,
      one.map((r) => r + 5),
      two.map((r) => r - 3),
    );
    const here = parted(y, one, two);
    expectWithin(there.slide, here.slide, 5e-7);
    expectWithin(there.face, here.face, 5e-7);
  });
});
