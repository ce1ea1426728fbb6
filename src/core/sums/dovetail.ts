import { acot, cot, type SumInput, type SumSource, sum } from './sum.ts';

/** One pass of a micrometer over rolls: one sd 2 µm. */
const measured = (symbol: string, label: string): SumInput => ({
  symbol,
  label,
  unit: 'mm',
  sd: 0.002,
  above: 0,
});
const roll = (symbol: string, label: string): SumInput => ({
  symbol,
  label,
  unit: 'mm',
  sd: 0.0005,
  above: 0,
});
const angle: SumInput = {
  symbol: 'A',
  label: 'angle between flank and flat',
  unit: 'deg',
  sd: 1 / 60,
  least: 20,
  most: 80,
};

const source: SumSource = {
  text: 'Machinery’s Handbook, measuring dovetail slides: x = a + D(1 + cot(A/2)), y = b − D(1 + cot(A/2)); two pages that quote it',
  came: 'second hand',
};
const corners =
  'Widths are corner to corner at the sharp corners: the narrow root of a male dovetail, the wide floor of a female one.';

/** What a roll adds between its own corner and its far side, over its diameter. */
const reach = (deg: number): number => 1 + cot(deg / 2);

export const dovetailMale = sum({
  name: 'dovetail-male',
  group: 'dovetails and Vs',
  title: 'Male dovetail over rolls',
  question: 'What must a micrometer read over two rolls in a male dovetail?',
  inputs: {
    root: measured('a', 'width at the root, corner to corner'),
    roll: roll('D', 'diameter of each roll'),
    angle,
  },
  results: {
    over: {
      symbol: 'x',
      label: 'over the rolls',
      unit: 'mm',
      formula: '{root} + {roll} × (1 + cot({angle} / 2))',
    },
  },
  drawing: 'dovetail male',
  source,
  example: { root: 40, roll: 10, angle: 60 },
  note: corners,
  of: (v) => ({ over: v.root + v.roll * reach(v.angle) }),
});

export const dovetailMaleWidth = sum({
  name: 'dovetail-male-width',
  group: 'dovetails and Vs',
  title: 'Width of a male dovetail from its rolls',
  question: 'How wide is a male dovetail that reads this over two rolls?',
  inputs: { over: measured('x', 'read over the rolls'), roll: roll('D', 'diameter of each roll'), angle },
  results: {
    root: {
      symbol: 'a',
      label: 'width at the root, corner to corner',
      unit: 'mm',
      formula: '{over} − {roll} × (1 + cot({angle} / 2))',
    },
  },
  drawing: 'dovetail male',
  source,
  example: { over: 67.3205, roll: 10, angle: 60 },
  note: corners,
  of: (v) => ({ root: v.over - v.roll * reach(v.angle) }),
});

export const dovetailFemale = sum({
  name: 'dovetail-female',
  group: 'dovetails and Vs',
  title: 'Female dovetail between rolls',
  question: 'What must be measured between two rolls in a female dovetail?',
  inputs: {
    floor: measured('b', 'width of the floor, corner to corner'),
    roll: roll('D', 'diameter of each roll'),
    angle,
  },
  results: {
    between: {
      symbol: 'y',
      label: 'between the rolls',
      unit: 'mm',
      formula: '{floor} − {roll} × (1 + cot({angle} / 2))',
    },
  },
  drawing: 'dovetail female',
  source,
  example: { floor: 100, roll: 12, angle: 60 },
  note: corners,
  fits: (v) =>
    v.floor > v.roll * reach(v.angle)
      ? undefined
      : { key: 'roll', expected: 'rolls that leave a space between them on this floor' },
  of: (v) => ({ between: v.floor - v.roll * reach(v.angle) }),
});

export const dovetailFemaleWidth = sum({
  name: 'dovetail-female-width',
  group: 'dovetails and Vs',
  title: 'Width of a female dovetail from its rolls',
  question: 'How wide is a female dovetail that measures this between two rolls?',
  inputs: {
    between: measured('y', 'measured between the rolls'),
    roll: roll('D', 'diameter of each roll'),
    angle,
  },
  results: {
    floor: {
      symbol: 'b',
      label: 'width of the floor, corner to corner',
      unit: 'mm',
      formula: '{between} + {roll} × (1 + cot({angle} / 2))',
    },
  },
  drawing: 'dovetail female',
  source,
  example: { between: 67.2154, roll: 12, angle: 60 },
  note: corners,
  of: (v) => ({ floor: v.between + v.roll * reach(v.angle) }),
});

export const dovetailAngle = sum({
  name: 'dovetail-angle',
  group: 'dovetails and Vs',
  title: 'Angle of a dovetail from two sizes of roll',
  question: 'What is the angle of a male dovetail, and how wide is its root?',
  inputs: {
    over_small: measured('x₁', 'read over the small rolls'),
    over_large: measured('x₂', 'read over the large rolls'),
    small: roll('D₁', 'diameter of the small rolls'),
    large: roll('D₂', 'diameter of the large rolls'),
  },
  results: {
    angle: {
      symbol: 'A',
      label: 'angle between flank and flat',
      unit: 'deg',
      formula: '2 acot(({over_large} − {over_small}) / ({large} − {small}) − 1)',
    },
    root: {
      symbol: 'a',
      label: 'width at the root, corner to corner',
      unit: 'mm',
      formula: '{over_small} − {small} × ({over_large} − {over_small}) / ({large} − {small})',
    },
  },
  drawing: 'dovetail two rolls',
  source: {
    text: 'the same rule for two sizes of roll, seen on a workshop page of 29 July 2009',
    came: 'seen',
  },
  example: { over_small: 63.367857, over_large: 86.735714, small: 8, large: 16 },
  fits: (v) => {
    if (!(v.large > v.small)) return { key: 'large', expected: 'rolls larger than the small ones' };
    const steep = (v.over_large - v.over_small) / (v.large - v.small) - 1;
    return steep > 0
      ? undefined
      : {
          key: 'over_large',
          expected: 'more over the large rolls than over the small ones, by more than the rolls differ',
        };
  },
  of: (v) => {
    const ratio = (v.over_large - v.over_small) / (v.large - v.small);
    return { angle: 2 * acot(ratio - 1), root: v.over_small - v.small * ratio };
  },
});

export const dovetailHeight = sum({
  name: 'dovetail-height',
  group: 'dovetails and Vs',
  title: 'Wide and narrow width of a dovetail',
  question: 'How much wider is a dovetail at the top than at its root?',
  inputs: {
    root: measured('a', 'width at the root, corner to corner'),
    height: { symbol: 'h', label: 'height of the flanks', unit: 'mm', sd: 0.01, above: 0 },
    angle,
  },
  results: {
    lean: { symbol: 'c', label: 'lean of one flank', unit: 'mm', formula: '{height} × cot({angle})' },
    wide: { symbol: 'w', label: 'width at the wide corners', unit: 'mm', formula: '{root} + 2 × {lean}' },
  },
  drawing: 'dovetail height',
  source,
  example: { root: 40, height: 20, angle: 60 },
  of: (v) => {
    const lean = v.height * cot(v.angle);
    return { lean, wide: v.root + 2 * lean };
  },
});
