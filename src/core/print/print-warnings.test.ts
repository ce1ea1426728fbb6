import { describe, expect, it } from 'vitest';
import { confidenceOf, type Looks, printWarnings, readable } from './print-warnings.ts';

const trust = { px_per_mm: 12, blur_mm: 0.1, glare_pct: 0, separation: 15 };
const sound: Looks = {
  trust,
  overBlued: false,
  bearing_pct: 28,
  largest_share: 0.04,
  worst_glare_pct: 0,
  cut_off_pct: 0,
};
const over = 1 + 1e-9;

describe('warnings of a print', () => {
  it('are none on a sound one, nor right at the limits', () => {
    expect(printWarnings(sound)).toEqual([]);
    const { px_per_mm, blur_mm, glare_pct, separation, bearing_pct, largest_share, cut_off_pct } = readable;
    const worst_glare_pct = readable.square_glare_pct;
    const limits: Looks = {
      trust: { px_per_mm, blur_mm, glare_pct, separation },
      overBlued: false,
      bearing_pct,
      largest_share,
      worst_glare_pct,
      cut_off_pct,
    };
    expect(printWarnings(limits)).toEqual([]);
  });

  it.each<[string, Partial<Looks>, RegExp]>([
    ['low resolution', { trust: { ...trust, px_per_mm: 4.9 } }, /4\.9 pixels a mm/],
    ['blurred', { trust: { ...trust, blur_mm: 0.3 * over } }, /0\.30 mm soft/],
    ['glare', { trust: { ...trust, glare_pct: 1.3 } }, /1\.3 %/],
    ['glare', { worst_glare_pct: 16 }, /16 % of the worst square/],
    ['clipped', { cut_off_pct: 12 }, /12 % of the surface lies outside/],
    ['faint blue', { trust: { ...trust, separation: 4.9 } }, /noise/],
    ['nearly bare', { bearing_pct: 0 }, /no blue was found/],
    ['over-blued', { overBlued: true }, /not reliable/],
    ['much bearing', { bearing_pct: 41 }, /41 % bears/],
    ['merged contact', { largest_share: 0.16 }, /16 % of all contact/],
  ])('%s comes alone', (code, changed, words) => {
    const found = printWarnings({ ...sound, ...changed });
    expect(found.map((one) => one.code)).toEqual([code]);
    expect(found[0]!.text).toMatch(words);
  });

  it('does not tell of much bearing where the film is too thick, nor of no blue where nothing can be seen', () => {
    const codes = (changed: Partial<Looks>) => printWarnings({ ...sound, ...changed }).map((one) => one.code);
    expect(codes({ overBlued: true, bearing_pct: 60 })).toEqual(['over-blued']);
    expect(codes({ bearing_pct: 0, cut_off_pct: 100 })).toEqual(['clipped']);
    expect(codes({ bearing_pct: 0, trust: { ...trust, glare_pct: 100 } })).toEqual(['glare']);
  });
});

describe('confidence', () => {
  it('is 1 on a sound photo, a half where each part is just enough, and the least counts', () => {
    expect(confidenceOf(trust, 0)).toBe(1);
    expect(confidenceOf({ ...trust, px_per_mm: 5 }, 0)).toBe(0.5);
    expect(confidenceOf({ ...trust, blur_mm: 0.3 }, 0)).toBe(0.5);
    expect(confidenceOf({ ...trust, glare_pct: 5 }, 0)).toBe(0.5);
    expect(confidenceOf({ ...trust, separation: 5 }, 0)).toBe(0.5);
    expect(confidenceOf(trust, 50)).toBe(0.5);
    expect(confidenceOf({ ...trust, px_per_mm: 5, glare_pct: 8 }, 0)).toBeCloseTo(0.2, 12);
  });

  it('never leaves 0 to 1', () => {
    expect(confidenceOf({ px_per_mm: 0, blur_mm: 9, glare_pct: 100, separation: 0 }, 100)).toBe(0);
    expect(confidenceOf({ px_per_mm: 900, blur_mm: 0, glare_pct: 0, separation: 900 }, 0)).toBe(1);
  });
});
