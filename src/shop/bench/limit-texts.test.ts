import { expect, it } from 'vitest';
import { featureScale } from './feature-scale.ts';
import { limitTexts } from './limit-texts.ts';

const plan = {
  features: [
    { name: 'facing', kind: 'turn', axis: 'z' },
    { name: 'height', kind: 'shift', at_mm: [0, 0, 0], direction: [0, 0, 1] },
  ],
  targets: [
    { feature: 'facing', low: 20, high: 200 / 3 },
    { feature: 'height', low: -15, high: 0 },
  ],
  words: [],
} as const;

it('both limits carry the same figures, and as few as tell them right', () => {
  // 20 and 66.7 µrad are 6 and 20 µm in 300 mm, or 0.24 and 0.80 thou in 12 in
  expect(limitTexts(featureScale(plan, 'facing', 'metric'))).toEqual({ low: '+6', high: '+20' });
  expect(limitTexts(featureScale(plan, 'facing', 'inch'))).toEqual({ low: '+0.24', high: '+0.80' });
  expect(limitTexts(featureScale(plan, 'height', 'metric'))).toEqual({ low: '−15', high: '0' });
});
