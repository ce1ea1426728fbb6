import { describe, expect, it } from 'vitest';
import { seededRandom } from '../math/random.ts';
import { levelsOf } from './levels.ts';

/** Bare surface and film, both normal, a share of it film. */
function mixed(bare: number, sd: number, film: number, share: number): Float32Array {
  const random = seededRandom(7);
  return Float32Array.from({ length: 40_000 }, () => random.normal(random.even() < share ? film : bare, sd));
}

describe('levels of bare surface and of full film', () => {
  it('are those the values were drawn from, whatever the share', () => {
    for (const share of [0.03, 0.15, 0.35])
      for (const [bare, sd, film] of [
        [0, 0.06, 1.2],
        [-0.1, 0.1, 1.6],
        [0.05, 0.04, 0.7],
      ] as const) {
        const found = levelsOf(mixed(bare, sd, film, share));
        expect(Math.abs(found.bare - bare)).toBeLessThan(0.3 * sd);
        expect(found.sigma / sd).toBeGreaterThan(0.7);
        expect(found.sigma / sd).toBeLessThan(1.3);
        expect(Math.abs(found.film - film)).toBeLessThan(0.3 * sd);
      }
  });

  it('of bare surface alone put film well above it', () => {
    const { bare, sigma, film } = levelsOf(mixed(0, 0.05, 0, 0));
    expect(film - bare).toBeGreaterThanOrEqual(0.25 - 1e-9);
    expect(film - bare).toBeGreaterThanOrEqual(3 * sigma);
  });

  it('of nothing are usable', () => {
    expect(levelsOf(new Float32Array(0))).toEqual({ bare: 0, sigma: 1e-3, film: 1 });
  });
});
