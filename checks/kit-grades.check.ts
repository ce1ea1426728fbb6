import { describe, expect, it } from 'vitest';
import { gradeLimit, levelGrades, standards } from '../src/core/kit/grade.ts';
import { slopeSize } from '../src/core/quantity/slope.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/* GGG-P-463c and ASME B89.3.7, second hand: formula from a catalogue page and a paper on large plates, table from a
 * calibration shop's page. The table is not the formula rounded by one rule, so listed sizes are kept as listed. */
describe('ASME B89.3.7 plates', () => {
  it.each([
    [12, 12, 50, '51.52'],
    [12, 18, 50, '58.72'],
    [18, 24, 75, '76.00'],
    [24, 36, 100, '114.88'],
    [36, 48, 200, '184.00'],
    [48, 72, 350, '339.52'],
    [48, 96, 500, '500.80'],
  ])('%d × %d in: AA %d µin in the table, %s by formula; A twice, B four times', (w, l, listed, formula) => {
    const at = (grade: string) => gradeLimit('ASME B89.3.7', grade, l * 25.4, w * 25.4);
    expectSame(at('AA').how, 'table');
    expectPrinted(at('AA').limit_um / 0.0254, `${listed}.000`);
    expectPrinted(at('A').limit_um / 0.0254, `${2 * listed}.000`);
    expectPrinted(at('B').limit_um / 0.0254, `${4 * listed}.000`);
    expectPrinted(standards['ASME B89.3.7']!.formula('AA', l * 25.4, w * 25.4) / 0.0254, formula);
  });
  it('a size that is not listed goes by the formula and says so: 24 × 24 in AA 86 µin', () => {
    const got = gradeLimit('ASME B89.3.7', 'AA', 609.6, 609.6);
    expectSame(got.how, 'formula');
    expectPrinted(got.limit_um / 0.0254, '86');
  });
});

/* DIN 876, second hand (two plate makers' pages with this table); 00 from memory. */
describe('DIN 876 plates', () => {
  const sides = [200, 300, 500, 800, 1000, 1200, 1500, 2000, 2500, 3000];
  it.each([
    ['0', [4.8, 5.2, 6, 7.2, 8, 8.8, 10, 12, 14, 16]],
    ['I', [12, 13, 15, 18, 20, 22, 25, 30, 35, 40]],
    ['II', [24, 26, 30, 36, 40, 44, 50, 60, 70, 80]],
    ['III', [48, 52, 60, 72, 80, 88, 100, 120, 140, 160]],
  ])('grade %s by its longer side', (grade, limits) => {
    expect(sides.map((side) => gradeLimit('DIN 876', grade, side / 2, side).limit_um)).toEqual(limits);
    expectSame(gradeLimit('DIN 876', grade, 1000, 630).came, 'second hand');
  });
  it('40 in of grade 0: 0.317 mil', () =>
    expectPrinted(gradeLimit('DIN 876', '0', 1016, 600).limit_um / 25.4, '0.317'));
  it('grade 00, 1000 mm: 4 µm (from memory)', () =>
    expect(gradeLimit('DIN 876', '00', 1000, 500)).toMatchObject({ limit_um: 4, came: 'from memory' }));
});

/* ISO 8512-2, from memory: coefficients and table recalled apart from each other, and they agree to half a micrometre. */
describe('ISO 8512-2 plates (from memory)', () => {
  it.each([
    [160, 100, [3, 6, 12, 25]],
    [250, 160, [3.5, 7, 14, 27]],
    [400, 250, [4, 8, 16, 32]],
    [630, 400, [5, 10, 20, 39]],
    [1000, 630, [6, 12, 24, 49]],
    [1600, 1000, [8, 16, 33, 66]],
    [2000, 1000, [9.5, 19, 38, 75]],
    [2500, 1600, [11.5, 23, 46, 92]],
    [250, 250, [3.5, 7, 15, 30]],
    [400, 400, [4.5, 9, 17, 34]],
    [630, 630, [5, 10, 21, 42]],
    [1000, 1000, [7, 14, 28, 56]],
  ])('%d × %d', (length, width, limits) => {
    limits.forEach((limit, grade) => {
      expect(gradeLimit('ISO 8512-2', `${grade}`, length, width)).toMatchObject({
        limit_um: limit,
        how: 'table',
      });
      expectWithin(standards['ISO 8512-2']!.formula(`${grade}`, length, width), limit, 0.5);
    });
  });
});

/* DIN 875 and DIN 874, from memory, computed: to be held against the standards. */
describe('squares and straightedges (from memory)', () => {
  it.each([
    [100, [3, 7, 15, 30]],
    [200, [4, 9, 20, 40]],
    [300, [5, 11, 25, 50]],
    [500, [7, 15, 35, 70]],
    [1000, [12, 25, 60, 120]],
  ])('DIN 875, %d mm', (length, limits) => {
    expect(['00', '0', '1', '2'].map((grade) => gradeLimit('DIN 875', grade, length).limit_um)).toEqual(
      limits,
    );
    expectSame(gradeLimit('DIN 875', '0', length).came, 'from memory');
  });
  it.each([
    [500, ['4.33', '7.00', '12.33', '20.50']],
    [1000, ['7.67', '12.00', '20.67', '33.00']],
    [2000, ['14.33', '22.00', '37.33', '58.00']],
  ])('DIN 874, %d mm', (length, printed) => {
    ['00', '0', '1', '2'].forEach((grade, k) => {
      expectPrinted(gradeLimit('DIN 874', grade, length).limit_um, printed[k]!);
    });
  });
});

/* JIS B 7510, second hand: a level maker's page quoting it. */
it('JIS B 7510 levels: 0.02, 0.05 and 0.1 mm/m, about 4, 10 and 20 seconds; half a division for class A', () => {
  const { division_urad, within_divisions } = levelGrades;
  expectSame(
    Object.values(division_urad).map((urad) => urad / slopeSize('mm/m')),
    [0.02, 0.05, 0.1],
  );
  expectSame(
    Object.values(division_urad).map((urad) => Math.round(urad / slopeSize('arcsec'))),
    [4, 10, 21],
  );
  expect(within_divisions).toEqual({ A: 0.5, B: 0.7 });
});
