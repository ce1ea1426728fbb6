import { describe, expect, it } from 'vitest';
import type { Pad } from '../../core/body/pad.ts';
import type { ZoneAnswer } from '../../core/plan/answer.ts';
import { doubtShares } from './doubt-shares.ts';

// One flat pad 400 mm long with two zones, their middles 200 mm apart: taking off δ at one end only tips it by δ / 200 mm.
const pad: Pad = {
  name: 'flat',
  centre_mm: [30, 7, 0],
  normal: [0, 0, 1],
  length_mm: 400,
  width_mm: 60,
  zones: 2,
  material: 'liner',
};
const slide = { name: 'one pad', free: 'x', pads: [pad] } as const;
const features = [{ name: 'level along', kind: 'turn', axis: 'y' }] as const;
const zone = (index: number, passes: number): ZoneAnswer => ({
  pad: 'flat',
  zone: index,
  centre_mm: [index * 200 - 70, 7, 0],
  depth_um: passes * 6,
  passes,
  passes_now: passes,
});

describe('where the doubt of a forecast comes from', () => {
  it('three passes more at one end, 0.5 µm of doubt a pass: 1.5 µm in 200 mm, 7.5 µrad, by hand', () => {
    const shares = doubtShares(
      { slide, features },
      [zone(0, 1), zone(1, 4)],
      [{ material: 'liner', um: 6, sd_um: 0.5 }],
      { name: 'level along', value: 40, sd: 4 },
      { name: 'level along', value: 3, sd: 10 },
    )!;
    expect(shares.removal).toBeCloseTo(7.5, 9);
    expect(shares.readings).toBe(4);
    expect(shares.scatter).toBeCloseTo(Math.sqrt(100 - 16 - 56.25), 9);
    expect(Math.hypot(shares.removal, shares.readings, shares.scatter)).toBeCloseTo(shares.whole, 9);
  });
  it('says nothing without a plan', () => {
    const value = { name: 'level along', value: 40, sd: 4 };
    expect(doubtShares({ slide, features }, [], [], value, value)).toBeUndefined();
  });
});
