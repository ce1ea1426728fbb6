import { describe, expect, it } from 'vitest';
import { BadInput } from './refusal.ts';
import { typedSum } from './sum-typed.ts';
import { sumQuestion } from './sums.ts';

const paths = (make: () => unknown): string[] => {
  try {
    make();
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((issue) => issue.path);
    throw failure;
  }
  return [];
};
const dovetail = { root_mm: 40, roll_mm: 10, angle_deg: 60 };

describe('a sum asked as JSON', () => {
  it('fills in what was left out and says so', () => {
    const got = sumQuestion({ sum: 'test-bar-sag', values: { overhang_mm: 300, diameter_mm: 40 } });
    expect(got.values).toMatchObject({ bore: 0, density: 7850, modulus: 210 });
    expect(got.taken).toEqual(['bore', 'density', 'modulus']);
    expect(got.sds.bore).toBe(0);
  });
  it('a material fills in what it knows, and what is given goes before it', () => {
    const got = sumQuestion({
      sum: 'straightedge-sag',
      values: { length_mm: 1000, depth_mm: 60, support_mm: 220, density_kg_m3: 2900 },
      material: 'granite',
    });
    expect(got.values).toMatchObject({ modulus: 60, density: 2900 });
    expect(got.sds.modulus).toBe(10);
  });
  it('takes sds as they are given', () => {
    const got = sumQuestion({ sum: 'dovetail-male', values: dovetail, sd: { root_mm: 0.01, roll_mm: 0 } });
    expect(got.sds).toMatchObject({ root: 0.01, roll: 0 });
    expect(got.usual).toEqual(['angle']);
  });
  it.each([
    ['a sum that is not there', { sum: 'dovetails', values: {} }, ['sum']],
    ['nothing given', { sum: 'dovetail-male', values: {} }, ['root_mm', 'roll_mm', 'angle_deg']],
    [
      'a key that is not there',
      { sum: 'dovetail-male', values: { ...dovetail, width: 3 } },
      ['values.width'],
    ],
    ['an sd of a result', { sum: 'dovetail-male', values: dovetail, sd: { over_mm: 1 } }, ['sd.over_mm']],
    [
      'a value outside its limits',
      { sum: 'dovetail-male', values: { ...dovetail, angle_deg: 90 } },
      ['angle_deg'],
    ],
    ['a roll of nothing', { sum: 'dovetail-male', values: { ...dovetail, roll_mm: 0 } }, ['roll_mm']],
    [
      'text for a number',
      { sum: 'dovetail-male', values: { ...dovetail, roll_mm: '10' } },
      ['values.roll_mm'],
    ],
    ['an sd below nothing', { sum: 'dovetail-male', values: dovetail, sd: { roll_mm: -1 } }, ['sd.roll_mm']],
    [
      'rolls that meet',
      { sum: 'dovetail-female', values: { floor_mm: 30, roll_mm: 12, angle_deg: 60 } },
      ['roll_mm'],
    ],
    [
      'a bore as wide as the bar',
      { sum: 'test-bar-sag', values: { overhang_mm: 1, diameter_mm: 5, bore_mm: 5 } },
      ['bore_mm'],
    ],
    [
      'too few draws',
      { sum: 'dovetail-male', values: dovetail, monte_carlo: { seed: 1, trials: 10 } },
      ['monte_carlo.trials'],
    ],
  ])('refuses %s', (_, value, expected) => expect(paths(() => sumQuestion(value))).toEqual(expected));
});

describe('a sum asked in typed words', () => {
  const typed = (...pairs: [string, string][]) => typedSum('dovetail-male', pairs, 'metric');
  it('takes units, doubts and JSON keys', () => {
    const got = typed(
      ['root', '40 mm ± 4 um'],
      ['roll_mm', '10'],
      ['angle', "60° 30'"],
      ['angle_sd', '1 arcmin'],
    );
    expect(got.values).toEqual({ root: 40, roll: 10, angle: 60.5 });
    expect(got.sds.root).toBeCloseTo(0.002, 12);
    expect(got.sds.angle).toBeCloseTo(1 / 60, 12);
  });
  it.each([
    [
      'what cannot be read',
      [
        ['root', 'wide'],
        ['roll', '10'],
        ['angle', '60'],
      ],
      ['root'],
    ],
    [
      'all that is wrong at once',
      [
        ['root', '40 kg'],
        ['rol', '10'],
      ],
      ['root', 'rol', 'roll_mm', 'angle_deg'],
    ],
    [
      'a value given twice',
      [
        ['root', '40'],
        ['root_mm', '41'],
        ['roll', '10'],
        ['angle', '60'],
      ],
      ['root_mm'],
    ],
    [
      'a material where there is none',
      [
        ['root', '40'],
        ['roll', '10'],
        ['angle', '60'],
        ['material', 'steel'],
      ],
      ['material'],
    ],
    [
      'a bare key with a unit',
      [
        ['root_mm', '40 mm'],
        ['roll', '10'],
        ['angle', '60'],
      ],
      ['root_mm'],
    ],
  ] as [string, [string, string][], string[]][])('refuses %s', (_, pairs, expected) =>
    expect(paths(() => typed(...pairs))).toEqual(expected),
  );
});
