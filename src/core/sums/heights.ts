import { cos, type SumInput, sum, tan } from './sum.ts';

const mm = (symbol: string, label: string, sd: number, more: Partial<SumInput> = {}): SumInput => ({
  symbol,
  label,
  unit: 'mm',
  sd,
  ...more,
});
const practice = { text: 'trade arithmetic of liners and height', came: 'common practice' } as const;

export const liner = sum({
  name: 'liner',
  group: 'heights',
  title: 'Liner: how deep to mill',
  question: 'How much must come off under a liner so that the slide ends at its height?',
  inputs: {
    raise: mm('T', 'the slide must rise, straight up', 0.01),
    sheet: mm('t', 'thickness of the sheet', 0.01, { above: 0 }),
    bond: mm('g', 'bond line under it', 0.025, { preset: 0.1, least: 0 }),
    allowance: mm('a', 'left on for machining and scraping', 0, { preset: 0.1, least: 0 }),
    lean: {
      symbol: 'θ',
      label: 'angle of the face to the horizontal: 0 flat, 45 a V’s flank',
      unit: 'deg',
      sd: 0,
      preset: 0,
      least: 0,
      most: 80,
    },
  },
  results: {
    mill: {
      symbol: 'm',
      label: 'mill off, square to the face',
      unit: 'mm',
      formula: '{sheet} + {bond} − {allowance} − {raise} × cos({lean})',
      plus: 'take off; minus: pack with metal, or a thicker sheet',
    },
    left: {
      symbol: 'f',
      label: 'liner left when it is finished',
      unit: 'mm',
      formula: '{sheet} − {allowance}',
    },
  },
  drawing: 'liner',
  source: practice,
  example: { raise: 0.5, sheet: 1.6, bond: 0.1, allowance: 0.1, lean: 0 },
  note: 'Keep at least 0.5 mm of liner, or half the sheet if that is more (common practice).',
  fits: (v) => (v.allowance < v.sheet ? undefined : { key: 'allowance', expected: 'less than the sheet' }),
  of: (v) => ({ mill: v.sheet + v.bond - v.allowance - v.raise * cos(v.lean), left: v.sheet - v.allowance }),
});

export const lostHeight = sum({
  name: 'lost-height',
  group: 'heights',
  title: 'Height a saddle has lost',
  question: 'How far down has the saddle come, and what does the rack’s mesh feel of it?',
  inputs: {
    bed: mm('b', 'taken off the bed, straight down', 0.01, { least: 0 }),
    saddle: mm('w', 'worn off the saddle’s underside', 0.01, { preset: 0, least: 0 }),
    clean: mm('c', 'to be taken off the saddle to clean it up', 0.01, { preset: 0, least: 0 }),
    over: mm('o', 'to be left higher, for bedding in', 0, { preset: 0, least: -1 }),
    pressure: {
      symbol: 'A',
      label: 'pressure angle of the rack',
      unit: 'deg',
      sd: 0,
      preset: 20,
      least: 10,
      most: 30,
    },
  },
  results: {
    raise: {
      symbol: 'T',
      label: 'the saddle must rise',
      unit: 'mm',
      formula: '{bed} + {saddle} + {clean} + {over}',
      plus: 'up',
    },
    backlash: {
      symbol: 'p',
      label: 'backlash the rack gains until then',
      unit: 'mm',
      formula: '2 × ({bed} + {saddle} + {clean}) × tan({pressure})',
    },
  },
  drawing: 'lost height',
  source: practice,
  example: { bed: 0.3, saddle: 0.15, clean: 0.05, over: 0.03, pressure: 20 },
  note: 'Measure it instead where you can: half nut closed on an unworn part of the leadscrew, height of the screw at its brackets against the half nut. A rack whose teeth face down.',
  of: (v) => {
    const down = v.bed + v.saddle + v.clean;
    return { raise: down + v.over, backlash: 2 * down * tan(v.pressure) };
  },
});

export const stack = sum({
  name: 'stack',
  group: 'heights',
  title: 'Liner and shim stack-up',
  question: 'What shim is still wanted, or what is still too much?',
  inputs: {
    space: mm('T', 'space to fill', 0.01),
    liner: mm('f', 'finished liner', 0.01, { preset: 0, least: 0 }),
    bond: mm('g', 'bond lines, all together', 0.025, { preset: 0, least: 0 }),
    first: mm('s₁', 'first shim', 0.002, { preset: 0, least: 0 }),
    second: mm('s₂', 'second shim', 0.002, { preset: 0, least: 0 }),
    scrape: mm('a', 'metal still to be scraped off', 0.005, { preset: 0, least: 0 }),
  },
  results: {
    wanted: {
      symbol: 'x',
      label: 'still wanted',
      unit: 'mm',
      formula: '{space} + {scrape} − {liner} − {bond} − {first} − {second}',
      plus: 'wanted; minus: too much',
    },
  },
  drawing: 'stack',
  source: practice,
  example: { space: 1.6, liner: 0.9, bond: 0.1, first: 0.5, second: 0, scrape: 0 },
  note: 'Shims ground, full face, of one thickness; no more than two (common practice).',
  of: (v) => ({ wanted: v.space + v.scrape - v.liner - v.bond - v.first - v.second }),
});
