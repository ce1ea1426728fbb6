import { describe, expect, it } from 'vitest';
import { featureRow } from '../body/feature.ts';
import { settledPose, settling } from '../body/settle.ts';
import type { Slide } from '../body/slide.ts';
import { restAfterScraping } from './after-scraping.ts';
import { evenWrench, wrenchOf } from './load.ts';
import { predictedPrint } from './predicted-print.ts';

const slide: Slide = {
  name: 'table',
  free: 'x',
  pads: [
    {
      name: 'near',
      centre_mm: [0, -90, 0],
      normal: [0, 0, 1],
      length_mm: 300,
      width_mm: 40,
      zones: 5,
      material: 'iron',
    },
    {
      name: 'far',
      centre_mm: [0, 110, 0],
      normal: [0, 0, 1],
      length_mm: 300,
      width_mm: 40,
      zones: 5,
      material: 'iron',
    },
  ],
};

describe('the print to expect', () => {
  // Φ from any printed table of the normal distribution: 0.8413 at 1, 0.0228 at −2, 0.6915 at 0.5.
  it.each([
    [1, 2, 0.8413],
    [7, 2, 0.0228],
    [2, 2, 0.6915],
  ])(
    'a mean gap of %d µm with roughness %d µm and 3 µm of film shows a share of %d',
    (gap, roughness_um, share) => {
      expect(predictedPrint([gap], { roughness_um, film_um: 3 })[0]).toBeCloseTo(share, 4);
    },
  );
});

describe('rest after scraping', () => {
  it('an even slide pressed evenly stays even: every zone takes the same', () => {
    const { rest, print } = restAfterScraping({ slide, heights_um: Array(10).fill(0), roughness_um: 2 });
    expect(rest.converged).toBe(true);
    // 0.015 N/mm² on 50 N/mm³ is 0.3 µm.
    for (const gap of rest.gap_um) expect(gap).toBeCloseTo(-0.3, 9);
    expect(new Set(print.map((share) => share.toFixed(9))).size).toBe(1);
  });

  it('depths that a rigid move makes let the slide settle as the plan says', () => {
    const depths_um = [1, 3, 5, 7, 9, 4, 6, 8, 10, 12];
    const { rest } = restAfterScraping({ slide, heights_um: Array(10).fill(0), depths_um, roughness_um: 2 });
    const plan = settledPose(settling(slide), depths_um);
    for (const axis of ['x', 'y'] as const) {
      const row = featureRow({ name: axis, kind: 'turn', axis });
      const planned = row.reduce((sum, part, i) => sum + part * plan[i]!, 0);
      expect(rest.turn_urad['xyz'.indexOf(axis)]).toBeCloseTo(planned, 6);
    }
    for (const gap of rest.gap_um) expect(gap).toBeCloseTo(-0.3, 6);
  });

  it('a zone cut too deep stands clear and prints less', () => {
    const depths_um = [0, 0, 20, 0, 0, 0, 0, 0, 0, 0];
    const { rest, print } = restAfterScraping({
      slide,
      heights_um: Array(10).fill(0),
      depths_um,
      roughness_um: 2,
    });
    expect(rest.gap_um[2]).toBeGreaterThan(15);
    expect(print[2]).toBeLessThan(0.001);
    expect(rest.force_N[2]).toBe(0);
  });

  it('the even wrench of a level slide is its weight through the middle of its area', () => {
    const load = { force_N: 0.015 * 24000, at_mm: [0, 10, 0] as const, direction: [0, 0, -1] as const };
    wrenchOf(load).forEach((part, i) => {
      expect(evenWrench(slide, 0.015)[i]).toBeCloseTo(part, 9);
    });
  });

  it('refuses depths that do not fit the heights', () => {
    expect(() =>
      restAfterScraping({ slide, heights_um: Array(10).fill(0), depths_um: [1], roughness_um: 2 }),
    ).toThrow(/1 depths/);
  });
});
