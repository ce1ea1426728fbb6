import { describe, expect, it } from 'vitest';
import { cot } from '../src/core/sums/sum.ts';
import { expectPrinted, expectWithin } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * Source: Machinery's Handbook, "Measuring Dovetail Slides": x = a + D(1 + cot(A/2)), y = b − D(1 + cot(A/2)), c = h cot A.
 * Rule second hand (a workshop page of 29 July 2009 for the male form, a formula sheet for all three); the handbook's page
 * itself from memory; numbers derived from the rule, held at 45, 50 and 55° as well because a wrong tan passes at 60°.
 */
const male = (a: number, D: number, A: number) =>
  sumOf('dovetail-male', { root_mm: a, roll_mm: D, angle_deg: A }).over!.value;
const female = (b: number, D: number, A: number) =>
  sumOf('dovetail-female', { floor_mm: b, roll_mm: D, angle_deg: A }).between!.value;

describe('a dovetail over rolls', () => {
  it.each([
    [45, '3.414213562'],
    [50, '3.144506921'],
    [55, '2.920982127'],
    [60, '2.732050808'],
  ])('at %d° a roll of 1 adds %s', (A, printed) => {
    expectPrinted(male(40, 1, A) - 40, printed);
    expectPrinted(100 - female(100, 1, A), printed);
  });
  it('male, 60°, root 40, rolls of 10: 67.320508076', () => expectPrinted(male(40, 10, 60), '67.32050808'));
  it('female, 60°, floor 100, rolls of 12: 67.215390309', () =>
    expectPrinted(female(100, 12, 60), '67.21539031'));
  it('male, 60°, root 1.000 in, rolls of 1/4 in: 1.683012702 in', () =>
    expectPrinted(male(25.4, 6.35, 60) / 25.4, '1.683012702'));
  it('female, 55°, floor 3.000 in, rolls of 3/8 in: 1.904631702 in', () =>
    expectPrinted(female(76.2, 9.525, 55) / 25.4, '1.904631702'));
  it('rolls of 10 add 27.3205 at 60° and 29.2098 at 55°', () => {
    expectPrinted(male(40, 10, 60) - 40, '27.3205');
    expectPrinted(male(40, 10, 55) - 40, '29.2098');
  });
  it('what a measurement over rolls is made of comes back from it', () => {
    const back = sumOf('dovetail-male-width', {
      over_mm: male(37.3, 11.1, 50),
      roll_mm: 11.1,
      angle_deg: 50,
    });
    expectWithin(back.root!.value, 37.3, 5e-10);
    const floor = sumOf('dovetail-female-width', {
      between_mm: female(91.7, 9.1, 47),
      roll_mm: 9.1,
      angle_deg: 47,
    });
    expectWithin(floor.floor!.value, 91.7, 5e-10);
  });
});

describe('its height and angle', () => {
  it('20 high at 60°: each flank leans 11.547005384, 40 grows to 63.094010768', () => {
    const got = sumOf('dovetail-height', { root_mm: 40, height_mm: 20, angle_deg: 60 });
    expectPrinted(got.lean!.value, '11.54700538');
    expectPrinted(got.wide!.value, '63.09401077');
  });
  it('at 55° the lean is h cot 55° and not h tan 27.5°, as one sheet has it (true at 60° only)', () => {
    const got = sumOf('dovetail-height', { root_mm: 40, height_mm: 20, angle_deg: 55 });
    expectPrinted(got.lean!.value, '14.00415');
    expect(Math.abs(got.lean!.value - 20 / cot(27.5))).toBeGreaterThan(3);
  });
  it('two sizes of roll, 63.367857016 and 86.735714034 over 8 and 16: 55° and a root of 40 (rule seen, numbers derived)', () => {
    const got = sumOf('dovetail-angle', {
      over_small_mm: 63.367857016,
      over_large_mm: 86.735714034,
      small_mm: 8,
      large_mm: 16,
    });
    expectPrinted(got.angle!.value, '55.0000000');
    expectPrinted(got.root!.value, '40.0000000');
  });
  it.each([
    [60, -5.817764],
    [55, -6.821579],
  ])('at %d°, rolls of 10: a minute of angle changes the measurement by %d µm', (A, um) => {
    const got = sumOf('dovetail-male', { root_mm: 40, roll_mm: 10, angle_deg: A });
    const slope = got.over!.shares.find((share) => share.key === 'angle')!.slope;
    expectWithin((slope * 1000) / 60, um, 5e-6);
  });
});
