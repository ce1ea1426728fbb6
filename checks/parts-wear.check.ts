import { describe, expect, it } from 'vitest';
import { betterAim, wear } from '../src/core/parts/wear.ts';
import { expectNear, expectPrinted } from './near.ts';

/*
 * Source: the interval of a ratio of two independent normal values, E. C. Fieller, "Some problems in interval estimation",
 * J. R. Stat. Soc. B 16 (1954) 175–185, formula from memory; numbers worked by hand below: derived. Facing band and aim are
 * common practice (6 to 20 µm over 300 mm, concave).
 */
describe('wear of a facing bias, concave 40 ± 6 µrad in a band of 20 to 66, −5 µrad in 1000 h', () => {
  const facing = { value: 40, sd: 3, low: 20, high: 66, rate: -5, rate_sd: 1 };
  it('lasts 4000 h, and by Fieller from 2450 to 7070 h', () => {
    const out = wear(facing);
    expectNear(out.lasts, 4, 1e-12);
    // (25 − 4) t² − 200 t + 364 = 0: t = (200 ± √(40000 − 30576)) / 42.
    expectPrinted(out.lasts_low, '2.45');
    expectPrinted(out.lasts_high, '7.07');
  });
  it('aimed at 60 it lasts 8000 h: two sd from the limit that wear moves away from', () => {
    expect(betterAim(facing, 3)).toMatchObject({ aim: 60, lasts: 8 });
  });
});
