import { asin, cos, type SumInput, sin, sum } from './sum.ts';

const roll = (symbol: string, label: string): SumInput => ({
  symbol,
  label,
  unit: 'mm',
  sd: 0.0005,
  above: 0,
});
const geometry = {
  text: 'a circle that touches both flanks: its middle stands R / sin(half the angle) above the corner',
  came: 'derived',
} as const;

export const vOverRoll = sum({
  name: 'v-over-roll',
  group: 'dovetails and Vs',
  title: 'V-way over a roll',
  question: 'How high does a roll stand in a V?',
  inputs: {
    angle: { symbol: 'V', label: 'included angle of the V', unit: 'deg', sd: 1 / 60, least: 30, most: 150 },
    roll: roll('D', 'diameter of the roll'),
  },
  results: {
    middle: {
      symbol: 'm',
      label: 'middle of the roll above the sharp corner',
      unit: 'mm',
      formula: '({roll} / 2) / sin({angle} / 2)',
    },
    top: {
      symbol: 't',
      label: 'top of the roll above the sharp corner',
      unit: 'mm',
      formula: '{middle} + {roll} / 2',
    },
  },
  drawing: 'v over roll',
  source: geometry,
  example: { angle: 90, roll: 20 },
  of: (v) => {
    const middle = v.roll / 2 / sin(v.angle / 2);
    return { middle, top: middle + v.roll / 2 };
  },
});

export const vAngle = sum({
  name: 'v-angle',
  group: 'dovetails and Vs',
  title: 'Angle of a V from two rolls',
  question: 'What is the included angle of a V-way?',
  inputs: {
    small: roll('D₁', 'diameter of the small roll'),
    large: roll('D₂', 'diameter of the large roll'),
    top_small: { symbol: 'H₁', label: 'height to the top of the small roll', unit: 'mm', sd: 0.002 },
    top_large: {
      symbol: 'H₂',
      label: 'height to the top of the large roll, from the same place',
      unit: 'mm',
      sd: 0.002,
    },
  },
  results: {
    angle: {
      symbol: 'V',
      label: 'included angle of the V',
      unit: 'deg',
      formula: '2 asin(({large} − {small}) / (2 ({top_large} − {top_small}) − ({large} − {small})))',
    },
  },
  drawing: 'v two rolls',
  source: geometry,
  example: { small: 20, large: 40, top_small: 24.142136, top_large: 48.284271 },
  fits: (v) => {
    if (!(v.large > v.small)) return { key: 'large', expected: 'a roll larger than the small one' };
    return v.top_large - v.top_small > v.large - v.small
      ? undefined
      : { key: 'top_large', expected: 'a top that stands higher by more than the rolls differ' };
  },
  of: (v) => {
    const wider = v.large - v.small;
    return { angle: 2 * asin(wider / (2 * (v.top_large - v.top_small) - wider)) };
  },
});

/** Metal off a flank: a scraper's own doubt of it, one sd. */
const off = (symbol: string, label: string): SumInput => ({ symbol, label, unit: 'um', sd: 1 });
const lean = (symbol: string, label: string): SumInput => ({
  symbol,
  label,
  unit: 'deg',
  sd: 1 / 60,
  preset: 45,
  least: 5,
  most: 85,
});

export const vDrop = sum({
  name: 'v-drop',
  group: 'dovetails and Vs',
  title: 'Metal off the flanks of a V',
  question: 'How far does a slide sink, and which way does it go, when metal comes off its flanks?',
  inputs: {
    first_lean: lean('θ₁', 'angle of the first flank to the horizontal'),
    second_lean: lean('θ₂', 'angle of the second flank to the horizontal'),
    first_off: off('n₁', 'metal off the first flank, square to it'),
    second_off: off('n₂', 'metal off the second flank, square to it'),
  },
  results: {
    down: {
      symbol: 'd',
      label: 'the slide sinks',
      unit: 'um',
      formula:
        '({first_off} sin({second_lean}) + {second_off} sin({first_lean})) / sin({first_lean} + {second_lean})',
      plus: 'down',
    },
    aside: {
      symbol: 's',
      label: 'the slide goes aside',
      unit: 'um',
      formula:
        '({first_off} cos({second_lean}) − {second_off} cos({first_lean})) / sin({first_lean} + {second_lean})',
      plus: 'closing on the first flank: over a ridge it goes away from that flank’s side, in a groove towards it',
    },
  },
  drawing: 'v flanks',
  source: {
    text: 'both flanks closed up again: n₁ and n₂ are the movement along each flank’s normal',
    came: 'derived',
  },
  example: { first_lean: 70, second_lean: 20, first_off: 10, second_off: 10 },
  fits: (v) =>
    v.first_lean + v.second_lean < 170
      ? undefined
      : { key: 'second_lean', expected: 'flanks that are not nearly in line' },
  of: (v) => {
    const both = sin(v.first_lean + v.second_lean);
    return {
      down: (v.first_off * sin(v.second_lean) + v.second_off * sin(v.first_lean)) / both,
      aside: (v.first_off * cos(v.second_lean) - v.second_off * cos(v.first_lean)) / both,
    };
  },
});
