import { describe, expect, it } from 'vitest';
import { endsTurned, straightedgeReversal, threeAtOnce } from '../src/core/kit/reversal.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * Source: C. J. Evans, R. J. Hocken, W. T. Estler, Self-calibration: reversal, redundancy, error separation, and "absolute
 * testing", CIRP Annals 45(2), 1996, 617–634; formulae from memory, numbers derived. The level's rule seen in two forms.
 */
const x = [0, 100, 200, 300, 400, 500];

describe('a straightedge turned over', () => {
  it('I1 = M + S, I2 = M − S', () => {
    const got = straightedgeReversal(x, [0, 1, 6, 8, 3, 0], [0, -5, -4, 0, 1, 0], 1);
    expectSame(got.edge_um, [0, 3, 5, 4, 1, 0]);
    expectSame(got.way_um, [0, -2, 1, 4, 2, 0]);
  });
  it('tilted and zeroed anew each time: the same, since turning over cannot give the tilt', () => {
    const got = straightedgeReversal(x, [5, 8, 15, 19, 16, 15], [-3, -11.5, -14, -13.5, -16, -20.5], 1);
    got.edge_um.forEach((um, i) => {
      expectWithin(um, [0, 3, 5, 4, 1, 0][i]!, 5e-13);
    });
    got.way_um.forEach((um, i) => {
      expectWithin(um, [0, -2, 1, 4, 2, 0][i]!, 5e-13);
    });
  });
});

it('a square: 12″ and −4″ are 4″ of machine and 8″ of square', () => {
  // Over 206264.8 mm a second of arc is 1 mm: any length serves, the slopes stay in proportion.
  const got = sumOf('square-two-sides', { as_it_stands_um: 12, turned_um: -4, length_mm: 300 });
  expectPrinted(got.machine_um!.value, '4.00000');
  expectPrinted(got.square_um!.value, '8.00000');
});

describe('a level turned end for end', () => {
  it('+3 and −1 divisions of 0.02 mm/m: the surface 0.02 mm/m, the level’s zero 2 divisions', () => {
    const got = sumOf('level-turned', { first_divisions: 3, turned_divisions: -1, sensitivity_urad: 20 });
    expectPrinted(got.surface!.value, '20.0000');
    expectPrinted(got.zero!.value, '2.00000');
  });
  it('read against its own body, sum and difference change places (seen)', () => {
    expect(endsTurned(3, 1, 'body')).toEqual(endsTurned(3, -1, 'surface'));
    expect(endsTurned(3, 1, 'body').kept).toBe((3 - 1) / 2);
  });
});

it('a test bar: +18 and −6 µm over 300 are +6 of axis and 12 of bar and seat', () => {
  const got = sumOf('test-bar-turned', { first_um: 18, turned_um: -6, length_mm: 300 });
  expectPrinted(got.axis_um!.value, '6.00000');
  expectPrinted(got.bar_um!.value, '12.0000');
  expectPrinted(got.axis!.value, '20.0000');
});

it('three squares in pairs, 8, 2 and 4: A = 5, B = 3, C = −1', () => {
  expectSame(threeAtOnce(8, 2, 4), [5, 3, -1]);
  const got = sumOf('three-squares', { a_b_um: 8, b_c_um: 2, a_c_um: 4, length_mm: 200 });
  expectSame([got.a!.value, got.b!.value, got.c!.value], [5, 3, -1]);
});

it('two halved readings of sd 1 leave 1/√2 in each part (derived)', () => {
  const got = sumOf(
    'square-two-sides',
    { as_it_stands_um: 18, turned_um: -6, length_mm: 300 },
    { as_it_stands_um: 1, turned_um: 1, length_mm: 0 },
  );
  expectPrinted(got.machine_um!.sd, '0.70711');
  expectPrinted(got.square_um!.sd, '0.70711');
});
