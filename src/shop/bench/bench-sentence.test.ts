import { describe, expect, it } from 'vitest';
import type { LevelSetup, SweepSetup } from '../../core/ledger/setup.ts';
import { phraseText } from '../phrase.ts';
import { measuringSentence, offSentence, stopSentence } from './bench-sentence.ts';
import { featureLine } from './feature-line.ts';

const card = {
  question: '',
  drawing: 'generic',
  tells: ['facing'],
  rides_words: '',
  touches_words: '',
  plus_words: '',
  climbs_words: '',
  falls_words: '',
};
const sweep: SweepSetup = {
  ...card,
  kind: 'sweep',
  id: 'square',
  name: 'cross ways against the square',
  rides: 'slide',
  touches: 'reference',
  plunger: [-1, 0, 0],
  from_mm: [0, 0, 90],
  to_mm: [0, 200, 90],
  points: 11,
  reading_sd_um: 1.5,
  face: 'square',
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
};
const level: LevelSetup = {
  ...card,
  kind: 'level',
  id: 'across',
  name: 'level across',
  along: [0, 1, 0],
  sd_urad: 5,
};
const plan = {
  features: [{ name: 'facing', kind: 'turn', axis: 'z' }],
  targets: [{ feature: 'facing', low: 20, high: 200 / 3 }],
  words: [
    {
      feature: 'facing',
      span_mm: 300,
      minus: 'convex',
      plus: 'concave',
      minus_sentence: 'At the back the cross ways lean to the tailstock.',
      plus_sentence: 'At the back the cross ways lean to the headstock.',
    },
  ],
} as const;
const facing = (value: number) => featureLine(plan, { name: 'facing', value, sd: 5 }, 'metric');
const plain = (text: string) => text.replace(/\s/g, ' ');

describe('the sentence of the bench', () => {
  it('says the thing first, in the words of the look', () => {
    expect(phraseText(offSentence(facing(-51)))).toBe(
      'Facing comes out convex. At the back the cross ways lean to the tailstock.',
    );
    expect(plain(phraseText(stopSentence(facing(37.5))))).toBe(
      'Facing comes out concave, 11 µm in 300 mm, as wanted. Leave it.',
    );
  });
  it('says what to do first, how many readings and how long, then what is next', () => {
    expect(phraseText(measuringSentence(sweep, []))).toBe(
      'No readings in this round. Start with the sweep, 11 readings, about 6 minutes.',
    );
    expect(phraseText(measuringSentence(level, ['cross ways against the square']))).toBe(
      'Cross ways against the square: kept. Next: level across, 1 reading, about 2 minutes.',
    );
  });
});
