import { describe, expect, it } from 'vitest';
import { surveyAlong } from './along.ts';
import { alongMonteCarlo } from './along-draws.ts';

const draws = { draws: 20_000, seed: 3 };

describe('drawn anew, twist and parallelism agree with their propagated doubt', () => {
  it('a range with one clear highest and one clear lowest station has an sd of √2 readings', () => {
    const input = {
      kind: 'twist',
      stations_mm: [0, 400, 800, 1200],
      tilts_urad: [0, 20, 90, 40],
      reading_sd_urad: 2,
    } as const;
    const found = surveyAlong(input);
    const drawn = alongMonteCarlo(input, draws)!;
    // JCGM 100, 5.1.2: two readings of sd u, less each other: √2 u.
    expect(found.sd!.range).toBeCloseTo(2 * Math.SQRT2, 9);
    expect(drawn.range.sd / found.sd!.range).toBeCloseTo(1, 1);
    expect(drawn.range.mean).toBeCloseTo(found.range, 1);
    expect(drawn.per_m.sd / found.sd!.per_m).toBeCloseTo(1, 1);
    expect(drawn.ends.sd / found.sd!.ends).toBeCloseTo(1, 1);
  });
  it('a run back halves the variance; two profiles double it', () => {
    const flat = { kind: 'parallel', stations_mm: [0, 500, 1000], reading_sd_um: 1 } as const;
    const once = alongMonteCarlo({ ...flat, heights_um: [0, 5, 30] }, draws)!;
    const back = alongMonteCarlo({ ...flat, heights_um: [0, 5, 30], return_um: [30, 5, 0] }, draws)!;
    const two = alongMonteCarlo({ ...flat, heights_um: [0, 5, 30], other_um: [0, 0, 0] }, draws)!;
    expect((once.range.sd / back.range.sd) ** 2).toBeCloseTo(2, 1);
    expect((two.range.sd / once.range.sd) ** 2).toBeCloseTo(2, 1);
  });
  it('nothing is drawn when nothing is known of the doubt', () => {
    expect(
      alongMonteCarlo({ kind: 'parallel', stations_mm: [0, 500], heights_um: [0, 5] }, draws),
    ).toBeUndefined();
  });
});
