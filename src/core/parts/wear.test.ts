import { describe, expect, it } from 'vitest';
import { betterAim, type WearAsk, wear } from './wear.ts';

const facing: WearAsk = { value: 40, sd: 3, low: 20, high: 66, rate: -5, rate_sd: 0 };

describe('wear inside a band', () => {
  it('goes to the limit it wears toward, at a steady rate', () => {
    const down = wear(facing);
    expect([down.toward, down.lasts]).toEqual(['low', 4]);
    expect(wear({ ...facing, rate: 5 }).lasts).toBeCloseTo(5.2, 12);
  });

  it('with a sure rate the doubt of the value alone decides: two sd is 6 µrad, 1.2 stretches of time', () => {
    const { lasts_low, lasts_high } = wear(facing);
    expect([lasts_low, lasts_high].map((t) => t.toFixed(6))).toEqual(['2.800000', '5.200000']);
  });

  it('with a doubtful rate its ends solve the quadratic', () => {
    const ask = { ...facing, rate_sd: 1.5 };
    const { lasts_low, lasts_high } = wear(ask);
    // (25 − 9) t² − 200 t + 400 − 36 = 0
    const root = Math.sqrt(200 ** 2 - 4 * 16 * 364);
    expect(lasts_low).toBeCloseTo((200 - root) / 32, 9);
    expect(lasts_high).toBeCloseTo((200 + root) / 32, 9);
  });

  it('the chance of being in the band falls from 97.7 % to 2.3 % between them', () => {
    const worn = wear({ ...facing, rate_sd: 1.5, high: 1e6 });
    expect(worn.chanceAt(worn.lasts_low)).toBeCloseTo(0.97725, 4);
    expect(worn.chanceAt(worn.lasts_high)).toBeCloseTo(0.02275, 4);
    expect(worn.chanceAt(worn.lasts)).toBeCloseTo(0.5, 6);
  });

  it('a rate that may be nothing has no last day, and no rate none at all', () => {
    expect(wear({ ...facing, rate_sd: 2.6 }).lasts_high).toBe(Infinity);
    expect(wear({ ...facing, rate: 0 })).toMatchObject({ toward: 'neither', lasts: Infinity });
  });

  it('what lies beyond its limit already has no time left', () => {
    const out = wear({ ...facing, value: 5 });
    expect([out.lasts, out.lasts_low, out.lasts_high]).toEqual([0, 0, 0]);
    expect(wear({ ...facing, value: 19 }).lasts_high).toBeCloseTo(1, 9);
  });
});

describe('the better aim', () => {
  it('stands two sd from the limit that wear moves away from', () => {
    expect(betterAim(facing, 3)).toEqual({ aim: 60, lasts: 8, why: 'wear goes down' });
    expect(betterAim({ ...facing, rate: 4 }, 3)).toEqual({ aim: 26, lasts: 10, why: 'wear goes up' });
  });
  it('is the middle when wear may go either way, or the band is too narrow for the doubt', () => {
    expect(betterAim({ ...facing, rate_sd: 3 }, 3)).toMatchObject({ aim: 43, why: 'wear may go either way' });
    expect(betterAim(facing, 12)).toMatchObject({ aim: 43, why: 'band too narrow for the doubt' });
  });
});
