import { growth, thermalBow } from '../kit/temperature.ts';
import { type SumInput, sum } from './sum.ts';

const expansion: SumInput = {
  symbol: 'α',
  label: 'expansion',
  unit: 'um_mK',
  sd: 0.5,
  preset: 11.5,
  above: 0,
  material: 'expansion_um_mK',
};

export const bow = sum({
  name: 'thermal-bow',
  group: 'sag and warmth',
  title: 'Bow of a bed or straightedge that is warmer on top',
  question: 'How far does warmth on one side bend it?',
  inputs: {
    length: { symbol: 'L', label: 'length', unit: 'mm', sd: 1, above: 0 },
    depth: { symbol: 'h', label: 'depth', unit: 'mm', sd: 1, above: 0 },
    warmer: {
      symbol: 'ΔT',
      label: 'top warmer than the underside by',
      unit: 'K',
      sd: 0.2,
      least: -50,
      most: 50,
    },
    expansion,
  },
  results: {
    bow: {
      symbol: 'd',
      label: 'the middle stands up',
      unit: 'um',
      formula: '{expansion} × {length}² × {warmer} / (8 × {depth})',
      plus: 'up',
    },
  },
  drawing: 'bow',
  source: {
    text: 'an even change of warmth through the depth bends a free bar to a circle',
    came: 'from memory',
  },
  example: { length: 2000, depth: 400, warmer: 1, expansion: 10.5 },
  note: 'Free to bend: a bed that is bolted down bends less and strains.',
  of: (v) => ({ bow: thermalBow(v.expansion, v.length, v.depth, v.warmer) }),
});

export const grow = sum({
  name: 'thermal-growth',
  group: 'sag and warmth',
  title: 'Growth of a length with warmth',
  question: 'How much longer does it get, and how much of that does a reference of another material hide?',
  inputs: {
    length: { symbol: 'L', label: 'length', unit: 'mm', sd: 0.5, above: 0 },
    warmer: { symbol: 'ΔT', label: 'warmer than 20 °C by', unit: 'K', sd: 0.2, least: -50, most: 50 },
    expansion,
    other: {
      ...expansion,
      symbol: 'β',
      label: 'expansion of the reference beside it',
      preset: 0,
      sd: 0,
      above: -1,
    },
  },
  results: {
    growth: {
      symbol: 'g',
      label: 'longer by',
      unit: 'um',
      formula: '{expansion} × {length} × {warmer}',
      plus: 'longer',
    },
    apart: {
      symbol: 'a',
      label: 'longer than the reference by',
      unit: 'um',
      formula: '({expansion} − {other}) × {length} × {warmer}',
      plus: 'longer',
    },
  },
  drawing: 'growth',
  source: {
    text: 'definition; expansions of cast iron 10.8, steel 11.5 and granite 7.9 µm per m and K seen in makers’ tables',
    came: 'seen',
  },
  example: { length: 1000, warmer: 1, expansion: 10.8, other: 11.5 },
  of: (v) => ({
    growth: growth(v.expansion, v.length, v.warmer),
    apart: growth(v.expansion - v.other, v.length, v.warmer),
  }),
});
