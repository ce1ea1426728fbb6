import { describe, expect, it } from 'vitest';
import type { FeatureWords } from '../../core/ledger/setup.ts';
import { featureLine, leadingLine } from './feature-line.ts';

const words = (feature: string, minus: string, plus: string): FeatureWords => ({
  feature,
  span_mm: 300,
  minus,
  plus,
  minus_sentence: '',
  plus_sentence: '',
});
// Bands of the look's invented job: facing +6 to +20 µm in 300 mm, level −6 to +6.
const plan = {
  features: [
    { name: 'facing', kind: 'turn', axis: 'z' },
    { name: 'level across', kind: 'turn', axis: 'x' },
  ],
  targets: [
    { feature: 'facing', low: 20, high: 200 / 3 },
    { feature: 'level across', low: -20, high: 20 },
  ],
  words: [words('facing', 'convex', 'concave'), words('level across', 'back low', 'back high')],
} as const;

describe('a feature as it is told', () => {
  it('says −15 ± 4 µm in 300 mm, outside, 21 to go, convex, as the look does', () => {
    const line = featureLine(plan, { name: 'facing', value: -51, sd: 4.3 / 0.6 }, 'metric');
    expect([line.said.sign, line.said.number, line.said.doubt, line.said.unit]).toEqual([
      '−',
      '15',
      '4',
      'µm in 300 mm',
    ]);
    expect(line.judged).toMatchObject({ verdict: 'outside', side: 'low' });
    expect(line.to_go).toBe('21 to go');
    expect(line.way).toBe('convex');
    expect(line.scale.shown(20)).toBeCloseTo(6, 9);
  });
  it('the same in thou in 12 in', () => {
    const line = featureLine(plan, { name: 'facing', value: -51, sd: 4.3 / 0.6 }, 'inch');
    expect([line.said.sign, line.said.number, line.said.doubt, line.said.unit]).toEqual([
      '−',
      '0.61',
      '0.17',
      'thou in 12 in',
    ]);
  });
  it('leads with the first target, or with the worst when that is within', () => {
    const facing = (value: number) => featureLine(plan, { name: 'facing', value, sd: 5 }, 'metric');
    const across = (value: number) => featureLine(plan, { name: 'level across', value, sd: 4.5 }, 'metric');
    expect(leadingLine([facing(-51), across(26)])?.name).toBe('facing');
    expect(leadingLine([facing(40), across(26)])?.name).toBe('level across');
    expect(leadingLine([facing(40), across(2)])?.name).toBe('facing');
    expect(leadingLine([facing(22), across(41)])?.name).toBe('facing');
  });
});
