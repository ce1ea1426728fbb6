import { describe, expect, it } from 'vitest';
import { surveyAlong } from './along.ts';

const stations_mm = [0, 400, 900, 1300, 1900];

describe('twist', () => {
  it('a bridge level that gains 26 µrad evenly over 1.9 m: 26/1.9 µrad for each metre, whatever its zero', () => {
    const tilts_urad = stations_mm.map((at) => -113 + (26 * at) / 1900);
    const found = surveyAlong({ kind: 'twist', stations_mm, tilts_urad, reading_sd_urad: 2 });
    expect(found.range).toBeCloseTo(26, 9);
    expect(found.ends).toBeCloseTo(26, 9);
    expect(found.per_m).toBeCloseTo(26 / 1.9, 9);
    expect(found.sd!.ends).toBeCloseTo(2 * Math.SQRT2, 12);
    // 2 / √Σ(x − x̄)²: x̄ = 0.9 m, squares 0.81 + 0.25 + 0 + 0.16 + 1.
    expect(found.sd!.per_m).toBeCloseTo(2 / Math.sqrt(2.22), 9);
  });
  it('a steady drift of the level is seen in the run back and taken out', () => {
    const true_urad = [5, 9, 7, 14, 11];
    const tilts_urad = true_urad.map((tilt, k) => tilt + 1.5 * k);
    const return_urad = true_urad.toReversed().map((tilt, k) => tilt + 1.5 * (5 + k));
    const found = surveyAlong({ kind: 'twist', stations_mm, tilts_urad, return_urad });
    for (const [k, change] of found.change.entries()) expect(change).toBeCloseTo(true_urad[k]! - 5, 9);
    expect(found.runs!.drift).toBeCloseTo(1.5, 9);
  });
});

describe('parallelism', () => {
  it('two profiles from one reference: what they share drops out, and the doubt is that of both', () => {
    const other_um = [3, -7, 12, 5, -2];
    const apart = [40, 43, 39, 46, 48];
    const heights_um = other_um.map((height, k) => height + apart[k]!);
    const found = surveyAlong({ kind: 'parallel', stations_mm, heights_um, other_um, reading_sd_um: 0.5 });
    expect(found.change.map((um) => Number(um.toFixed(9)))).toEqual([0, 3, -1, 6, 8]);
    expect(found.range).toBeCloseTo(9, 9);
    expect(found.sd!.each).toBeCloseTo(0.5 * Math.SQRT2, 12);
  });
  it('carried the other way along, range stays and the slope turns its sign', () => {
    const heights_um = [4, 6.5, 3, 9, 7.5];
    const there = surveyAlong({ kind: 'parallel', stations_mm, heights_um });
    const back = surveyAlong({
      kind: 'parallel',
      stations_mm: stations_mm.map((at) => 1900 - at).toReversed(),
      heights_um: heights_um.toReversed(),
    });
    expect(back.range).toBeCloseTo(there.range, 12);
    expect(back.per_m).toBeCloseTo(-there.per_m, 9);
  });
});
