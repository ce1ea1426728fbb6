import { describe, expect, it } from 'vitest';
import { zonesOf } from '../body/slide.ts';
import { measured } from './measure.ts';
import { buildPlan, type Template } from './template.ts';

/** An invented machine, small enough to work by hand. */
const machine: Template = {
  id: 'invented',
  title: 'Invented slide',
  part: 'slide',
  description: 'One V in a groove, one on a ridge, a dovetail flank and a leaning pad.',
  dimensions: [
    { key: 'long', label: 'Length', unit: 'mm', value: 410, low: 100, high: 900, where: 'along' },
    { key: 'wide', label: 'Flank', unit: 'mm', value: 26, low: 5, high: 90, where: 'across' },
    { key: 'apart', label: 'Apart', unit: 'mm', value: 230, low: 50, high: 800, where: 'across' },
    { key: 'least', label: 'Least', unit: 'um', value: 3, low: -50, high: 50, where: 'chart' },
    { key: 'most', label: 'Most', unit: 'um', value: 18, low: -50, high: 50, where: 'chart' },
    { key: 'left', label: 'Left', unit: 'um', low: 0, high: 900, where: 'liner' },
  ],
  surface: { label: 'Facing', options: ['liner', 'iron'], value: 'liner' },
  materials: {
    liner: { label: 'liner', um: 12.7, sd_um: 4, source: 'common practice' },
    iron: { label: 'iron', um: 5, sd_um: 2, source: 'common practice' },
    bronze: { label: 'bronze', um: 7, sd_um: 3, source: 'common practice' },
  },
  ways: [
    {
      kind: 'vee',
      shape: 'ridge',
      minus_name: 'a',
      plus_name: 'b',
      minus_deg: 30,
      plus_deg: 60,
      minus_width_mm: 'wide',
      plus_width_mm: 'wide*2',
      length_mm: 'long',
      zones: 3,
      y_mm: '-apart/2',
      stock_um: 'left',
    },
    {
      kind: 'vee',
      shape: 'groove',
      minus_name: 'c',
      plus_name: 'd',
      minus_deg: 45,
      plus_deg: 45,
      minus_width_mm: 20,
      plus_width_mm: 20,
      length_mm: 'long - 10',
      zones: 2,
      y_mm: 'apart/2',
      material: 'bronze',
    },
    {
      kind: 'flank',
      name: 'e',
      width_mm: 15,
      angle_deg: 60,
      faces: 'out',
      length_mm: 300,
      zones: 2,
      y_mm: -140,
    },
    {
      kind: 'flank',
      name: 'f',
      width_mm: 15,
      angle_deg: 60,
      faces: 'in',
      length_mm: 300,
      zones: 2,
      y_mm: -140,
    },
    {
      kind: 'pad',
      name: 'g',
      width_mm: 15,
      normal: [0, 3, 4],
      length_mm: 300,
      zones: 2,
      y_mm: 8,
      z_mm: 'wide/2 + 4',
    },
  ],
  features: [
    { name: 'turn', kind: 'turn', axis: 'z' },
    { name: 'rise', kind: 'shift', at_mm: ['long', 0, 'wide'], direction: [0, 0, 1] },
  ],
  targets: [
    {
      feature: 'turn',
      low_um: 'least',
      high_um: 'most',
      aim_um: 'least/2 + most/2',
      over_mm: 300,
      guard: 0.5,
    },
    { feature: 'rise', low_um: -4, high_um: 9 },
  ],
  words: [],
  places: { minus_end: 'a', plus_end: 'b', minus_side: 'c', plus_side: 'd', travel: 'x' },
  sink: [{ name: 'screw', at_mm: [0, '-apart', 0], most_um: 'left/3' }],
  setups: [
    {
      kind: 'level',
      id: 'l',
      name: 'l',
      question: 'q',
      drawing: 'generic',
      tells: ['turn'],
      rides_words: 'r',
      touches_words: 't',
      plus_words: 'p',
      climbs_words: 'c',
      falls_words: 'f',
      along: [0, 1, 0],
      sd_urad: 5,
    },
  ],
  cautions: [],
};

function planned(answers: Record<string, number | string> = {}) {
  const built = buildPlan(machine, answers, 'Ours');
  if (!built.ok) throw new Error(JSON.stringify(built.refusals));
  return built.plan;
}
const refused = (answers: Record<string, number | string>) => {
  const built = buildPlan(machine, answers, 'Ours');
  return built.ok ? [] : built.refusals;
};

describe('a job made from a machine', () => {
  it('a ridge has its flanks looking outward and up, a groove toward each other and up', () => {
    const pads = Object.fromEntries(planned().slide.pads.map((pad) => [pad.name, pad]));
    const near = (found: readonly number[], wanted: readonly number[]) =>
      wanted.forEach((part, i) => {
        expect(found[i]).toBeCloseTo(part, 6);
      });
    // 30° from level: normal half outward; middle 26/2 · cos 30° = 11.258 from the apex at −115.
    near(pads.a!.normal, [0, -0.5, 0.8660254]);
    near(pads.a!.centre_mm, [0, -126.25833, 0]);
    near(pads.b!.normal, [0, 0.8660254, 0.5]);
    near(pads.b!.centre_mm, [0, -115 + 13, 0]);
    near(pads.c!.normal, [0, Math.SQRT1_2, Math.SQRT1_2]);
    near(pads.d!.normal, [0, -Math.SQRT1_2, Math.SQRT1_2]);
    near(pads.d!.centre_mm, [0, 115 + 7.0710678, 0]);
  });
  it('a dovetail flank overhangs: it looks down, and away from the middle or toward it as told', () => {
    const pads = Object.fromEntries(planned().slide.pads.map((pad) => [pad.name, pad]));
    expect(pads.e!.normal.map((part) => part.toFixed(4))).toEqual(['0.0000', '-0.8660', '-0.5000']);
    expect(pads.f!.normal.map((part) => part.toFixed(4))).toEqual(['0.0000', '0.8660', '-0.5000']);
    expect(pads.g!.centre_mm).toEqual([0, 8, 17]);
  });
  it('sums over dimensions become lengths; zones and pads follow', () => {
    const { slide } = planned({ long: 512, wide: 30 });
    expect(slide.pads.map((pad) => pad.length_mm)).toEqual([512, 512, 502, 502, 300, 300, 300]);
    expect(slide.pads[1]!.width_mm).toBe(60);
    expect(zonesOf(slide)).toHaveLength(16);
  });
  it('a band said as a fall over 300 mm becomes a slope; a shift stays a distance', () => {
    // 3 µm over 300 mm is 10 µrad, 18 is 60, their middle 35.
    const [turn, rise] = planned().targets;
    expect(turn).toEqual({ feature: 'turn', low: 10, high: 60, aim: 35, guard: 0.5 });
    expect(rise).toEqual({ feature: 'rise', low: -4, high: 9 });
  });
  it('stock and sink limits stand only when they were given', () => {
    expect(planned().slide.pads[0]).not.toHaveProperty('stock_um');
    expect(planned()).not.toHaveProperty('sink');
    const limited = planned({ left: 240 });
    expect(limited.slide.pads[0]!.stock_um).toBe(240);
    expect(limited.sink).toEqual([{ name: 'screw', at_mm: [0, -230, 0], most_um: 80 }]);
  });
  it('the chosen surface is the pads’ material, and only materials in use have a pass', () => {
    expect(Object.keys(planned().passes)).toEqual(['liner', 'bronze']);
    const iron = planned({ surface: 'iron' });
    expect(iron.passes).toEqual({ iron: { um: 5, sd_um: 2 }, bronze: { um: 7, sd_um: 3 } });
    expect(iron.slide.pads.map((pad) => pad.material).slice(0, 3)).toEqual(['iron', 'iron', 'bronze']);
  });
  it('names every dimension it cannot take, and what it expects, all at once', () => {
    expect(refused({ long: 40, wide: Number.NaN, depth: 7, surface: 'wood' })).toEqual([
      { key: 'long', found: '40', expected: 'Length: from 100 to 900 mm' },
      { key: 'wide', found: 'NaN', expected: 'Flank: from 5 to 90 mm' },
      {
        key: 'depth',
        found: 'a dimension that this machine does not have',
        expected: 'one of long, wide, apart, least, most, left, surface',
      },
      { key: 'surface', found: '"wood"', expected: '"liner" or "iron"' },
    ]);
    expect(refused({ long: '410' })).toHaveLength(1);
  });
  it('refuses a band upside down, at the dimension that makes its high end', () => {
    expect(refused({ most: 2 })).toEqual([
      { key: 'most', found: '2 µm', expected: 'more than 3 µm, the least of the band of "turn"' },
    ]);
  });
});

describe('a measure', () => {
  it.each<[string, number]>([
    ['across', 200],
    ['-across/2', -100],
    ['across/2 + 14', 114],
    ['3*deep - across / 4 + 1.5', 31.5 - 50 + 1.5],
    ['across*deep', 2100],
  ])('%s comes to %d', (text, value) => {
    expect(measured(text, { across: 200, deep: 10.5 })).toBe(value);
  });
  it('rests on nothing when a dimension is not given', () => {
    expect(measured('left + 3', { left: undefined })).toBeUndefined();
  });
  it.each(['', '2 +', 'a b', '(a)', 'a ** 2', '1.2.3', 'unknown', 'constructor'])(
    '"%s" is refused',
    (text) => {
      expect(() => measured(text, { a: 1, b: 2 })).toThrow(RangeError);
    },
  );
});
