import { describe, expect, it } from 'vitest';
import type { Sweep } from '../../core/observe/sweep.ts';
import { lookAtSweep } from './look-at-sweep.ts';

// The look's invented set-up card: 11 stops of 20 mm, the number falls, facing comes out convex.
const readings_um = [0.0, -1.5, -2.5, -3.5, -4.0, -4.5, -9.0, -6.5, -9.5, -11.5, -14.0];
const facing = { name: 'facing', kind: 'turn', axis: 'z' } as const;
const sweepWith = (change: Partial<Sweep>): Sweep => ({
  name: 'cross ways',
  rides: 'slide',
  touches: 'reference',
  plunger: [-1, 0, 0],
  points_mm: readings_um.map((_, i) => [-18, 20 * i, 92]),
  readings_um,
  reading_sd_um: 1.5,
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
  ...change,
});

describe('a sweep looked at by itself', () => {
  it('falls, and facing comes out −19 ± 5 µm in 300 mm, as the card of the look says', () => {
    const look = lookAtSweep(sweepWith({}), facing)!;
    expect(look.way).toBe('falls');
    // −19 ± 5 µm in 300 mm is −63 ± 17 µrad, the card's own rounding
    expect((look.feature!.value * 300) / 1000).toBeCloseTo(-19, 0);
    expect((2 * look.feature!.sd * 300) / 1000).toBeGreaterThan(3.5);
    expect((2 * look.feature!.sd * 300) / 1000).toBeLessThan(5.5);
    expect(look.off).toEqual([]);
    expect(look.line.map((end) => end.at_mm)).toEqual([0, 200]);
  });
  it('offers the turned sign for a reading that would then lie on the line, and only then', () => {
    const slipped = readings_um.map((r, i) => (i === 8 ? 9.5 : r));
    const look = lookAtSweep(sweepWith({ readings_um: slipped }), facing)!;
    expect(look.off).toHaveLength(1);
    expect(look.off[0]).toMatchObject({ point: 8, reading_um: 9.5, turned_fits: true });
    const bumped = readings_um.map((r, i) => (i === 3 ? 21 : r));
    expect(lookAtSweep(sweepWith({ readings_um: bumped }), facing)!.off[0]).toMatchObject({
      point: 3,
      turned_fits: false,
    });
  });
  it('the plunger facing the other way turns the feature and not the way the number goes', () => {
    const there = lookAtSweep(sweepWith({}), facing)!;
    const back = lookAtSweep(sweepWith({ plunger: [1, 0, 0] }), facing)!;
    expect(back.way).toBe('falls');
    expect(back.feature!.value).toBeCloseTo(-there.feature!.value, 6);
  });
  it('says nothing of two readings', () => {
    const two = { points_mm: [[-18, 0, 92] as const, [-18, 20, 92] as const], readings_um: [0, 3] };
    expect(lookAtSweep(sweepWith(two), facing)).toBeUndefined();
  });
});
