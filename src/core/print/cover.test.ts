import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bearsFromBlue, fullCover } from './cover.ts';

it('a face at full cover bears all over; half of that half; more than all is all', () => {
  expect(bearsFromBlue(fullCover)).toBe(1);
  expect(bearsFromBlue(fullCover / 2)).toBeCloseTo(0.5, 12);
  expect(bearsFromBlue(0)).toBe(0);
  expect(bearsFromBlue(0.9)).toBe(1);
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (a, b) => {
        expect(bearsFromBlue(Math.max(a, b))).toBeGreaterThanOrEqual(bearsFromBlue(Math.min(a, b)));
      },
    ),
  );
});
