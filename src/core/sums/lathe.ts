import { rise } from '../body/displacement.ts';
import { type SumInput, sum } from './sum.ts';

const geometry = { text: 'trade geometry of the lathe', came: 'derived' } as const;
const length = (symbol: string, label: string): SumInput => ({
  symbol,
  label,
  unit: 'mm',
  sd: 0.5,
  above: 0,
});

export const facing = sum({
  name: 'facing',
  group: 'the lathe',
  title: 'Concavity of a faced disc',
  question: 'How hollow does a lathe face when its cross slide is out of square?',
  inputs: {
    square: {
      symbol: 'ε',
      label: 'cross travel out of square to the spindle; plus goes to the headstock on the way in',
      unit: 'urad',
      sd: 5,
    },
    diameter: length('D', 'diameter of the disc'),
  },
  results: {
    hollow: {
      symbol: 'f',
      label: 'the middle lies deeper than the rim by',
      unit: 'um',
      formula: '{square} × {diameter} / 2',
      plus: 'concave',
    },
    felt: {
      symbol: 'r',
      label: 'an indicator drawn right across the disc on the same slide reads',
      unit: 'um',
      formula: '2 × {hollow}',
      plus: 'concave',
    },
  },
  drawing: 'facing',
  source: geometry,
  example: { square: 40, diameter: 300 },
  note: 'An indicator on the cross slide sees nothing on the side the tool cut; carried on over the middle to the far rim, it sees twice the depth.',
  of: (v) => {
    const hollow = rise(v.square, v.diameter / 2);
    return { hollow, felt: 2 * hollow };
  },
});

export const headstockTaper = sum({
  name: 'headstock-taper',
  group: 'the lathe',
  title: 'Taper from the headstock and from twist',
  question: 'What taper does a bar held in the chuck alone turn to?',
  inputs: {
    swivel: {
      symbol: 'φ',
      label: 'spindle axis to the travel, seen from above; plus: its free end leans to the tool',
      unit: 'urad',
      sd: 5,
    },
    between: length('l', 'between the two collars'),
    twist: {
      symbol: 'γ',
      label: 'twist of the ways from the first collar to the second; plus: front rises',
      unit: 'urad',
      sd: 0,
      preset: 0,
    },
    height: { symbol: 'H', label: 'tool point above the ways', unit: 'mm', sd: 2, preset: 0, least: 0 },
  },
  results: {
    by_axis: {
      symbol: 'd₁',
      label: 'from the axis: larger at the chuck by',
      unit: 'um',
      formula: '2 × {swivel} × {between}',
      plus: 'larger at the chuck',
    },
    by_twist: {
      symbol: 'd₂',
      label: 'from twist: larger at the chuck by',
      unit: 'um',
      formula: '2 × {height} × {twist}',
      plus: 'larger at the chuck',
    },
    taper: {
      symbol: 'd',
      label: 'diameter larger at the chuck by',
      unit: 'um',
      formula: '{by_axis} + {by_twist}',
      plus: 'larger at the chuck',
    },
  },
  drawing: 'headstock taper',
  source: geometry,
  example: { swivel: 30, between: 300, twist: 0, height: 150 },
  note: 'One turned bar cannot tell axis from twist: level first. The cut’s own push makes the free end larger.',
  of: (v) => {
    const by_axis = 2 * rise(v.swivel, v.between);
    const by_twist = 2 * rise(v.twist, v.height);
    return { by_axis, by_twist, taper: by_axis + by_twist };
  },
});

export const tailstockTaper = sum({
  name: 'tailstock-taper',
  group: 'the lathe',
  title: 'Taper from the tailstock',
  question: 'What taper does a tailstock that is out sideways turn, and how far must it move?',
  inputs: {
    out: { symbol: 't', label: 'tailstock centre out sideways; plus: towards the tool', unit: 'um', sd: 2 },
    centres: length('L', 'between the centres'),
    turned: length('l', 'length between the two places measured'),
  },
  results: {
    taper: {
      symbol: 'd',
      label: 'diameter larger at the headstock by',
      unit: 'um',
      formula: '2 × {out} × {turned} / {centres}',
      plus: 'larger at the headstock',
    },
  },
  drawing: 'tailstock taper',
  source: geometry,
  example: { out: 20, centres: 500, turned: 300 },
  note: 'A tailstock that is high or low changes the diameter in the second order only.',
  fits: (v) =>
    v.turned <= v.centres ? undefined : { key: 'turned', expected: 'at most the length between the centres' },
  of: (v) => ({ taper: (2 * v.out * v.turned) / v.centres }),
});

export const tailstockOut = sum({
  name: 'tailstock-out',
  group: 'the lathe',
  title: 'Where the tailstock stands, from a turned bar',
  question: 'How far, and which way, must the tailstock move?',
  inputs: {
    head: { symbol: 'D₁', label: 'diameter near the headstock', unit: 'mm', sd: 0.001, above: 0 },
    tail: { symbol: 'D₂', label: 'diameter near the tailstock', unit: 'mm', sd: 0.001, above: 0 },
    centres: length('L', 'between the centres'),
    turned: length('l', 'length between the two places measured'),
  },
  results: {
    move: {
      symbol: 'm',
      label: 'move the tailstock away from the tool by',
      unit: 'um',
      formula: '({head} − {tail}) × {centres} / (2 × {turned})',
      plus: 'away from the tool',
    },
  },
  drawing: 'tailstock taper',
  source: geometry,
  example: { head: 40.012, tail: 39.988, centres: 500, turned: 300 },
  fits: (v) =>
    v.turned <= v.centres ? undefined : { key: 'turned', expected: 'at most the length between the centres' },
  of: (v) => ({ move: (500 * (v.head - v.tail) * v.centres) / v.turned }),
});
