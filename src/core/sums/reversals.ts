import { slope } from '../body/displacement.ts';
import { endsTurned, halves, threeAtOnce } from '../kit/reversal.ts';
import { type SumInput, sum } from './sum.ts';

const source = {
  text: 'C. J. Evans, R. J. Hocken, W. T. Estler, Self-calibration: reversal, redundancy, error separation, CIRP Annals 45(2), 1996, 617–634; the rule for a level also seen',
  came: 'from memory',
} as const;
const fall = (symbol: string, label: string): SumInput => ({ symbol, label, unit: 'um', sd: 1 });
const length: SumInput = { symbol: 'L', label: 'length of the sweep', unit: 'mm', sd: 0.5, above: 0 };

export const squareTwoSides = sum({
  name: 'square-two-sides',
  group: 'reversals',
  title: 'Square swept on both sides',
  question: 'How much of what was swept is the machine, and how much the square?',
  inputs: {
    as_it_stands: fall('r₁', 'reading far less near, square as it stands'),
    turned: fall('r₂', 'reading far less near, square turned over, the same face of the machine'),
    length,
  },
  results: {
    machine_um: {
      symbol: 'M',
      label: 'the machine, over the sweep',
      unit: 'um',
      formula: '({as_it_stands} + {turned}) / 2',
      plus: 'as the reading',
    },
    square_um: {
      symbol: 'S',
      label: 'the square, over the sweep',
      unit: 'um',
      formula: '({as_it_stands} − {turned}) / 2',
      plus: 'as the first reading',
    },
    machine: {
      symbol: 'μ',
      label: 'the machine',
      unit: 'urad',
      formula: '{machine_um} / {length}',
      plus: 'as the reading',
    },
    square: {
      symbol: 'σ',
      label: 'the square',
      unit: 'urad',
      formula: '{square_um} / {length}',
      plus: 'as the first reading',
    },
  },
  drawing: 'square two sides',
  source,
  example: { as_it_stands: 18, turned: -6, length: 300 },
  note: 'Count both readings plus the same way in space: where the indicator changes sides, its second reading changes its sign.',
  of: (v) => {
    const { kept, turned } = halves(v.as_it_stands, v.turned);
    return {
      machine_um: kept,
      square_um: turned,
      machine: slope(kept, v.length),
      square: slope(turned, v.length),
    };
  },
});

export const levelTurned = sum({
  name: 'level-turned',
  group: 'reversals',
  title: 'Level turned end for end',
  question: 'How far out is the surface, and how far the level’s own zero?',
  inputs: {
    first: {
      symbol: 'a',
      label: 'first reading; plus: the bubble goes to the far end',
      unit: 'divisions',
      sd: 0.1,
    },
    turned: {
      symbol: 'b',
      label: 'reading after turning, still plus towards the same far end',
      unit: 'divisions',
      sd: 0.1,
    },
    sensitivity: { symbol: 's', label: 'what one division is', unit: 'urad', sd: 0, above: 0 },
  },
  results: {
    surface: {
      symbol: 'M',
      label: 'the surface',
      unit: 'urad',
      formula: '({first} + {turned}) / 2 × {sensitivity}',
      plus: 'far end high',
    },
    zero: {
      symbol: 'Z',
      label: 'the level’s own zero',
      unit: 'divisions',
      formula: '({first} − {turned}) / 2',
      plus: 'as in the first reading',
    },
  },
  drawing: 'level turned',
  source,
  example: { first: 3, turned: -1, sensitivity: 20 },
  note: 'Read against the level’s own body instead of the machine, sum and difference change places.',
  of: (v) => {
    const { kept, turned } = endsTurned(v.first, v.turned);
    return { surface: kept * v.sensitivity, zero: turned };
  },
});

export const barTurned = sum({
  name: 'test-bar-turned',
  group: 'reversals',
  title: 'Test bar turned half round in its spindle',
  question: 'How far out is the spindle’s axis, and how far the bar in its seat?',
  inputs: {
    first: fall('r₁', 'reading far less near, spindle as it is'),
    turned: fall('r₂', 'reading far less near, spindle turned half round'),
    length: { ...length, label: 'between the two readings' },
    sag: {
      symbol: 'y',
      label: 'sag of the bar between them, if read from above or below',
      unit: 'um',
      sd: 0,
      preset: 0,
      least: 0,
    },
  },
  results: {
    axis_um: {
      symbol: 'M',
      label: 'the axis, over that length',
      unit: 'um',
      formula: '({first} + {turned}) / 2 + {sag}',
      plus: 'as the reading',
    },
    bar_um: {
      symbol: 'S',
      label: 'bar and seat, over that length',
      unit: 'um',
      formula: '({first} − {turned}) / 2',
      plus: 'as the first reading',
    },
    axis: {
      symbol: 'μ',
      label: 'the axis',
      unit: 'urad',
      formula: '{axis_um} / {length}',
      plus: 'as the reading',
    },
  },
  drawing: 'bar turned',
  source,
  example: { first: 18, turned: -6, length: 300, sag: 0 },
  note: 'Sag is added as for an indicator on top of the bar, where plus is rising: give 0 for a reading from the side.',
  of: (v) => {
    const { kept, turned } = halves(v.first, v.turned);
    const axis_um = kept + v.sag;
    return { axis_um, bar_um: turned, axis: slope(axis_um, v.length) };
  },
});

export const edgeTurned = sum({
  name: 'straightedge-turned',
  group: 'reversals',
  title: 'Straightedge turned over, at one place',
  question: 'At this place, how much is the way and how much the straightedge?',
  inputs: {
    first: fall('r₁', 'reading against the line through its ends, as it lies'),
    turned: fall('r₂', 'the same place with the straightedge turned over'),
  },
  results: {
    way: {
      symbol: 'M',
      label: 'the way',
      unit: 'um',
      formula: '({first} + {turned}) / 2',
      plus: 'as the reading',
    },
    edge: {
      symbol: 'S',
      label: 'the straightedge',
      unit: 'um',
      formula: '({first} − {turned}) / 2',
      plus: 'as the first reading',
    },
  },
  drawing: 'edge turned',
  source,
  example: { first: 6, turned: -4 },
  note: 'The tilt of the straightedge is not found by turning it over: take both readings from the line through the ends, plus the same way in space.',
  of: (v) => {
    const { kept, turned } = halves(v.first, v.turned);
    return { way: kept, edge: turned };
  },
});

export const parallels = sum({
  name: 'parallels',
  group: 'reversals',
  title: 'Two parallels changed over',
  question: 'Are the surfaces out, or the parallels unlike?',
  inputs: {
    first: fall('r₁', 'second place higher than the first by'),
    changed: fall('r₂', 'the same with the two parallels changed over'),
    apart: { symbol: 'L', label: 'between the two places', unit: 'mm', sd: 0.5, above: 0 },
  },
  results: {
    surface_um: {
      symbol: 'M',
      label: 'the surfaces: second place higher by',
      unit: 'um',
      formula: '({first} + {changed}) / 2',
      plus: 'second place high',
    },
    pair: {
      symbol: 'S',
      label: 'the parallel that stood second at first is taller by',
      unit: 'um',
      formula: '({first} − {changed}) / 2',
      plus: 'taller',
    },
    surface: {
      symbol: 'μ',
      label: 'the surfaces, as a slope',
      unit: 'urad',
      formula: '{surface_um} / {apart}',
      plus: 'second place high',
    },
  },
  drawing: 'parallels',
  source,
  example: { first: 7, changed: 3, apart: 250 },
  of: (v) => {
    const { kept, turned } = halves(v.first, v.changed);
    return { surface_um: kept, pair: turned, surface: slope(kept, v.apart) };
  },
});

export const threeSquares = sum({
  name: 'three-squares',
  group: 'reversals',
  title: 'Three squares against one another',
  question: 'What is each of three squares out by, when only pairs can be seen?',
  inputs: {
    a_b: fall('p', 'gap of A against B, over the length'),
    b_c: fall('q', 'gap of B against C, over the length'),
    a_c: fall('r', 'gap of A against C, over the length'),
    length,
  },
  results: {
    a: { symbol: 'A', label: 'square A', unit: 'um', formula: '({a_b} + {a_c} − {b_c}) / 2', plus: 'opens' },
    b: { symbol: 'B', label: 'square B', unit: 'um', formula: '({a_b} + {b_c} − {a_c}) / 2', plus: 'opens' },
    c: { symbol: 'C', label: 'square C', unit: 'um', formula: '({b_c} + {a_c} − {a_b}) / 2', plus: 'opens' },
    worst: {
      symbol: 'a',
      label: 'square A, as a slope',
      unit: 'urad',
      formula: '{a} / {length}',
      plus: 'opens',
    },
  },
  drawing: 'three squares',
  source,
  example: { a_b: 8, b_c: 2, a_c: 4, length: 200 },
  note: 'The same holds for three straightedges at one place.',
  of: (v) => {
    const [a, b, c] = threeAtOnce(v.a_b, v.b_c, v.a_c);
    return { a, b, c, worst: slope(a, v.length) };
  },
});
