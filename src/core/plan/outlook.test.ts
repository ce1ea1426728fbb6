import { describe, expect, it } from 'vitest';
import type { Pad } from '../body/pad.ts';
import { settling } from '../body/settle.ts';
import { estimateSlide } from '../estimate/estimate-slide.ts';
import type { SteerInput } from '../observe/round.ts';
import { outlook } from './outlook.ts';

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
const input: SteerInput = {
  slide: { name: 'one pad', free: 'x', pads: [pad] },
  features: [{ name: 'level along', kind: 'turn', axis: 'y' }],
  targets: [{ feature: 'level along', low: -20, high: 17 }],
  passes: { liner: { um: 6, sd_um: 0.5 } },
  // A level along x reads −ω_y.
  rounds: [{ sweeps: [], levels: [{ name: 'along', along: [1, 0, 0], reading_urad: -40, sd_urad: 4 }] }],
};
const estimate = estimateSlide(input);
const made = (count: readonly number[]) =>
  outlook(estimate, { spot: false, count }, settling(input.slide), input.targets);

describe('what is to be expected of passes', () => {
  it('three passes more at one end, 0.5 µm of doubt a pass: 1.5 µm in 200 mm, 7.5 µrad, by hand', () => {
    const [doubt] = made([1, 4]).doubt;
    expect(doubt!.removal).toBeCloseTo(7.5, 9);
    expect(doubt!.readings).toBeCloseTo(4, 9);
    expect(doubt!.scatter).toBeGreaterThan(0);
    expect(Math.hypot(doubt!.removal, doubt!.readings, doubt!.scatter)).toBeCloseTo(doubt!.whole, 9);
  });
  it('takes 18 µm more off the plus end, so that end sinks: 90 µrad about y, by hand', () => {
    const [now] = made([0, 0]).features;
    const [then] = made([1, 4]).features;
    expect(now).toMatchObject({ value: expect.closeTo(40, 9), sd: expect.closeTo(4, 9) });
    expect(then!.value - now!.value).toBeCloseTo(90, 9);
  });
});
