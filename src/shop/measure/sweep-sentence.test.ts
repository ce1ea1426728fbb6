import { describe, expect, it } from 'vitest';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import { phraseText } from '../phrase.ts';
import { lookAtSweep } from './look-at-sweep.ts';
import { sweepSentence } from './sweep-sentence.ts';
import { stopDistances, sweepSoFar } from './sweep-so-far.ts';

const setup: SweepSetup = {
  kind: 'sweep',
  id: 'square',
  name: 'cross ways against the square',
  question: 'Are the cross ways square to the bed?',
  drawing: 'square-cross-sweep',
  tells: ['facing'],
  rides_words: 'on the cross slide',
  touches_words: 'the square',
  plus_words: 'plunger in',
  climbs_words: 'concave',
  falls_words: 'convex',
  rides: 'slide',
  touches: 'reference',
  plunger: [-1, 0, 0],
  from_mm: [-18, 0, 92],
  to_mm: [-18, 200, 92],
  points: 11,
  reading_sd_um: 1.5,
  face: 'square',
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
};
const plan: JobPlan = {
  title: 'saddle',
  template: 'invented',
  slide: { name: 'saddle', free: 'x', pads: [] },
  features: [{ name: 'facing', kind: 'turn', axis: 'z' }],
  targets: [{ feature: 'facing', low: 20, high: 66 }],
  words: [
    {
      feature: 'facing',
      span_mm: 300,
      minus: 'convex',
      plus: 'concave',
      minus_sentence: '',
      plus_sentence: '',
    },
  ],
  places: { minus_end: 'h', plus_end: 't', minus_side: 'o', plus_side: 'b', travel: 'x' },
  passes: {},
  setups: [setup],
  cautions: [],
};
// The look's invented card, and its sentence.
const values = [0, -1.5, -2.5, -3.5, -4, -4.5, -9, -6.5, -9.5, -11.5, -14];
const sentence = (push: 'climbed' | 'fell', read: readonly (number | undefined)[]) => {
  const look = lookAtSweep(sweepSoFar(setup, { push }, read), plan.features[0]);
  return look
    ? phraseText(sweepSentence(look, setup, plan, 'metric', push === 'fell')).replace(/\s/g, ' ')
    : '';
};

describe('what a sweep says by itself', () => {
  it('falls: convex, with its doubt', () => {
    expect(sentence('climbed', values)).toBe(
      'The number falls along the sweep: facing comes out convex, −19 ± 5 µm in 300 mm, by this sweep alone.',
    );
  });
  it('the same numbers on an indicator that counts the other way are concave', () => {
    expect(sentence('fell', values)).toBe(
      'The number falls along the sweep; with its signs turned, facing comes out concave, +19 ± 5 µm in 300 mm, by this sweep alone.',
    );
  });
  it('speaks from the third reading on, wherever the gaps are', () => {
    const some = values.map((value, i) => (i % 5 === 0 ? value : undefined));
    expect(sentence('climbed', some)).toContain('falls');
    expect(
      sentence(
        'climbed',
        values.map((value, i) => (i < 2 ? value : undefined)),
      ),
    ).toBe('');
  });
  it('stops stand where the sweep says', () => {
    expect(stopDistances(setup)).toEqual([0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200]);
  });
});
