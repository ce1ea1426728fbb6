import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planeZone } from './plane-zone.ts';
import { surveyPlate } from './plate.ts';
import { straightness } from './reference-lines.ts';

const height = fc.double({ min: -50, max: 50, noNaN: true, noDefaultInfinity: true });
const profile = fc
  .array(fc.tuple(fc.double({ min: 20, max: 300, noNaN: true }), height), { minLength: 4, maxLength: 40 })
  .map((steps) => {
    let at = -130;
    return steps.map(([step, h]) => {
      at += step;
      return [at, h] as const;
    });
  });
const points = fc.array(
  fc.record({ x_mm: fc.integer({ min: 0, max: 900 }), y_mm: fc.integer({ min: 0, max: 600 }), z_um: height }),
  { minLength: 1, maxLength: 40 },
);
/** Three corners keep the points from lying in a row. */
const spanned = points.map((list) => [
  { x_mm: -10, y_mm: -20, z_um: 3 },
  { x_mm: 930, y_mm: -7, z_um: -4 },
  { x_mm: 40, y_mm: 650, z_um: 2 },
  ...list,
]);
const runs = { seed: 20_240_611, numRuns: 300 };
const near = (found: number, wanted: number) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(wanted)));

const widths = (list: readonly (readonly [number, number])[]) =>
  straightness(
    list.map(([at]) => at),
    list.map(([, h]) => h),
  ).straightness_um;
const keys = ['endpoint', 'least_squares', 'minimum_zone'] as const;

describe('straightness', () => {
  it('tilting, lifting and shifting along change nothing; twice the heights are twice as much', () =>
    fc.assert(
      fc.property(profile, height, height, (list, lift, tilt) => {
        const here = widths(list);
        const there = widths(list.map(([at, h]) => [at + 71, h + lift + (tilt * at) / 100] as const));
        const twice = widths(list.map(([at, h]) => [at, -2 * h] as const));
        for (const key of keys) {
          near(there[key], here[key]);
          near(twice[key], 2 * here[key]);
        }
      }),
      runs,
    ));
  it('taken from the other end it is the same', () =>
    fc.assert(
      fc.property(profile, (list) => {
        const back = widths(list.map(([at, h]) => [-at, h] as const).toReversed());
        for (const key of keys) near(back[key], widths(list)[key]);
      }),
      runs,
    ));
  it('the minimum zone is never wider than the other two, which hold all points as well', () =>
    fc.assert(
      fc.property(profile, (list) => {
        const found = widths(list);
        expect(found.minimum_zone).toBeLessThanOrEqual(Math.min(found.endpoint, found.least_squares) + 1e-9);
      }),
      runs,
    ));
});

describe('flatness', () => {
  const flat = (list: readonly { x_mm: number; y_mm: number; z_um: number }[]) =>
    surveyPlate({ kind: 'points', points: list }).flatness_um;
  it('tilting, lifting, moving, turning over and listing otherwise change nothing', () =>
    fc.assert(
      fc.property(spanned, height, height, height, (list, lift, a, b) => {
        const moved = list
          .map(({ x_mm, y_mm, z_um }) => ({
            x_mm: 500 - y_mm,
            y_mm: x_mm + 33,
            z_um: lift - z_um + (a * x_mm + b * y_mm) / 100,
          }))
          .toReversed();
        near(flat(moved).minimum_zone, flat(list).minimum_zone);
        near(flat(moved).least_squares, flat(list).least_squares);
      }),
      runs,
    ));
  it('no point lies outside the zone, and the contacts’ own arithmetic proves that none is narrower', () =>
    fc.assert(
      fc.property(spanned, (list) => {
        const { zone, depth_um, flatness_um } = surveyPlate({ kind: 'points', points: list });
        expect(Math.max(...depth_um)).toBeLessThanOrEqual(zone.width_um * (1 + 1e-9) + 1e-9);
        expect(flatness_um.minimum_zone).toBeLessThanOrEqual(flatness_um.least_squares + 1e-9);
        const worth = zone.contacts.reduce(
          (sum, one) => sum + (one.side === 'high' ? 1 : -1) * one.share * list[one.index]!.z_um,
          0,
        );
        near(worth, zone.width_um);
      }),
      runs,
    ));
  it('a narrow strip that lies aslant is as flat as the same strip laid square', () =>
    fc.assert(
      fc.property(spanned, fc.constantFrom(1e-1, 1e-3, 1e-5), (list, narrow) => {
        const square = {
          x_mm: list.map((point) => point.x_mm),
          y_mm: list.map((point) => point.y_mm * narrow),
          z_um: list.map((point) => point.z_um),
        };
        const x_mm = list.map((_, i) => 0.6 * square.x_mm[i]! - 0.8 * square.y_mm[i]!);
        const y_mm = list.map((_, i) => 0.8 * square.x_mm[i]! + 0.6 * square.y_mm[i]!);
        const [one, other] = [planeZone(square), planeZone({ ...square, x_mm, y_mm })];
        expect(Math.abs(one.width_um - other.width_um)).toBeLessThan(1e-6);
        expect(other.gap_um).toBeLessThan(1e-9);
      }),
      runs,
    ));
  it('a flat surface is held by one point over itself, and two places at one point by their difference', () => {
    const even = planeZone({ x_mm: [0, 10, 0, 10], y_mm: [0, 0, 10, 10], z_um: [5, 5, 5, 5] });
    expect([even.width_um, even.gap_um]).toEqual([0, 0]);
    const twice = planeZone({ x_mm: [0, 10, 0, 4, 4], y_mm: [0, 0, 10, 3, 3], z_um: [1, 2, 3, -7, 12] });
    expect(twice.width_um).toBeCloseTo(19, 12);
    expect(twice.contacts.map(({ index, side }) => `${side} ${index}`).toSorted()).toEqual([
      'high 4',
      'low 3',
    ]);
  });
});
