import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../src/core/math/normal.ts';
import { chanceInBand } from '../src/core/prove/chance.ts';
import { verdict } from '../src/core/prove/verdict.ts';
import { expectPrinted, expectSame } from './near.ts';

/*
 * Sources: decision rules of ISO 14253-1 (rule seen, second hand: pages quoting it; the 95 % default of 2017 seen, second
 * hand, its factor from memory); conformance probability of JCGM 106:2012 (examples from memory). Numbers marked derived
 * follow from the rule or from the normal distribution.
 */
const upper = (y: number, factor?: number) => verdict(y, 2, -Infinity, 20, factor).verdict;

describe('ISO 14253-1: the doubt counts against whoever states', () => {
  it('upper limit 20 µm, u = 2, k = 2: within to 16, outside from 24, else not proven (derived)', () => {
    expectSame(upper(16), 'within');
    expectSame(upper(16.001), 'not proven');
    expectSame(upper(20), 'not proven');
    expectSame(upper(23.999), 'not proven');
    expectSame(upper(24), 'outside');
  });
  it('one-sided 95 %: guard 3.289707 µm, within to 16.710293, outside from 23.289707 (factor from memory)', () => {
    const factor = normalQuantile(0.95);
    expectPrinted(factor, '1.644853627');
    expectSame(upper(16.71029, factor), 'within');
    expectSame(upper(16.7103, factor), 'not proven');
    expectSame(upper(23.2897, factor), 'not proven');
    expectSame(upper(23.28971, factor), 'outside');
  });
  it('no guard: it passes up to the limit itself', () => {
    expectSame(upper(20, 0), 'within');
    expectSame(upper(20.001, 0), 'outside');
  });
  it('lower limits mirror upper ones', () => {
    expect(verdict(-16, 2, -20, Infinity)).toMatchObject({ verdict: 'within', side: 'low' });
    expect(verdict(-24, 2, -20, Infinity)).toMatchObject({ verdict: 'outside', side: 'low', short: 4 });
  });
});

describe('chance of conformance', () => {
  it.each([
    [16, '0.977249868'],
    [16.710292746, '0.95'],
    [18, '0.841344746'],
    [20, '0.5'],
    [22, '0.158655254'],
  ])('y = %d against an upper limit of 20, u = 2 (derived)', (y, printed) =>
    expectPrinted(chanceInBand(y, 2, -Infinity, 20), printed),
  );
  it('JCGM 106, Zener diode: −5.47 V against −5.40 V, u 0.05 V (from memory)', () =>
    expectPrinted(chanceInBand(-5.47, 0.05, -Infinity, -5.4), '0.919243'));
  it('JCGM 106, burst strength: 509.7 kPa against at least 490 kPa, u 8.6 kPa (from memory)', () =>
    expectPrinted(chanceInBand(509.7, 8.6, 490, Infinity), '0.98901'));
  it('two limits ±2, y 0.8, u 1 (derived)', () => expectPrinted(chanceInBand(0.8, 1, -2, 2), '0.882375199'));
});

describe('quantiles of the normal distribution, as printed in every table (from memory)', () => {
  it.each([
    [0.9, '1.2816'],
    [0.95, '1.6449'],
    [0.975, '1.9600'],
    [0.99, '2.3263'],
    [0.995, '2.5758'],
    [0.9995, '3.2905'],
  ])('%d', (p, printed) => expectPrinted(normalQuantile(p), printed));
});
