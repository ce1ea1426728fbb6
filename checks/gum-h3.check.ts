import { describe, it } from 'vitest';
import { fitLine, lineAt } from '../src/core/math/line-fit.ts';
import { expectNear, expectPrinted, expectSame } from './near.ts';

/*
 * Source: JCGM 100:2008 (GUM), annex H.3, calibration of a thermometer; seen, second hand (documentation of a public
 * uncertainty library that reproduces the table and the results). y = y1 + y2 (t − 20 °C).
 */
const t_C = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const correction_C = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];

describe('GUM H.3: a straight line with correlated intercept and slope', () => {
  const fit = fitLine(
    t_C.map((t) => t - 20),
    correction_C,
  );
  it('as printed', () => {
    expectPrinted(fit.start, '-0.1712');
    expectPrinted(fit.start_sd, '0.0029');
    expectPrinted(fit.slope, '0.00218');
    expectPrinted(fit.slope_sd, '0.00067');
    expectPrinted(fit.covariance / (fit.start_sd * fit.slope_sd), '-0.930');
    expectPrinted(fit.residual_sd, '0.0035');
    const at30 = lineAt(fit, 10);
    expectPrinted(at30.value, '-0.1494');
    expectPrinted(at30.sd, '0.0041');
  });
  it('to all digits of a recomputation in exact arithmetic by others', () => {
    expectNear(fit.start, -0.17120379013, 1e-10);
    expectNear(fit.slope_sd, 0.00066793877, 1e-8);
    expectNear(fit.square, 1.10096583109e-4, 1e-9);
    expectSame(fit.degrees, 9);
  });
});
