import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandOf, type Limit, scaledLimit } from './limit.ts';

const scaling = { floor_um: 5, round_um: 2 };

describe('a limit over another length, by hand', () => {
  // Each line worked on paper: in proportion, to the nearest 2 µm with halves to the tighter side, never under 5 µm.
  it.each([
    [20, 300, 200, 14, '13.33 → 14'],
    [20, 300, 100, 6, '6.67 → 6'],
    [15, 300, 200, 10, '10'],
    [15, 300, 100, 5, '5 lies between 4 and 6: the tighter 4, lifted to the floor'],
    [10, 300, 100, 5, '3.33 → 4, lifted to the floor'],
    [10, 300, 450, 14, '15 lies between 14 and 16: the tighter 14'],
    [40, 1000, 1700, 68, '68'],
    [30, 1000, 1700, 50, '51 lies between 50 and 52: the tighter 50'],
    [25, 300, 610, 50, '50.83 → 50'],
  ])('%d µm in %d mm is over %d mm %d µm: %s', (um, stated, length, expected) =>
    expect(scaledLimit(um, stated, length, scaling)).toBe(expected),
  );
  it('on its own length stays as it is stated, below the floor and off the rounding', () => {
    expect(scaledLimit(7.5, 250, 250, scaling)).toBe(7.5);
    expect(scaledLimit(3, 250, 250, scaling)).toBe(3);
  });
  it('is not rounded where no rounding is wanted', () =>
    expect(scaledLimit(7.5, 250, 400, { floor_um: 1, round_um: 0 })).toBe(12));
  it('never lies further from the proportion than half a rounding step, but for the floor', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 50, max: 3000, noNaN: true }),
        fc.double({ min: 50, max: 3000, noNaN: true }),
        (um, stated, length) => {
          const scaled = scaledLimit(um, stated, length, scaling);
          const whole = (um * length) / stated;
          expect(scaled).toBeGreaterThanOrEqual(Math.min(5, um));
          if (scaled > 5 && stated !== length) expect(Math.abs(scaled - whole)).toBeLessThanOrEqual(1 + 1e-6);
        },
      ),
    );
  });
});

describe('a limit in steps', () => {
  const limit: Limit = {
    sense: 'plus',
    steps: [
      { up_to_mm: 500, um: 10 },
      { up_to_mm: 1000, um: 20 },
    ],
    further: { per_mm: 1000, um: 10 },
    most_um: 45,
  };
  it.each([
    [350, 10],
    [500, 10],
    [501, 20],
    [1000, 20],
    [1001, 30],
    [2000, 30],
    [2500, 40],
    [9000, 45],
  ])('on a machine of %d mm is %d µm', (size, um) =>
    expect(bandOf(limit, scaling, undefined, size)).toEqual({ low: 0, high: um }),
  );
  it('asks for the machine’s size', () => expect(() => bandOf(limit, scaling)).toThrow(RangeError));
});

describe('the direction that is permitted', () => {
  it.each([
    ['plus', { low: 0, high: 17 }],
    ['minus', { low: -17, high: 0 }],
    ['either', { low: -17, high: 17 }],
    ['size', { high: 17 }],
  ] as const)('%s', (sense, band) => expect(bandOf({ sense, um: 17 }, scaling)).toEqual(band));
  it('a least amount is scaled in proportion and not lifted to the floor', () =>
    expect(bandOf({ sense: 'plus', um: 21, least_um: 6, over_mm: 300 }, scaling, 150)).toEqual({
      low: 3,
      high: 10,
    }));
});
