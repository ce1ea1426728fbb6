import { describe, expect, it } from 'vitest';
import { bandScale, measureScale, measureShown, measureTyped } from './measure-typed.ts';

const inch = measureScale('mm', 'inch');
const mm = measureScale('mm', 'metric');

describe('numbers of a machine as the shop writes them', () => {
  it.each([
    ['10', 254],
    ['.5', 12.7],
    ['13 3/8', 339.725],
    ['-4', -101.6],
    ['350 mm', 350],
    ['saddle_length', 'saddle_length'],
    ['rack_down - 1', 'rack_down - 25.4'],
    ['centres/2 + 1.5', 'centres/2 + 38.1'],
    ['2*pad - .25', '2*pad - 6.35'],
    ['12.', '12.'],
    ['', undefined],
  ])('in inches, %s is kept as %s', (typed, kept) => {
    expect(measureTyped(typed, inch)).toBe(kept);
  });

  it.each([
    ['22', 22],
    ['14 in', 355.6],
    ['2,5', 2.5],
    ['centres/2 + 40', 'centres/2 + 40'],
    ['about 12', 'about 12'],
  ])('in mm, %s is kept as %s', (typed, kept) => {
    expect(measureTyped(typed, mm)).toBe(kept);
  });

  it.each([254, 339.725, 'rack_down - 22', 'screw_out/2', '-head_along/2 + 40', '3*pad'])(
    '%s shown in inches and typed again is kept as it was',
    (kept) => {
      expect(measureTyped(measureShown(kept, inch), inch)).toBe(kept);
    },
  );

  it('a band is a fall over 12 in where it is one over 300 mm: 25 µm there are one thou; degrees and kg are the same to both', () => {
    const band = bandScale(300, 'inch');
    expect(band.sign).toBe('thou in 12 in');
    expect(measureTyped('1', band)).toBe(25);
    expect(measureShown(-50, band)).toBe('-2');
    expect(bandScale(300, 'metric').sign).toBe('µm in 300 mm');
    expect(measureShown(20, bandScale(undefined, 'inch'))).toBe('0.7874');
    expect(measureTyped('60', measureScale('deg', 'inch'))).toBe(60);
    expect(measureTyped('12', measureScale('kg', 'inch'))).toBe(12);
  });
});
