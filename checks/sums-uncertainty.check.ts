import { describe, it } from 'vitest';
import { studentFactor } from '../src/core/math/student.ts';
import { type Distribution, sdOf } from '../src/core/prove/distribution.ts';
import { monteCarlo } from '../src/core/prove/monte-carlo.ts';
import { effectiveFreedom, propagate } from '../src/core/prove/propagate.ts';
import { expectNear, expectPrinted, expectWithin } from './near.ts';

/* JCGM 100:2008 H.1, end gauge; second hand (a public module of reference tests, 2026). l = ls + d − ls(δα θ + αs δθ), nm. */
describe('JCGM 100 H.1: calibration of an end gauge', () => {
  const at = [50_000_623, 215, 11.5e-6, -0.1, 0, 0];
  const sds = [25, 9.7, 1.2e-6, 0.41, 0.58e-6, 0.029];
  const length = (x: readonly number[]): number => x[0]! + x[1]! - x[0]! * (x[4]! * x[3]! + x[2]! * x[5]!);
  const found = propagate(length, at, sds);
  it('length 50 000 838 nm', () => expectPrinted(found.value, '50000838'));
  it.each([
    [0, '25'],
    [1, '9.7'],
    [2, '0'],
    [3, '0'],
    [4, '2.9'],
    [5, '16.7'],
  ])('input %i gives %s nm', (input, printed) => expectPrinted(found.shares[input]!.sd, printed));
  it('together 32 nm, 31.7106', () => {
    expectPrinted(found.sd, '32');
    expectPrinted(found.sd, '31.7106');
  });
  it('16 effective degrees of freedom, k99 = 2.92, U99 = 93 nm', () => {
    const freedoms = [18, 25.6, Infinity, Infinity, 50, 2];
    const freedom = effectiveFreedom(
      found.shares.map((share, i) => ({ sd: share.sd, freedom: freedoms[i]! })),
    );
    expectNear(freedom, 16.656, 2e-4);
    const factor = studentFactor(0.99, Math.floor(freedom));
    expectPrinted(factor, '2.92');
    expectPrinted(factor * found.sd, '93');
  });
  it('the second-order terms 11.8901 and 1.7400 nm are what a straightened formula leaves out (derived)', () => {
    const term = (a: number, b: number): number => 50_000_623 * a * b;
    expectPrinted(term(0.58e-6, 0.41), '11.8901');
    expectPrinted(term(1.2e-6, 0.029), '1.7400');
    const spreads = at.map((value, i): Distribution => ({ kind: 'normal', value, sd: sds[i]! }));
    const drawn = monteCarlo(length, spreads, { seed: 5, trials: 400_000 });
    expectNear(drawn.sd, Math.hypot(31.7106, 11.8901, 1.74), 0.005);
  });
});

/* JCGM 100:2008 H.2, voltage, current and phase correlated through their readings; second hand, the same module. */
describe('JCGM 100 H.2: correlated inputs', () => {
  const V = [5.007, 4.994, 5.005, 4.99, 4.999];
  const I = [19.663, 19.639, 19.64, 19.685, 19.678].map((mA) => mA / 1000);
  const phi = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const lists = [V, I, phi];
  const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;
  const means = lists.map(mean);
  const covariance = (a: number, b: number): number =>
    lists[a]!.reduce((sum, x, k) => sum + (x - means[a]!) * (lists[b]![k]! - means[b]!), 0) / 20;
  const sds = lists.map((_, k) => Math.sqrt(covariance(k, k)));
  const correlation = lists.map((_, a) => lists.map((__, b) => covariance(a, b) / (sds[a]! * sds[b]!)));
  it('means 4.9990 V, 19.6610 mA, 1.04446 rad, their sds 0.0032, 0.0095, 0.00075', () => {
    expectPrinted(means[0]!, '4.9990');
    expectPrinted(means[1]! * 1000, '19.6610');
    expectPrinted(means[2]!, '1.04446');
    expectPrinted(sds[0]!, '0.0032');
    expectPrinted(sds[1]! * 1000, '0.0095');
    expectPrinted(sds[2]!, '0.00075');
  });
  it('correlations −0.36, 0.86, −0.65', () => {
    expectPrinted(correlation[0]![1]!, '-0.36');
    expectPrinted(correlation[0]![2]!, '0.86');
    expectPrinted(correlation[1]![2]!, '-0.65');
  });
  it.each([
    ['resistance', (x: readonly number[]) => (x[0]! / x[1]!) * Math.cos(x[2]!), '127.732', '0.071'],
    ['reactance', (x: readonly number[]) => (x[0]! / x[1]!) * Math.sin(x[2]!), '219.847', '0.2956'],
    ['impedance', (x: readonly number[]) => x[0]! / x[1]!, '254.260', '0.236'],
  ])('%s', (_, of, value, sd) => {
    const found = propagate(of, means, sds, correlation);
    expectPrinted(found.value, value);
    expectPrinted(found.sd, sd);
  });
  it('the printed 0.295 of the reactance is 0.2956 with the correlations that the data have', () => {
    const found = propagate((x) => (x[0]! / x[1]!) * Math.sin(x[2]!), means, sds, correlation);
    expectWithin(found.sd, 0.295, 0.001);
  });
});

const four = (spread: Distribution): Distribution[] => [spread, spread, spread, spread];
const added = (x: readonly number[]): number => x.reduce((sum, one) => sum + one, 0);

/* JCGM 101:2008 9.2, sums of four inputs; 9.2.2 and 9.2.3 second hand, 9.2.4 from memory. */
describe('JCGM 101 9.2: four added', () => {
  it('four of sd 1 propagate to 2; four of 10 degrees each have 40', () => {
    expectPrinted(propagate(added, [0.1, 0.2, 0.3, 0.4], [1, 1, 1, 1]).sd, '2.00000');
    expectPrinted(effectiveFreedom([1, 1, 1, 1].map((sd) => ({ sd, freedom: 10 }))), '40.0000');
  });
  it('normal: 2.00, 95 % within ± 3.92', () => {
    const got = monteCarlo(added, four({ kind: 'normal', value: 0, sd: 1 }), { seed: 11, trials: 1_000_000 });
    expectNear(got.sd, 2, 0.005);
    for (const end of got.even) expectWithin(Math.abs(end), 3.92, 0.02);
  });
  it('rectangular: 2.00, 95 % within ± 3.88', () => {
    const got = monteCarlo(added, four({ kind: 'rectangular', value: 0, half: Math.sqrt(3) }), {
      seed: 12,
      trials: 1_000_000,
    });
    expectNear(got.sd, 2, 0.005);
    expectPrinted(2 * Math.sqrt(3) * (2 - 0.6 ** 0.25), '3.88');
    for (const end of got.even) expectWithin(Math.abs(end), 3.879406742, 0.02);
  });
  it('three rectangular and one ten times as wide: 10.1, ± 17.0, where straightening gives ± 19.9 (from memory)', () => {
    const spreads: Distribution[] = [1, 1, 1, 10].map((sd) => ({
      kind: 'rectangular',
      value: 0,
      half: sd * Math.sqrt(3),
    }));
    const got = monteCarlo(added, spreads, { seed: 13, trials: 1_000_000 });
    expectNear(got.sd, 10.148892, 0.005);
    for (const end of got.even) expectWithin(Math.abs(end), 17, 0.101);
    expectPrinted(
      1.96 *
        propagate(
          added,
          [0, 0, 0, 0].map((_, k) => k + 1),
          spreads.map(sdOf),
        ).sd,
      '19.9',
    );
  });
});

/* JCGM 101:2008 9.3, from memory: mass of a weight, mg above 100 g. */
it('JCGM 101 9.3: mass, 1.234, u 0.0754, shortest 95 % from 1.0834 to 1.3825; straightened u 0.0539 (from memory)', () => {
  const mass = (x: readonly number[]): number =>
    (x[0]! + x[1]!) * (1 + (x[2]! - 1.2) * (1 / x[3]! - 1 / x[4]!)) - 100_000;
  const spreads: Distribution[] = [
    { kind: 'normal', value: 100_000, sd: 0.05 },
    { kind: 'normal', value: 1.234, sd: 0.02 },
    { kind: 'rectangular', value: 1.2, half: 0.1 },
    { kind: 'rectangular', value: 8000, half: 1000 },
    { kind: 'rectangular', value: 8000, half: 50 },
  ];
  const got = monteCarlo(mass, spreads, { seed: 14, trials: 1_000_000 });
  expectWithin(got.mean, 1.234, 0.0005);
  expectNear(got.sd, 0.0754, 0.005);
  expectWithin(got.shortest[0], 1.0834, 0.002);
  expectWithin(got.shortest[1], 1.3825, 0.002);
  const line = propagate(
    mass,
    spreads.map((one) => one.value),
    spreads.map(sdOf),
  );
  expectPrinted(line.sd, '0.0539');
});

/* JCGM 101:2008 9.5, from memory: the end gauge by drawing, every kind of spread in one. */
it('JCGM 101 9.5: gauge block 838 nm, u 36, shortest 99 % from 745 to 932 (from memory)', () => {
  const spreads: Distribution[] = [
    { kind: 't', value: 50_000_623, scale: 25, freedom: 18 },
    { kind: 't', value: 215, scale: 6, freedom: 24 },
    { kind: 't', value: 0, scale: 4, freedom: 5 },
    { kind: 't', value: 0, scale: 7, freedom: 8 },
    { kind: 'rectangular', value: 11.5e-6, half: 2e-6 },
    { kind: 'normal', value: -0.1, sd: 0.2 },
    { kind: 'arcsine', value: 0, half: 0.5 },
    { kind: 'trapezoid', value: 0, half: 1e-6, edge: 0.1e-6 },
    { kind: 'trapezoid', value: 0, half: 0.05, edge: 0.025 },
  ];
  const length = ([ls, d, d1, d2, as, th0, cycle, da, dt]: readonly number[]): number =>
    ls! + d! + d1! + d2! - ls! * (da! * (th0! + cycle!) + as! * dt!) - 50_000_000;
  const got = monteCarlo(length, spreads, { seed: 15, trials: 400_000, share: 0.99 });
  expectPrinted(got.mean, '838');
  expectPrinted(got.sd, '36');
  expectWithin(got.shortest[0], 745, 1.6);
  expectWithin(got.shortest[1], 932, 1.6);
});

/* JCGM 100:2008 4.3 and Table G.2, from memory. */
describe('divisors and Student’s factors (from memory)', () => {
  it('half width 1: rectangular .577350269, arcsine .707106781, triangular .408248290', () => {
    expectPrinted(sdOf({ kind: 'rectangular', value: 0, half: 1 }), '.577350269');
    expectPrinted(sdOf({ kind: 'arcsine', value: 0, half: 1 }), '.707106781');
    expectPrinted(sdOf({ kind: 'triangular', value: 0, half: 1 }), '.408248290');
    expectPrinted(sdOf({ kind: 'rectangular', value: 0, half: 0.5 }), '.288675135');
  });
  it.each([
    [1, '12.7062', '63.6567'],
    [2, '4.3027', '9.9248'],
    [3, '3.1824', '5.8409'],
    [4, '2.7764', '4.6041'],
    [5, '2.5706', '4.0321'],
    [6, '2.4469', '3.7074'],
    [8, '2.3060', '3.3554'],
    [10, '2.2281', '3.1693'],
    [16, '2.1199', '2.9208'],
    [20, '2.0860', '2.8453'],
    [50, '2.0086', '2.6778'],
  ])('%d degrees: %s for 95 %%, %s for 99 %%', (freedom, p95, p99) => {
    expectPrinted(studentFactor(0.95, freedom), p95);
    expectPrinted(studentFactor(0.99, freedom), p99);
  });
  it('drawn spreads have the sd that their formula gives', () => {
    const spreads: Distribution[] = [
      { kind: 'triangular', value: 3, half: 2 },
      { kind: 'arcsine', value: -1, half: 0.7 },
      { kind: 'trapezoid', value: 4, half: 1.3, edge: 0.9 },
      { kind: 't', value: 0, scale: 1.7, freedom: 9 },
    ];
    for (const [k, spread] of spreads.entries()) {
      const got = monteCarlo((x) => x[0]!, [spread], { seed: 20 + k, trials: 200_000 });
      expectNear(got.sd, sdOf(spread), 0.01);
      expectWithin(got.mean, spread.value, 0.02);
    }
  });
});
