import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../src/core/math/least-squares.ts';
import { fitLine, mean, sampleSd } from '../src/core/math/line-fit.ts';
import { expectNear, expectSame } from './near.ts';

/*
 * Source: NIST Statistical Reference Datasets (StRD), itl.nist.gov/div898/strd.
 * Norris, NoInt1, NoInt2: seen, second hand. Pontius: certified values seen, second hand; data from memory, verified.
 * NumAcc: from memory, recomputed.
 */
const dataset = (name: string) => JSON.parse(readFileSync(`checks/data/nist-${name}.json`, 'utf8'));

describe('NIST StRD, Norris: line with intercept, lower difficulty', () => {
  const { x, y, certified } = dataset('norris') as {
    x: number[];
    y: number[];
    certified: Record<string, number>;
  };
  const fit = fitLine(x, y);
  it('coefficients to 1 part in 10¹²', () => {
    expect(x).toHaveLength(36);
    expectNear(fit.slope, certified.slope!, 1e-12);
    expectNear(fit.start, certified.start!, 1e-12);
  });
  it('standard errors, residual sd and sum of squares to 1 part in 10¹⁰', () => {
    expectNear(fit.slope_sd, certified.slope_sd!, 1e-10);
    expectNear(fit.start_sd, certified.start_sd!, 1e-10);
    expectNear(fit.residual_sd, certified.residual_sd!, 1e-10);
    expectNear(fit.square, certified.sum_of_squares!, 1e-10);
    expectSame(fit.degrees, certified.degrees);
    const about = y.reduce((sum, v) => sum + (v - fit.middle[1]) ** 2, 0);
    expectNear(1 - fit.square / about, certified.r_squared!, 1e-12);
  });
});

describe('NIST StRD, NoInt1 and NoInt2: line through the origin', () => {
  it('NoInt1', () => {
    const x = Array.from({ length: 11 }, (_, i) => 60 + i);
    const fit = leastSquares(
      x.map((v) => [v]),
      x.map((v) => v + 70),
    );
    expectNear(fit.coefficients[0]!, 2.07438016528926, 1e-12);
    expectNear(fit.sds[0]!, 0.165289256198347e-1, 1e-12);
    expectNear(fit.residual_sd, 3.56753034006338, 1e-12);
    expectNear(fit.square, 127.272727272727, 1e-12);
    expectSame(fit.degrees, 10);
  });
  it('NoInt2', () => {
    const fit = leastSquares([[4], [5], [6]], [3, 4, 4]);
    expectNear(fit.coefficients[0]!, 0.727272727272727, 1e-12);
    expectNear(fit.sds[0]!, 0.420827318078432e-1, 1e-12);
    expectNear(fit.residual_sd, 0.369274472937998, 1e-12);
    expectNear(fit.square, 0.272727272727273, 1e-11);
    expectSame(fit.degrees, 2);
  });
});

describe('NIST StRD, Pontius: quadratic with large abscissae (data from memory)', () => {
  it('coefficients, standard errors and residual sd to 1 part in 10⁹', () => {
    const { x, y, certified } = dataset('pontius') as {
      x: number[];
      y: number[];
      certified: { coefficients: number[]; sds: number[]; residual_sd: number; sum_of_squares: number };
    };
    const fit = leastSquares(
      x.map((v) => [1, v, v * v]),
      y,
    );
    for (const k of [0, 1, 2]) {
      expectNear(fit.coefficients[k]!, certified.coefficients[k]!, 1e-9);
      expectNear(fit.sds[k]!, certified.sds[k]!, 1e-9);
    }
    expectNear(fit.residual_sd, certified.residual_sd, 1e-9);
    expectNear(fit.square, certified.sum_of_squares, 1e-9);
  });
});

describe('NIST StRD, NumAcc: mean and sd of numbers far from zero (from memory)', () => {
  const pairs = (level: number, low: number, high: number) => [
    level,
    ...Array.from({ length: 1000 }, (_, i) => (i % 2 ? high : low)),
  ];
  it.each<[string, number[], number, number, number]>([
    ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, 1e-14],
    ['NumAcc3', pairs(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 1e-8],
    ['NumAcc4', pairs(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 1e-7],
  ])('%s', (_, values, middle, sd, share) => {
    expectNear(mean(values), middle, 1e-14);
    expectNear(sampleSd(values), sd, share);
  });
});
