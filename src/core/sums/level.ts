import { rise, slope } from '../body/displacement.ts';
import { type SumInput, sum } from './sum.ts';

const base: SumInput = { symbol: 'L', label: 'distance between its feet', unit: 'mm', sd: 0.2, above: 0 };
const source = {
  text: 'definition: 1 µrad is 1 µm in 1 m; a 0.02 mm/m level over 200 mm is 0.004 mm, seen in a machine builder’s thread',
  came: 'seen',
} as const;

export const levelHeight = sum({
  name: 'level',
  group: 'angles and tapers',
  title: 'Level to height',
  question: 'How much higher is one foot of the level than the other?',
  inputs: {
    reading: { symbol: 'n', label: 'reading', unit: 'divisions', sd: 0.1 },
    sensitivity: { symbol: 's', label: 'what one division is', unit: 'urad', sd: 0, above: 0 },
    base,
  },
  results: {
    tilt: {
      symbol: 'A',
      label: 'tilt',
      unit: 'urad',
      formula: '{reading} × {sensitivity}',
      plus: 'the end the bubble went to is high',
    },
    height: {
      symbol: 'h',
      label: 'height over the base',
      unit: 'um',
      formula: '{tilt} × {base}',
      plus: 'the end the bubble went to is high',
    },
  },
  drawing: 'level',
  source,
  example: { reading: 1, sensitivity: 20, base: 200 },
  of: (v) => {
    const tilt = v.reading * v.sensitivity;
    return { tilt, height: rise(tilt, v.base) };
  },
});

export const angleHeight = sum({
  name: 'angle-height',
  group: 'angles and tapers',
  title: 'Seconds of arc to a height over a base',
  question: 'How much does an angle lift the end of a base?',
  inputs: { angle: { symbol: 'A', label: 'angle, as 4 arcsec', unit: 'urad', sd: 0 }, base },
  results: {
    height: {
      symbol: 'h',
      label: 'height over the base',
      unit: 'um',
      formula: '{angle} × {base}',
      plus: 'the angle’s plus end is high',
    },
  },
  drawing: 'level',
  source: { text: 'definition: 1 arcsec = π/648000 rad', came: 'derived' },
  example: { angle: (Math.PI / 648_000) * 1e6, base: 100 },
  note: 'The rule of 0.5 µm for a second over 100 mm is 3 % too much.',
  of: (v) => ({ height: rise(v.angle, v.base) }),
});

export const heightAngle = sum({
  name: 'height-angle',
  group: 'angles and tapers',
  title: 'Height over a base to an angle',
  question: 'What angle is so much in so much?',
  inputs: { height: { symbol: 'h', label: 'height over the base', unit: 'um', sd: 1 }, base },
  results: {
    angle: {
      symbol: 'A',
      label: 'angle',
      unit: 'urad',
      formula: '{height} / {base}',
      plus: 'the end that is high by plus',
    },
  },
  drawing: 'level',
  source,
  example: { height: 4, base: 200 },
  of: (v) => ({ angle: slope(v.height, v.base) }),
});
