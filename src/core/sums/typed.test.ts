import { describe, expect, it } from 'vitest';
import type { SumUnit } from './sum.ts';
import { readSumInput } from './typed.ts';

const read = (typed: string, unit: SumUnit, system: 'metric' | 'inch' = 'metric') =>
  readSumInput(typed, unit, system);

describe('a typed input of a sum', () => {
  it.each([
    ['40', 'mm', 40],
    ['40 mm', 'mm', 40],
    ['13 3/8 in', 'mm', 339.725],
    ['30um', 'um', 30],
    ['-2 thou', 'um', -50.8],
    ['4 arcsec', 'urad', 19.3925472],
    ['12 um in 300 mm', 'urad', 40],
    ["60° 30'", 'deg', 60.5],
    ['0', 'deg', 0],
    ['1:50', 'ratio', 0.02],
    ['1 in 50', 'ratio', 0.02],
    ['1/4 in per ft', 'ratio', 1 / 48],
    ['20 mm/m', 'ratio', 0.02],
    ['2', 'K', 2],
    ['3.6 °F', 'K', 2],
    ['11.5', 'um_mK', 11.5],
    ['11.5e-6', 'um_mK', 11.5],
    ['6.0e-6/F', 'um_mK', 10.8],
    ['210 GPa', 'GPa', 210],
    ['210000 N/mm2', 'GPa', 210],
    ['7.85 g/cm3', 'kg_m3', 7850],
    ['100 g', 'kg', 0.1],
    ['-1.5 div', 'divisions', -1.5],
  ] as const)('%s is %s', (typed, unit, value) => {
    const got = read(typed, unit);
    expect(got.ok && got.value).toBeCloseTo(value, 6);
    expect(got.ok && got.sd).toBeUndefined();
  });
  it('in inches a bare number is inches, thou or thou in 12 in', () => {
    expect(read('1.5', 'mm', 'inch')).toMatchObject({ value: 38.1 });
    expect(read('2', 'um', 'inch')).toMatchObject({ value: 50.8 });
    const slope = read('0.24', 'urad', 'inch');
    expect(slope.ok && slope.value).toBeCloseTo(20, 9);
  });
});

describe('a doubt behind it', () => {
  it.each([
    ['40 mm ± 4 um', 'mm', 0.002],
    ['40 +- 0.004', 'mm', 0.002],
    ['40 mm +/- 0.004', 'mm', 0.002],
    ['1.575 in ± .001', 'mm', 0.0127],
    ['60 deg ± 2 min', 'deg', 1 / 60],
    ['12 um in 300 mm ± 3', 'urad', 5],
    ['1 K ± 0.4', 'K', 0.2],
  ] as const)('%s: one sd is %s', (typed, unit, sd) => {
    const got = read(typed, unit);
    expect(got.ok && got.sd).toBeCloseTo(sd, 9);
  });
  it.each([
    ['1 ft 6 in ± 2', 'mm'],
    ['40 ± ', 'mm'],
    ['40 ± -1', 'mm'],
    ['40 ± 1 ± 1', 'mm'],
  ] as const)('%s is refused', (typed, unit) => expect(read(typed, unit)).toMatchObject({ ok: false }));
});

describe('what cannot be read', () => {
  it.each([
    ['forty', 'mm'],
    ['40 kg', 'mm'],
    ['0,5', 'mm'],
    ['1 deg', 'ratio'],
    ['1:0', 'ratio'],
    ['2 mm', 'K'],
    ['7850 mm', 'kg_m3'],
    ['', 'GPa'],
    ['1e999', 'divisions'],
  ] as const)('“%s” as %s says how to write it', (typed, unit) => {
    const got = read(typed, unit);
    expect(got.ok).toBe(false);
    expect(!got.ok && got.why).toMatch(/Write|Is the unit right|large/);
  });
});
