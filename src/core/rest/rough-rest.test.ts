import { describe, expect, it } from 'vitest';
import type { Pad } from '../body/pad.ts';
import type { Slide } from '../body/slide.ts';
import { normalQuantile } from '../math/normal.ts';
import { seededRandom } from '../math/random.ts';
import { evenWrench, wrenchOf } from './load.ts';
import { restUnder } from './rest.ts';
import { roughRest } from './rough-rest.ts';

const q = Math.SQRT1_2;
const pad = (name: string, y: number, normal: Pad['normal'], zones: number): Pad => ({
  name,
  centre_mm: [0, y, 0],
  normal,
  length_mm: 420,
  width_mm: 35,
  zones,
  material: 'liner',
});
const saddle = (zones: number): Slide => ({
  name: 'saddle',
  free: 'x',
  pads: [
    pad('front flank', -11, [0, -q, q], zones),
    pad('rear flank', 11, [0, q, q], zones),
    pad('flat', 250, [0, 0, 1], zones),
  ],
});
const stiffness_N_per_mm3 = 60;

describe('rest of rough faces', () => {
  it('evenly pressed, the mean gap is that of tables of the unit normal loss', () => {
    // 0.0479 N/mm² on 60 N/mm³ and 2 µm: 0.3992 of the roughness, which normal heights give with the mean at 0 (0.3989).
    const even = { slide: saddle(4), gap_um: Array(12).fill(7), stiffness_N_per_mm3, roughness_um: 2 };
    const atMean = roughRest({ ...even, wrench: evenWrench(even.slide, 0.047873) });
    for (const gap of atMean.gap_um) expect(gap).toBeCloseTo(0, 3);
    // 0.0833 of it: the mean stands one sd clear (0.08332).
    const light = roughRest({ ...even, wrench: evenWrench(even.slide, 0.01) });
    for (const gap of light.gap_um) expect(gap).toBeCloseTo(2, 3);
  });

  it('agrees with fine cells each on its own spring, on a form that touches in part (seed 3)', () => {
    const zones = 6;
    const cells = 600;
    const random = seededRandom(3);
    const form = Array.from({ length: 3 * zones }, () => random.normal(0, 4));
    const wrench = wrenchOf({ force_N: 1500, at_mm: [20, 110, 80], direction: [0, 0, -1] });
    const roughness_um = 2.4;
    // Zones that lean with the pose are cut finer, so that each is as good as level.
    const cut = 10;
    const cutForm = form.flatMap((mean) => Array<number>(cut).fill(mean));
    const ask = { slide: saddle(zones * cut), gap_um: cutForm, wrench, stiffness_N_per_mm3, roughness_um };
    const rough = roughRest(ask);
    const roughMean = form.map(
      (_, z) => rough.gap_um.slice(z * cut, (z + 1) * cut).reduce((a, b) => a + b, 0) / cut,
    );
    // Each zone cut in cells whose heights are the normal’s own quantiles, shuffled along it: chance leaves 2.4 µm / √600.
    const heights = form.flatMap((mean) => {
      const quantiles = Array.from(
        { length: cells },
        (_, i) => normalQuantile((i + 0.5) / cells) * roughness_um,
      );
      return quantiles
        .map((height) => ({ height, at: random.even() }))
        .sort((a, b) => a.at - b.at)
        .map(({ height }) => mean + height);
    });
    const fine = restUnder(
      { slide: saddle(zones * cells), stiffness_N_per_mm3, film_um: 3 },
      heights,
      wrench,
    );
    expect([rough.converged, fine.converged]).toEqual([true, true]);
    form.forEach((_, z) => {
      const mine = fine.gap_um.slice(z * cells, (z + 1) * cells);
      expect(Math.abs(mine.reduce((a, b) => a + b, 0) / cells - roughMean[z]!)).toBeLessThan(0.1);
    });
  });

  it('smooth faces rest as rest says', () => {
    const slide = saddle(5);
    const gap_um = Array.from({ length: 15 }, (_, z) => 3 * Math.sin(1 + 2 * z));
    const wrench = wrenchOf({ force_N: 1500, at_mm: [20, 110, 80], direction: [0, 0, -1] });
    const smooth = restUnder({ slide, stiffness_N_per_mm3, film_um: 3 }, gap_um, wrench);
    const nearly = roughRest({ slide, gap_um, wrench, stiffness_N_per_mm3, roughness_um: 1e-3 });
    nearly.gap_um.forEach((gap, z) => {
      expect(gap).toBeCloseTo(smooth.gap_um[z]!, 2);
    });
  });

  it('does not rest where a load lifts it, and refuses what does not fit', () => {
    const slide = saddle(5);
    const ask = { slide, gap_um: Array(15).fill(0), stiffness_N_per_mm3, roughness_um: 2 };
    const up = wrenchOf({ force_N: 100, at_mm: [0, 100, 0], direction: [0, 0, 1] });
    expect(roughRest({ ...ask, wrench: up }).converged).toBe(false);
    const down = wrenchOf({ force_N: 100, at_mm: [0, 100, 0], direction: [0, 0, -1] });
    expect(() => roughRest({ ...ask, wrench: down, gap_um: [1] })).toThrow(
      '1 gaps; expected one for each of 15 zones',
    );
    expect(() => roughRest({ ...ask, wrench: down, roughness_um: 0 })).toThrow(
      'roughness 0 µm; expected above 0',
    );
  });
});
