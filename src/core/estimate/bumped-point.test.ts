import { describe, expect, it } from 'vitest';
import type { Vector } from '../body/vector.ts';
import { seededRandom } from '../math/random.ts';
import type { Sweep } from '../observe/sweep.ts';
import { fitSweep } from './sweep-fit.ts';

const points_mm = Array.from({ length: 15 }, (_, i): Vector => [0, 15 * i, 0]);

/** A sweep of slope 100 µrad whose readings scatter by so many times the stated 1 µm, one of them bumped. */
function sweep(scatter: number, bumped: number | undefined, seed: number): Sweep {
  const random = seededRandom(seed);
  const readings_um = points_mm.map(
    (p, i) => 0.1 * p[1] + scatter * random.normal() + (i === bumped ? 60 : 0),
  );
  return {
    name: 'cross ways',
    rides: 'slide',
    touches: 'reference',
    plunger: [-1, 0, 0],
    points_mm,
    readings_um,
    reading_sd_um: 1,
    face_slope_urad: 0,
    face_slope_sd_urad: 0,
  };
}

describe('a bumped point among readings that scatter more than stated', () => {
  it.each([1, 3, 5])('is left out and named at %d times the stated scatter', (scatter) => {
    for (let seed = 1; seed <= 40; seed++) {
      const fit = fitSweep(sweep(scatter, 12, seed));
      expect(
        fit.outliers.map((one) => one.point),
        `seed ${seed}`,
      ).toContain(12);
      expect(fit.widen).toBeLessThan(2 * scatter);
    }
  });

  it('and without one, six times the stated scatter leaves out no more than one in sixty', () => {
    let left = 0;
    for (let seed = 1; seed <= 100; seed++) left += fitSweep(sweep(6, undefined, seed)).outliers.length;
    expect(left).toBeLessThan(25);
  });
});
