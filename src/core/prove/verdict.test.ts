import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from './verdict.ts';

// The invented job of the look: facing band +6 to +20 µm in 300 mm.
describe('a pin between two jaws', () => {
  it('goes between, crosses one, or stands clear', () => {
    expect(judge(11.2, 3.0, 6, 20)).toEqual({ verdict: 'within', side: 'low', short: 0, over: 0 });
    expect(judge(7.7, 2.7, -6, 6)).toMatchObject({ verdict: 'not proven', side: 'high' });
    expect(judge(-15.3, 4.3, 6, 20)).toMatchObject({ verdict: 'outside', side: 'low' });
    expect(judge(-15.3, 4.3, 6, 20).short).toBeCloseTo(21.3, 9);
  });
  it('says how far the doubt reaches over', () => {
    expect(judge(7.7, 2.7, -6, 6).over).toBeCloseTo(4.4, 9);
    expect(judge(7.7, 2.7, -6, 6).short).toBeCloseTo(1.7, 9);
  });
  it('with one limit open only the other counts', () => {
    expect(judge(-900, 8, -Infinity, 20)).toMatchObject({ verdict: 'within', side: 'high' });
    expect(judge(29, 8, -Infinity, 20)).toMatchObject({ verdict: 'outside', side: 'high' });
  });
  it('refuses what is not a number', () => {
    expect(() => judge(Number.NaN, 1, 6, 20)).toThrow(/value NaN/);
    expect(() => judge(3, Number.NaN, 6, 20)).toThrow(/doubt NaN/);
    expect(() => judge(3, 1, 20, 6)).toThrow(/lower one first/);
  });
  it('a fat pin does not go, even dead centre', () => {
    expect(judge(13, 8, 6, 20).verdict).toBe('not proven');
  });
  it('mirroring the band mirrors the side and keeps the verdict', () => {
    const number = fc.double({ min: -500, max: 500, noNaN: true });
    const size = fc.double({ min: 0.1, max: 90, noNaN: true });
    fc.assert(
      fc.property(number, size, number, size, (value, doubt, low, width) => {
        const there = judge(value, doubt, low, low + width);
        const back = judge(-value, doubt, -low - width, -low);
        expect(back.verdict).toBe(there.verdict);
        if (Math.abs(value - low - width / 2) > 1e-6) expect(back.side).not.toBe(there.side);
      }),
    );
  });
  it('less doubt never turns within or outside into something else', () => {
    const number = fc.double({ min: -90, max: 90, noNaN: true });
    const size = fc.double({ min: 0, max: 90, noNaN: true });
    fc.assert(
      fc.property(number, size, size, (value, a, b) => {
        const wide = judge(value, Math.max(a, b), -6, 20).verdict;
        if (wide !== 'not proven') expect(judge(value, Math.min(a, b), -6, 20).verdict).toBe(wide);
      }),
    );
  });
});
