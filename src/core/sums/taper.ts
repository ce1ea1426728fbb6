import { atan, cos, type SumInput, sin, sum } from './sum.ts';

const taper: SumInput = {
  symbol: 'k',
  label: 'taper, thickness over length',
  unit: 'ratio',
  sd: 0,
  above: 0,
  most: 0.5,
};
const source = {
  text: 'definition; the angles of tapers per foot are those of handbook tables',
  came: 'from memory',
} as const;

export const taperAngle = sum({
  name: 'taper',
  group: 'angles and tapers',
  title: 'Taper to angle',
  question: 'What angle is a taper of so much in so much?',
  inputs: { taper: { ...taper, label: 'taper, on the diameter or thickness over length' } },
  results: {
    included: {
      symbol: 'A',
      label: 'included angle, both sides sloping alike',
      unit: 'deg',
      formula: '2 atan({taper} / 2)',
    },
    one_side: {
      symbol: 'B',
      label: 'angle when one side only slopes, as a gib',
      unit: 'deg',
      formula: 'atan({taper})',
    },
  },
  drawing: 'taper',
  source,
  example: { taper: 1 / 48 },
  of: (v) => ({ included: 2 * atan(v.taper / 2), one_side: atan(v.taper) }),
});

const flank: SumInput = {
  symbol: 'A',
  label: 'angle of the dovetail between flank and flat',
  unit: 'deg',
  sd: 0.1,
  preset: 60,
  least: 30,
  most: 90,
};

export const gibMove = sum({
  name: 'gib',
  group: 'angles and tapers',
  title: 'Taper gib: how far to push it in',
  question: 'How far must a taper gib go in to take up a clearance?',
  inputs: {
    taper,
    clearance: { symbol: 'c', label: 'clearance to take up, square to the gib', unit: 'um', sd: 3, least: 0 },
  },
  results: {
    move: { symbol: 'm', label: 'the gib goes in', unit: 'mm', formula: '{clearance} / {taper}' },
  },
  drawing: 'gib',
  source,
  example: { taper: 1 / 50, clearance: 30 },
  of: (v) => ({ move: v.clearance / 1000 / v.taper }),
});

export const gibPlay = sum({
  name: 'gib-play',
  group: 'angles and tapers',
  title: 'Taper gib: what a movement does to the play',
  question: 'How much play does a gib take up when it is pushed in?',
  inputs: { taper, move: { symbol: 'm', label: 'the gib goes in', unit: 'mm', sd: 0.2 }, angle: flank },
  results: {
    closer: {
      symbol: 'n',
      label: 'clearance taken up, square to the gib',
      unit: 'um',
      formula: '{move} × {taper}',
    },
    across: {
      symbol: 'p',
      label: 'play taken up across the way',
      unit: 'um',
      formula: '{closer} / sin({angle})',
    },
    lift: {
      symbol: 'q',
      label: 'play taken up against lifting',
      unit: 'um',
      formula: '{closer} / cos({angle})',
    },
  },
  drawing: 'gib',
  source,
  example: { taper: 1 / 60, move: 12, angle: 60 },
  fits: (v) => (v.angle < 89 ? undefined : { key: 'angle', expected: 'a flank that leans: below 89°' }),
  of: (v) => {
    const closer = v.move * v.taper * 1000;
    return { closer, across: closer / sin(v.angle), lift: closer / cos(v.angle) };
  },
});
