import { describe, it } from 'vitest';
import { fitLine, lineAt } from '../src/core/math/line-fit.ts';
import { propagate } from '../src/core/prove/propagate.ts';
import { expectPrinted, expectSame } from './near.ts';

/*
 * Source: ISO/TS 28037:2010, straight-line calibration functions, worked examples; seen, second hand (documentation of a
 * public uncertainty library that cites the clauses). y = a + b x.
 */
const x = [1, 2, 3, 4, 5, 6];

describe('ISO/TS 28037, clause 6: known standard deviations of y', () => {
  it('equal ones (6.3, first example)', () => {
    const fit = fitLine(x, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], Array(6).fill(0.5));
    expectPrinted(fit.start, '1.867');
    expectPrinted(fit.start_sd, '0.465');
    expectPrinted(fit.slope, '1.757');
    expectPrinted(fit.slope_sd, '0.120');
    expectPrinted(fit.covariance, '-0.050');
    expectPrinted(fit.square, '1.665');
    expectSame(fit.degrees, 4);
  });
  it('prediction at 3.5, which is known to 0.2', () => {
    const fit = fitLine(x, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], Array(6).fill(0.5));
    const at = lineAt(fit, 3.5);
    expectPrinted(at.value, '8.01666666667');
    expectPrinted(Math.hypot(at.sd, fit.slope * 0.2), '0.40640953173');
  });
  it('the x of a y of 10.5, known to 0.5: 4.91327913279, u 0.32203556013', () => {
    const fit = fitLine(x, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], Array(6).fill(0.5));
    const r = fit.covariance / (fit.start_sd * fit.slope_sd);
    const found = propagate(
      ([y, a, b]) => (y! - a!) / b!,
      [10.5, fit.start, fit.slope],
      [0.5, fit.start_sd, fit.slope_sd],
      [
        [1, 0, 0],
        [0, 1, r],
        [0, r, 1],
      ],
    );
    expectPrinted(found.value, '4.91327913279');
    expectPrinted(found.sd, '0.32203556');
  });
  it('unequal ones (6.3, second example)', () => {
    const fit = fitLine(x, [3.2, 4.3, 7.6, 8.6, 11.7, 12.8], [0.5, 0.5, 0.5, 1, 1, 1]);
    expectPrinted(fit.start, '0.885');
    expectPrinted(fit.start_sd, '0.530');
    expectPrinted(fit.slope, '2.057');
    expectPrinted(fit.slope_sd, '0.178');
    expectPrinted(fit.covariance, '-0.082');
    expectPrinted(fit.square, '4.131');
  });
});

describe('ISO/TS 28037, annex E: standard deviation not known', () => {
  it('it is taken from the scatter', () => {
    const fit = fitLine(x, [3.014, 5.225, 7.004, 9.061, 11.201, 12.762]);
    expectPrinted(fit.start, '1.172');
    expectPrinted(fit.start_sd, '0.159');
    expectPrinted(fit.slope, '1.964');
    expectPrinted(fit.slope_sd, '0.041');
    expectPrinted(fit.covariance, '-0.006');
  });
});
