import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitLine } from '../src/core/math/line-fit.ts';
import { huberLine, median, theilSen, theilSenInterval } from '../src/core/math/robust-line.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Sources: P. K. Sen, Estimates of the regression coefficient based on Kendall's tau, JASA 63 (1968), 1379–1389, and the
 * small example beside it in SciPy's test suite; seen, second hand. Huber: help page of the R package MASS, data set
 * "phones", rlm with k = 1.345; results seen, second hand.
 */
describe('Sen 1968', () => {
  const x = [1, 2, 3, 4, 10, 12, 18];
  const y = [9, 15, 19, 20, 45, 55, 78];
  it('median slope 4 and its 93 % interval', () => {
    const line = theilSen(x, y);
    expectSame(line.slope, 4);
    expectSame(line.start, 6);
    expectSame(median(y) - line.slope * median(x), 4);
    const interval = theilSenInterval(x, y, 0.93);
    expectPrinted(interval.low, '3.71');
    expectPrinted(interval.high, '4.38');
    expect(interval).toEqual({ low: expect.closeTo(26 / 7, 12), high: 4.375 });
  });
  it('three points: slope 0.5, and a start of 0 by the residuals’ median', () => {
    expect(theilSen([0, 1, 2], [0, 1, 1])).toEqual({ slope: 0.5, start: 0 });
  });
});

describe('Belgian telephone calls', () => {
  const { year, calls_million, printed } = JSON.parse(
    readFileSync('checks/data/belgian-telephone-calls.json', 'utf8'),
  ) as {
    year: number[];
    calls_million: number[];
    printed: { huber: { start: number; slope: number; scale: number } };
  };
  it('least squares as printed, which proves the data', () => {
    const fit = fitLine(year, calls_million);
    expectPrinted(fit.start, '-260.059');
    expectPrinted(fit.start_sd, '102.607');
    expectPrinted(fit.slope, '5.041');
    expectPrinted(fit.slope_sd, '1.658');
    expectPrinted(fit.residual_sd, '56.22');
  });
  it('Huber as printed, as near as the print’s stopping rule of 1e-4 goes; and converged to six decimals', () => {
    const line = huberLine(year, calls_million);
    expectWithin(line.start, printed.huber.start, 0.15);
    expectWithin(line.slope, printed.huber.slope, 0.002);
    expectWithin(line.scale, printed.huber.scale, 0.03);
    expectWithin(line.start, -102.52963812, 5e-7);
    expectWithin(line.slope, 2.03960047, 5e-7);
    expectWithin(line.scale, 9.00902831, 5e-7);
  });
  it('Theil and Sen’s slope', () => expectPrinted(theilSen(year, calls_million).slope, '1.3875'));
});
