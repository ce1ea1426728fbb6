import { describe, expect, it } from 'vitest';
import { evenPivot, pivotOf, readHinge } from '../src/core/kit/hinge.ts';
import { readRock, rockGap } from '../src/core/kit/rock.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Where a pushed part turns: derived from the balance of friction about the pushed end; "about 30 % from each end" and the
 * bands 25–33 % and 20–38 % are common practice.
 */
const cells = (pressure: (x: number) => number): number[] =>
  Array.from({ length: 2000 }, (_, k) => pressure((k + 0.5) / 2000));

describe('the pivot', () => {
  it('1000 mm of even bearing turns 707.1 mm from the pushed end, 29 % from the far one', () => {
    expectPrinted(1000 * pivotOf(cells(() => 1)), '707.1');
    expectPrinted(evenPivot, '0.29');
  });
  it('two contacts at a tenth from the ends: at the far one', () =>
    expectWithin(
      pivotOf(cells((x) => (Math.abs(x - 0.1) < 0.002 || Math.abs(x - 0.9) < 0.002 ? 1 : 0))),
      0.9,
      5e-3,
    ));
  it('all in the middle: it spins about the middle', () =>
    expectWithin(pivotOf(cells((x) => (Math.abs(x - 0.5) < 0.01 ? 1 : 0))), 0.5, 5e-3));
  it('pressure rising evenly to the far end: ∛½ of the length (derived)', () =>
    expectWithin(pivotOf(cells((x) => x)), 0.5 ** (1 / 3), 5e-5));
});

describe('read into words (common practice)', () => {
  it.each([
    [0.71, 0.7, 'even'],
    [0.64, 0.65, 'nearly even'],
    [0.5, 0.52, 'in the middle'],
    [0.95, 0.92, 'at the ends'],
  ])('turned at %d and %d of the length: %s', (first, last, bearing) =>
    expect(readHinge({ pushed_first: first, pushed_last: last }).bearing).toBe(bearing),
  );
  it('unequal pivots: the end it turned nearer to is the heavy one', () => {
    const pressure = cells((x) => 1 + 3 * x);
    const test = { pushed_first: pivotOf(pressure), pushed_last: pivotOf([...pressure].reverse()) };
    expect(readHinge(test)).toMatchObject({ bearing: 'at one end', heavier: 'last end' });
    expectSame(
      readHinge({ pushed_first: test.pushed_last, pushed_last: test.pushed_first }).heavier,
      'first end',
    );
  });
  it('one push asks for the other, and every reading names what it cannot tell', () => {
    const one = readHinge({ pushed_first: 0.7 });
    expect(one.text).toContain('other end');
    expect(one.limits).toContain('twist');
  });
  it('refuses a place that is not on the part', () =>
    expect(() => readHinge({ pushed_first: 1.2 })).toThrow(/1\.2/));
});

/* Derived: a plane through three corners misses the fourth by z1 + z3 − z2 − z4. */
describe('the four-corner rock (derived)', () => {
  it('the gap at the odd corner; a plane and any tilt of it have none', () => {
    expectSame(rockGap([12, 3, 4, 2]), 11);
    const tilted = [0, 7, 7 + 5, 5] as const;
    expectSame(rockGap([tilted[0], tilted[1], tilted[2], tilted[3]]), 0);
  });
  it('corners two and four move 11 µm: it rocks on one and three, 5.5 µm off each; a metre of 200 mm breadth is twisted 55 µrad', () => {
    const got = readRock({ moved_um: [0.4, 11, -0.2, 11.6], sd_um: 0.5, length_mm: 1000, width_mm: 200 });
    expectSame(got.high, 'first and third');
    expectPrinted(got.gap_um, '11.0000');
    expectPrinted(got.twist_urad, '55.0000');
    expectPrinted(got.twist_urad_per_m, '55.0000');
    expect(got.text).toContain('5.5\u00a0µm');
  });
  it('below two sd no rock is claimed', () => {
    const got = readRock({ moved_um: [1, 1.8, 1.1, 1.6], sd_um: 0.5, length_mm: 480, width_mm: 200 });
    expect(got.high).toBeUndefined();
    expect(got.text).toContain('No rock is proven');
  });
});
