import { describe, it } from 'vitest';
import { slopeSize } from '../src/core/quantity/slope.ts';
import { expectPrinted, expectWithin } from './near.ts';
import { sumOf } from './sum-of.ts';

const arcsec = slopeSize('arcsec');

/* Sources: a gauge maker's page of questions (5 in bar at 27°) and a hobby workshop's page (2.5 in stack), seen; a 60 mm bar, its
 * problem seen without its answer; a hobby forum thread of 4 February 2012 on a tenth's error, seen. */
describe('sine bar', () => {
  it('5 in at 27°: 2.270 in (seen)', () =>
    expectPrinted(sumOf('sine-bar', { length_mm: 127, angle_deg: 27 }).stack!.value / 25.4, '2.270'));
  it('5 in on 2.5 in: 30° (seen)', () =>
    expectPrinted(sumOf('sine-bar-angle', { length_mm: 127, stack_mm: 63.5 }).angle!.value, '30.00000'));
  it('60 mm on 28.55 mm: 28.413622° (problem seen, answer computed)', () =>
    expectPrinted(sumOf('sine-bar-angle', { length_mm: 60, stack_mm: 28.55 }).angle!.value, '28.413622'));
  it.each([
    [30, '0.00132'],
    [60, '0.00229'],
  ])('a tenth too much under 5 in at %d° is %s° (seen)', (angle, printed) => {
    const stack_mm = 127 * Math.sin((angle * Math.PI) / 180);
    const share = sumOf('sine-bar-angle', { length_mm: 127, stack_mm }).angle!.shares.find(
      (one) => one.key === 'stack',
    )!;
    expectPrinted(share.slope * 0.00254, printed);
  });
});

/* Handbook tables of tapers per foot, from memory; the rest derived. */
describe('tapers and gibs', () => {
  it.each([
    ['1/8', 1 / 96, 0, 35, 48.57],
    ['1/4', 1 / 48, 1, 11, 37.03],
    ['1/2', 1 / 24, 2, 23, 13.12],
    ['0.6', 0.05, 2, 51, 51.09],
    ['3/4', 1 / 16, 3, 34, 47.36],
    ['1', 1 / 12, 4, 46, 18.8],
  ])('%s in per ft includes its handbook angle (from memory)', (_, taper_ratio, deg, min, sec) => {
    const seconds = sumOf('taper', { taper_ratio }).included!.value * 3600;
    expectWithin(seconds, deg * 3600 + min * 60 + sec, 0.0051);
  });
  it.each([
    [50, 1, 8, 44.75],
    [60, 0, 57, 17.43],
    [100, 0, 34, 22.58],
  ])('a gib of 1:%d slopes by its angle', (k, deg, min, sec) => {
    const seconds = sumOf('taper', { taper_ratio: 1 / k }).one_side!.value * 3600;
    expectWithin(seconds, deg * 3600 + min * 60 + sec, 0.0051);
  });
  it('a 1:60 gib pushed in 12 mm is 0.2 mm thicker', () =>
    expectPrinted(sumOf('gib-play', { taper_ratio: 1 / 60, move_mm: 12 }).closer!.value, '200.0000'));
  it('0.03 mm taken up by 1:50 takes 1.5 mm; a thou by 1/4 in per ft 0.048 in', () => {
    expectPrinted(sumOf('gib', { taper_ratio: 1 / 50, clearance_um: 30 }).move!.value, '1.50000');
    expectPrinted(sumOf('gib', { taper_ratio: 1 / 48, clearance_um: 25.4 }).move!.value / 25.4, '0.04800');
  });
});

/* Vial makers' pages, seen; the exact numbers derived. */
describe('levels', () => {
  it('0.02 mm/m over 200 mm: 4 µm (0.004 mm seen)', () =>
    expectPrinted(
      sumOf('level', { reading_divisions: 1, sensitivity_urad: 20, base_mm: 200 }).height!.value,
      '4.00000',
    ));
  it('one second over 100 mm is 0.484813681 µm', () =>
    expectPrinted(sumOf('angle-height', { angle_urad: arcsec, base_mm: 100 }).height!.value, '0.484813681'));
  it('5° is printed as 87 mm/m, by sine (87.1557) as by tangent (87.4887) (seen)', () => {
    expectPrinted(sumOf('sine-bar', { length_mm: 1000, angle_deg: 5 }).stack!.value, '87.1557');
    expectPrinted(sumOf('sine-bar', { length_mm: 1000, angle_deg: 5 }).stack!.value, '87');
    expectPrinted(sumOf('taper', { taper_ratio: 0.0874887 }).one_side!.value, '5.00000');
  });
  it('24 in with one end up 5/32 in: printed 6.5 mm/m and 22.4 minutes (seen)', () => {
    const { angle } = sumOf('height-angle', { height_um: (5 / 32) * 25_400, base_mm: 24 * 25.4 });
    expectPrinted(angle!.value / 1000, '6.5');
    expectPrinted(angle!.value / 1000, '6.5104');
    expectPrinted(angle!.value / arcsec / 60, '22.4');
  });
});

/* Derived: the definition of the cosine. */
describe('cosine errors', () => {
  it.each([
    [0.5, '3.80769e-5'],
    [1, '1.523048e-4'],
    [2, '6.091730e-4'],
    [5, '3.8053019e-3'],
    [10, '0.0151922'],
    [15, '0.0340742'],
    [20, '0.0603074'],
    [30, '0.1339746'],
  ])('1 − cos %d° = %s', (angle_deg, printed) =>
    expectPrinted(sumOf('lever-cosine', { reading_um: 1, angle_deg }).over!.value, printed),
  );
  it('a lever at 20° that shows 100 µm moved 93.969262 µm', () =>
    expectPrinted(sumOf('lever-cosine', { reading_um: 100, angle_deg: 20 }).true_move!.value, '93.969262'));
  it.each([
    [10, '.98'],
    [20, '.94'],
    [30, '.87'],
    [40, '.77'],
  ])('a measuring-tool maker’s table, 2019: at %d° times %s (seen)', (angle_deg, printed) =>
    expectPrinted(sumOf('lever-cosine', { reading_um: 1, angle_deg }).true_move!.value, printed),
  );
  it('a travel line 1 mm off over 100 mm: 5 µm; 1 mm/m over 500 mm: 0.25 µm', () => {
    expectPrinted(sumOf('cosine-line', { travel_mm: 100, lean_urad: 10_000 }).long!.value, '5.000');
    expectPrinted(sumOf('cosine-line', { travel_mm: 500, lean_urad: 1000 }).long!.value, '0.250000');
  });
});
