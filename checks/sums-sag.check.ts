import { describe, expect, it } from 'vitest';
import { sagOnTwo, supportPoints } from '../src/core/kit/beam.ts';
import { expectNear, expectPrinted, expectWithin } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * Sources: support points, separations seen in an encyclopedia (Airy 0.57735, Bessel 0.5594) and lecture slides (least sag
 * 0.554), nodes from memory, digits computed apart from us; sags by beam tables' formulae (5qL⁴/384EI, qL⁴/8EI, PL³/3EI,
 * seen), numbers derived with g = 9.80665.
 */
const unit = (from_end: number) => sagOnTwo(1e-6, 1000, from_end);

describe('support points of a uniform bar', () => {
  it.each([
    ['airy', 0.577350269, 0.211324865, ''],
    ['bessel', 0.55938, 0.22031, ''],
    ['least_sag', 0.553702, 0.223149, ''],
    ['nodes', 0.551685, 0.224158, ' (from memory)'],
  ] as const)('%s: separation %d, from each end %d of the length%s', (name, separation, from_end, _) => {
    expectWithin(1 - 2 * supportPoints[name], separation, 5e-7);
    expectWithin(supportPoints[name], from_end, 6e-7);
  });
  it('Airy: marks 211.3 mm from the ends of a 1000 mm bar, 577.4 mm apart (seen)', () => {
    const got = sumOf('support-points', { length_mm: 1000, depth_mm: 50 });
    expectPrinted(got.airy!.value, '211.3');
    expectPrinted(1000 - 2 * got.airy!.value, '577.4');
    expectPrinted(1 - 2 * (got.bessel!.value / 1000), '0.5594');
    expectPrinted(1 - 2 * (got.least!.value / 1000), '0.554');
  });
  // In units of qL⁴/EI: middle, end, from lowest to highest.
  it.each([
    ['airy', supportPoints.airy, -5.163801e-4, 8.309811e-5, 5.994782e-4, 1e-8],
    ['bessel', supportPoints.bessel, -3.256634e-4, -1.831115e-4, 3.3131e-4, 2e-8],
    ['least sag', supportPoints.least_sag, -2.697282e-4, -2.697282e-4, 2.70395e-4, 1e-8],
    ['on its ends', 0, -1.302083e-2, 0, 1.302083e-2, 1e-8],
    ['at its middle', 0.5, 0, -7.8125e-3, 7.8125e-3, 1e-8],
  ])('%s: middle, end and range (derived)', (_, from_end, middle, end, range, tolerance) => {
    const sag = unit(from_end);
    expectWithin(sag.middle_um, middle, tolerance);
    expectWithin(sag.end_um, end, tolerance);
    expectWithin(sag.range_um, range, tolerance);
  });
  it('the Bessel points are not those of least sag: nothing beats the latter (derived)', () => {
    const least = unit(supportPoints.least_sag).range_um;
    expect(unit(supportPoints.bessel).range_um).toBeGreaterThan(1.2 * least);
    for (let k = 0; k <= 500; k++) expect(unit(k / 1000).range_um).toBeGreaterThanOrEqual(least * (1 - 1e-9));
  });
  it('against the bar on its ends: Airy 0.046040, Bessel 0.025444, least 0.020766 (derived)', () => {
    const whole = unit(0).range_um;
    expectWithin(unit(supportPoints.airy).range_um / whole, 0.04604, 5e-7);
    expectWithin(unit(supportPoints.bessel).range_um / whole, 0.025444, 5e-7);
    expectWithin(unit(supportPoints.least_sag).range_um / whole, 0.020766, 5e-7);
  });
});

const edge = (
  length_mm: number,
  depth_mm: number,
  density_kg_m3: number,
  modulus_GPa: number,
  support_mm = 0,
) => sumOf('straightedge-sag', { length_mm, depth_mm, density_kg_m3, modulus_GPa, support_mm });

describe('worked sags (derived)', () => {
  it('steel, 1000 × 50 deep, on its ends: 22.91136979 µm', () =>
    expectNear(-edge(1000, 50, 7850, 210).middle!.value, 22.91136979, 1e-9));
  it('the same on Airy, Bessel and least-sag points: 1.054838, 0.582963, 0.475786 µm', () => {
    const got = sumOf('support-points', {
      length_mm: 1000,
      depth_mm: 50,
      density_kg_m3: 7850,
      modulus_GPa: 210,
    });
    expectPrinted(got.airy_sag!.value, '1.054838');
    expectPrinted(got.bessel_sag!.value, '0.582963');
    expectPrinted(got.least_sag!.value, '0.475786');
  });
  it('cast iron 1500 × 100: 50.774488 on its ends, 2.337654 on the Airy points', () => {
    expectPrinted(edge(1500, 100, 7200, 110).range!.value, '50.774488');
    expectPrinted(edge(1500, 100, 7200, 110, 1500 * supportPoints.airy).range!.value, '2.337654');
  });
  it('granite 1500 × 150: 17.238252 and 0.793648', () => {
    expectPrinted(edge(1500, 150, 3000, 60).range!.value, '17.238252');
    expectPrinted(edge(1500, 150, 3000, 60, 1500 * supportPoints.airy).range!.value, '0.793648');
  });
  it('test bar ø40, 300 out: hangs 3.711641906 µm, points down 16.496186 µrad', () => {
    const got = sumOf('test-bar-sag', { overhang_mm: 300, diameter_mm: 40 });
    expectNear(got.sag!.value, 3.711641906, 1e-9);
    expectPrinted(got.slope!.value, '16.496186');
  });
  it('the same with a bore of 30: 2.375450820 and 10.557559', () => {
    const got = sumOf('test-bar-sag', { overhang_mm: 300, diameter_mm: 40, bore_mm: 30 });
    expectNear(got.sag!.value, 2.37545082, 1e-9);
    expectPrinted(got.slope!.value, '10.557559');
  });
  it('ø50 bored 40, 500 out: 11.176277947', () =>
    expectNear(
      sumOf('test-bar-sag', { overhang_mm: 500, diameter_mm: 50, bore_mm: 40 }).sag!.value,
      11.176277947,
      1e-9,
    ));
  it('between centres a solid bar sags 5qL⁴/384EI: 48/5 of the tip of a held one over the same length', () => {
    const held = sumOf('test-bar-sag', { overhang_mm: 700, diameter_mm: 40 }).sag!.value;
    expectNear(
      sumOf('bar-between-centres', { length_mm: 700, diameter_mm: 40 }).sag!.value,
      (held * 5) / 48,
      1e-9,
    );
  });
  it('an indicator of 0.1 kg on a 12 mm rod, 250 long: 23.894903 and 19.888342 µm', () => {
    const got = sumOf('indicator-arm', { arm_mm: 250, diameter_mm: 12, mass_kg: 0.1 });
    expectNear(got.by_mass!.value, 23.894903, 1e-7);
    expectNear(got.by_arm!.value, 19.888342, 1e-7);
  });
  it('the trade’s table (another E and density): ø40 300 out 3.77, bore 28 2.53, ø30 6.70, within 3 %', () => {
    const hangs = (diameter_mm: number, bore_mm: number) =>
      sumOf('test-bar-sag', { overhang_mm: 300, diameter_mm, bore_mm }).sag!.value;
    expectNear(hangs(40, 0), 3.77, 0.03);
    expectNear(hangs(40, 28), 2.53, 0.03);
    expectNear(hangs(30, 0), 6.7, 0.03);
  });
});
