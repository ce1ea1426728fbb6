import { describe, expect, it } from 'vitest';
import { shownDeviation, shownSlope, typedDeviation, typedSlope } from './shown-text.ts';

describe('what a practice instrument shows', () => {
  it.each([
    [-12.34, 'um', '−12.3'],
    [12.0, 'um', '+12'],
    [-0.02, 'um', '0'],
    [25.4, 'thou', '+1'],
    [-25.4, 'tenths', '−10'],
    [4.2, 'mm', '+0.0042'],
  ] as const)('%s µm in %s is %s', (um, unit, text) => {
    expect(shownDeviation(um, unit)).toBe(text);
  });
  it.each(['um', 'mm', 'tenths', 'thou', 'in'] as const)(
    'is typed back within the last figure, %s',
    (unit) => {
      for (const um of [-143.7, -0.3, 0, 0.8, 77.7])
        expect(Math.abs(typedDeviation(shownDeviation(um, unit), unit) - um)).toBeLessThan(0.13 + 1e-9);
    },
  );
  it.each(['um/m', 'mm/m', 'arcsec', 'thou/12 in'] as const)('a level too, %s', (unit) => {
    for (const urad of [-60, -3, 0, 17, 151])
      expect(Math.abs(typedSlope(shownSlope(urad, unit), unit) - urad)).toBeLessThanOrEqual(2.5);
  });
});
