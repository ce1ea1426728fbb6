import { describe, expect, it } from 'vitest';
import { surveyLine } from './line.ts';
import type { LineInput } from './line-input.ts';
import { lineMonteCarlo, plateMonteCarlo } from './monte-carlo.ts';
import { surveyPlate } from './plate.ts';
import type { PlateInput } from './plate-input.ts';

const seed = 4711;
/** An sd from 4000 draws is good to 1/√8000 = 1.1 %, so 5 % is over four of its own sds. */
const draws = 4000;
const near = (found: number, wanted: number, share: number) =>
  expect(Math.abs(found / wanted - 1), `${found} and ${wanted}`).toBeLessThan(share);

/** A hollow far deeper than the noise: its highest and lowest points are never in question. */
const hollow: LineInput = {
  kind: 'angles',
  step_mm: 200,
  angles_urad: [-61, -48, -33, -12, 6, 15, 29, 47, 60],
  reading_sd_urad: 1.2,
  repeatability_sd_urad: 0.5,
  scale_sd: 0.01,
};
const bowl: PlateInput = {
  kind: 'points',
  points: [0, 1, 2, 3, 4].flatMap((row) =>
    [0, 1, 2, 3, 4].map((column) => ({
      x_mm: 150 * column,
      y_mm: 110 * row,
      z_um: 9 * ((column - 2) ** 2 + (row - 2) ** 2) + 3 * column + (row === 4 && column === 0 ? 11 : 0),
    })),
  ),
  reading_sd_um: 0.4,
};

describe('Monte Carlo agrees with the propagated doubt', () => {
  it('of a line, where the form is far larger than the noise', () => {
    const { sd, straightness_um } = surveyLine(hollow);
    const drawn = lineMonteCarlo(hollow, { draws, seed })!;
    for (const key of ['endpoint', 'minimum_zone'] as const) {
      near(drawn[key].sd, sd!.straightness_um[key], 0.05);
      near(drawn[key].mean, straightness_um[key], 0.01);
      near(drawn[key].high - drawn[key].low, 2 * 1.96 * drawn[key].sd, 0.08);
    }
  });
  it('of a surface', () => {
    const { sd_um, flatness_um } = surveyPlate(bowl);
    const drawn = plateMonteCarlo(bowl, { draws: 3000, seed })!;
    near(drawn.minimum_zone.sd, sd_um!.minimum_zone, 0.25);
    near(drawn.minimum_zone.mean, flatness_um.minimum_zone, 0.02);
  });
  it('the same seed draws the same, another one otherwise', () => {
    const few = (other: number) => lineMonteCarlo(hollow, { draws: 20, seed: other })!.minimum_zone.mean;
    expect(few(5)).toBe(few(5));
    expect(few(5)).not.toBe(few(6));
  });
  it('noise can only widen a line that is straight', () => {
    const straight: LineInput = {
      kind: 'angles',
      step_mm: 200,
      angles_urad: [0, 0, 0, 0, 0, 0],
      reading_sd_urad: 1.2,
    };
    expect(surveyLine(straight).straightness_um.minimum_zone).toBe(0);
    expect(lineMonteCarlo(straight, { draws: 200, seed })!.minimum_zone.low).toBeGreaterThan(0);
  });
  it('without a known doubt there is nothing to draw', () => {
    expect(
      lineMonteCarlo({ kind: 'angles', step_mm: 200, angles_urad: [1, 5, -3] }, { draws, seed }),
    ).toBeUndefined();
  });
});
