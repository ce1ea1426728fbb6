import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceInBand, chanceWords } from './chance.ts';

describe('the chance of lying in a band', () => {
  const number = fc.double({ min: -300, max: 300, noNaN: true });
  const size = fc.double({ min: 0.1, max: 90, noNaN: true });
  it('with both sides open it is all of it, and one side is what the other leaves', () => {
    fc.assert(
      fc.property(number, size, number, (value, sd, limit) => {
        const below = chanceInBand(value, sd, -Infinity, limit);
        const above = chanceInBand(value, sd, limit, Infinity);
        expect(below + above).toBeCloseTo(1, 12);
        expect(chanceInBand(value, sd, -Infinity, Infinity)).toBe(1);
      }),
    );
  });
  it('parts of a band add up, and mirroring changes nothing', () => {
    fc.assert(
      fc.property(number, size, number, size, size, (value, sd, low, one, two) => {
        const whole = chanceInBand(value, sd, low, low + one + two);
        const parts =
          chanceInBand(value, sd, low, low + one) + chanceInBand(value, sd, low + one, low + one + two);
        expect(parts).toBeCloseTo(whole, 12);
        expect(chanceInBand(-value, sd, -low - one - two, -low)).toBeCloseTo(whole, 12);
      }),
    );
  });
  it('without doubt it is in or out', () => {
    expect(chanceInBand(6, 0, 6, 20)).toBe(1);
    expect(chanceInBand(5.999, 0, 6, 20)).toBe(0);
  });
  it('refuses what is not a number', () => {
    expect(() => chanceInBand(Number.NaN, 1, 6, 20)).toThrow(/value NaN/);
    expect(() => chanceInBand(3, -1, 6, 20)).toThrow(/sd -1/);
    expect(() => chanceInBand(3, 1, 20, 6)).toThrow(/lower one first/);
  });
});

describe('a chance in words', () => {
  it.each([
    [0.8, '8 chances in 10'],
    [0.84, '8 chances in 10'],
    [0.5, '5 chances in 10'],
    [0.13, '1 chance in 10'],
    [0.05, '1 chance in 10'],
    [0.03, '3 chances in 100'],
    [0.004, 'less than 1 chance in 100'],
    [0, 'less than 1 chance in 1000'],
    [0.949, '9 chances in 10'],
    [0.95, '95 chances in 100'],
    [0.9899, '98 chances in 100'],
    [0.992, 'more than 99 chances in 100'],
    [1, 'more than 999 chances in 1000'],
  ])('%d is %s', (p, words) => expect(chanceWords(p)).toBe(words));
  it('never says never or always, nor a chance of none or all', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (p) => {
        const words = chanceWords(p);
        expect(words).not.toMatch(/never|always/);
        const [, count, of] = /(\d+) chances? in (\d+)/.exec(words)!;
        expect(Number(count)).toBeGreaterThan(0);
        expect(Number(count)).toBeLessThan(Number(of));
      }),
    );
  });
  it('refuses what is no chance', () => expect(() => chanceWords(1.1)).toThrow(RangeError));
});
