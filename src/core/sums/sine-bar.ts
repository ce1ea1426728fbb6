import { asin, sin, sum } from './sum.ts';

const length = {
  symbol: 'L',
  label: 'length of the bar between its rolls',
  unit: 'mm',
  sd: 0.001,
  above: 0,
} as const;
const source = {
  text: 'definition of the sine; 5 in bar at 27° is 2.270 in, seen on a gauge maker’s page',
  came: 'seen',
} as const;

export const sineBar = sum({
  name: 'sine-bar',
  group: 'angles and tapers',
  title: 'Stack for a sine bar',
  question: 'What stack of gauge blocks sets a sine bar to an angle?',
  inputs: { length, angle: { symbol: 'A', label: 'angle wanted', unit: 'deg', sd: 0, above: 0, most: 60 } },
  results: {
    stack: { symbol: 'h', label: 'stack under one roll', unit: 'mm', formula: '{length} × sin({angle})' },
  },
  drawing: 'sine bar',
  source,
  example: { length: 127, angle: 27 },
  of: (v) => ({ stack: v.length * sin(v.angle) }),
});

export const sineBarAngle = sum({
  name: 'sine-bar-angle',
  group: 'angles and tapers',
  title: 'Angle of a sine bar',
  question: 'What angle does a sine bar stand at on this stack?',
  inputs: { length, stack: { symbol: 'h', label: 'stack under one roll', unit: 'mm', sd: 0.0005, above: 0 } },
  results: { angle: { symbol: 'A', label: 'angle', unit: 'deg', formula: 'asin({stack} / {length})' } },
  drawing: 'sine bar',
  source,
  example: { length: 127, stack: 63.5 },
  note: 'Above 45° a small error of the stack turns the bar much: prefer the other angle.',
  fits: (v) =>
    v.stack < 0.995 * v.length ? undefined : { key: 'stack', expected: 'a stack shorter than the bar' },
  of: (v) => ({ angle: asin(v.stack / v.length) }),
});
