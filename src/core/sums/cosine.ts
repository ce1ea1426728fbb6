import { rise } from '../body/displacement.ts';
import { cos, sum } from './sum.ts';

const source = {
  text: 'definition of the cosine; a table for lever indicators seen in a maker’s guide',
  came: 'seen',
} as const;

export const lever = sum({
  name: 'lever-cosine',
  group: 'angles and tapers',
  title: 'Lever indicator at an angle',
  question: 'What did it really move when the lever stands at an angle to the face?',
  inputs: {
    reading: { symbol: 'r', label: 'what the indicator shows', unit: 'um', sd: 1 },
    angle: { symbol: 'A', label: 'angle between lever and face', unit: 'deg', sd: 3, least: 0, most: 60 },
  },
  results: {
    true_move: {
      symbol: 't',
      label: 'true movement',
      unit: 'um',
      formula: '{reading} × cos({angle})',
      plus: 'as the reading',
    },
    over: {
      symbol: 'o',
      label: 'it shows too much by',
      unit: 'um',
      formula: '{reading} × (1 − cos({angle}))',
      plus: 'as the reading',
    },
  },
  drawing: 'lever',
  source,
  example: { reading: 100, angle: 20 },
  note: 'Some tips are ground so that one stated angle needs nothing: look at its sheet. A reading of nothing is right at any angle.',
  of: (v) => ({ true_move: v.reading * cos(v.angle), over: v.reading * (1 - cos(v.angle)) }),
});

export const cosineLine = sum({
  name: 'cosine-line',
  group: 'angles and tapers',
  title: 'A scale that is not in line with the travel',
  question: 'How much too long does a travel read when its scale leans?',
  inputs: {
    travel: { symbol: 'L', label: 'travel', unit: 'mm', sd: 0, above: 0 },
    lean: { symbol: 'A', label: 'lean of the scale', unit: 'urad', sd: 100 },
  },
  results: {
    long: { symbol: 'e', label: 'it reads too long by', unit: 'um', formula: '{travel} × {lean}² / 2' },
  },
  drawing: 'cosine line',
  source: { text: 'first term of 1/cos A − 1', came: 'derived' },
  example: { travel: 500, lean: 1000 },
  of: (v) => ({ long: rise(v.lean, v.travel) * (v.lean / 1e6 / 2) }),
});
