import { describe, expect, it } from 'vitest';
import { displacementAlong, type Pose } from '../body/displacement.ts';
import type { Feature } from '../body/feature.ts';
import { type Slide, zonesOf } from '../body/slide.ts';
import type { Vector } from '../body/vector.ts';
import { checkPlan } from './plan-check.ts';

const half = Math.SQRT1_2;
const pad = (name: string, centre_mm: Vector, normal: Vector, width_mm: number) => ({
  name,
  centre_mm,
  normal,
  length_mm: 440,
  width_mm,
  zones: 5,
  material: 'liner',
});
const slide: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [
    pad('front', [0, -10, 0], [0, -half, half], 28),
    pad('rear', [0, 10, 0], [0, half, half], 28),
    pad('flat', [0, 290, 0], [0, 0, 1], 61),
  ],
};
const features: Feature[] = [
  { name: 'facing', kind: 'turn', axis: 'z' },
  { name: 'back', kind: 'shift', at_mm: [15, 250, 30], direction: [0, 0, 1] },
];
/** A rigid move that takes metal off everywhere: down 60 µm, and turned. */
const wanted: Pose = { t_um: [0, 1.5, -60], turn_urad: [-31, 12, 47] };
const depths = zonesOf(slide).map((zone) => -displacementAlong(wanted, zone.normal, zone.centre_mm));

describe('the check of a plan by rest', () => {
  it('depths of a rigid move give that move, and an even print', () => {
    expect(Math.min(...depths)).toBeGreaterThan(0);
    const check = checkPlan(
      { slide, heights_um: Array(15).fill(0), depths_um: depths, roughness_um: 2.5 },
      features,
    );
    expect(check.converged).toBe(true);
    expect(check.moved.facing).toBeCloseTo(47, 6);
    expect(check.moved.back).toBeCloseTo(displacementAlong(wanted, [0, 0, 1], [15, 250, 30]), 6);
    // What presses is 0.3 µm in the mean, 0.12 of the roughness: of normal heights so much stands beyond 0.80 sd (tables of the
    // unit normal loss: 0.1202). The mean gap is 2.0 µm: Φ((3 − 2.0) / 2.5) = Φ(0.40) = 0.655 (printed tables).
    for (const shares of Object.values(check.print))
      for (const share of shares) expect(share).toBeCloseTo(0.655, 3);
    expect(check.bearing_share).toBeCloseTo(0.655, 3);
  });

  it('a zone left standing 15 µm proud carries the part off the plan, and the print says so', () => {
    const left = depths.map((depth, z) => (z === 12 ? depth - 15 : depth));
    const check = checkPlan(
      { slide, heights_um: Array(15).fill(0), depths_um: left, roughness_um: 2.5 },
      features,
    );
    const planned = displacementAlong(wanted, [0, 0, 1], [15, 250, 30]);
    // The flat rides up on its middle zone by nearly all of the 15 µm, seen at 250 of 290 mm.
    expect(check.moved.back! - planned).toBeGreaterThan(8);
    expect(check.moved.back! - planned).toBeLessThan(13);
    expect(check.print.flat![2]).toBeGreaterThan(0.9);
    expect(check.print.flat![0]).toBeLessThan(0.1);
    expect(check.bearing_share).toBeLessThan(0.8);
  });
});
