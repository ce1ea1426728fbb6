import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sheetRunner } from '../../../tests/fixture/run-sheet.ts';
import { registerGib } from './gib.ts';
import { registerHeights } from './heights.ts';
import { registerLine } from './line.ts';
import { registerOrder } from './order.ts';
import { registerAxis } from './order-axis.ts';
import { registerParts } from './parts.ts';
import { registerPlate } from './plate.ts';
import { registerRest } from './rest.ts';
import { registerSite } from './site.ts';
import { registerSteer } from './steer.ts';

/** A unit of the other system; constants of materials (kg/m³, GPa) keep theirs. */
const metric = /µm|µrad|\bmm\b|\bmetre\b/;

const solved = (name: string): unknown =>
  JSON.parse(readFileSync(`checks/data/cases/${name}.json`, 'utf8')).input;

const bar = {
  bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 },
  readings: [{ side: 'top', near: [1, -3], far: [-22, -54] }],
  centres: [
    {
      kind: 'swung indicator',
      plane: 'up',
      first_um: 40,
      opposite_um: -10,
      bracket_sag_um: 4,
      low_um: 0,
      high_um: 20,
      aim_um: 10,
    },
  ],
};
const dovetail = {
  angle_deg: 60,
  rolls: { kind: 'male', roll_mm: 12.7, stations_mm: [0, 127, 254], read_mm: [76.2, 76.2127, 76.2254] },
  angle_check: { small_mm: 10, large_mm: 20, over_small_mm: 67.3, over_large_mm: 94.7, flank_mm: 20 },
  gib: { stations_mm: [0, 127, 254], thick_mm: [8, 10.54, 13.08] },
  play: { how: 'across', thick_end_um: 12, thin_end_um: 46, in_left_mm: 6, screw_mm: 1.5 },
  keepers: [{ name: 'front keeper', stations_mm: [0, 500], clearance_um: [55, 50] }],
};
const saddle = {
  machine: 'engine-lathe',
  measured: { 'half nut over lead screw': { um: -470, sd_um: 8 } },
  liners: [
    {
      joint: 'saddle-on-bed',
      pads: ['front flank', 'rear flank', 'flat'],
      brings: 'half nut over lead screw',
      sheet_mm: 1.6,
    },
  ],
};
/** A reading that stands out, a run back that does not close: every warning with a figure. */
const way = {
  kind: 'heights',
  stations_mm: [0, 100, 200, 300, 400, 500, 600, 700],
  heights_um: [0, 5, 8, 90, 10, 8, 5, 0],
  return_um: [60, 65, 68, 70, 150, 68, 65, 60],
  reading_sd_um: 1,
  unworn_mm: [
    [0, 100],
    [600, 700],
  ],
  limit_um: 20,
};
const twist = {
  kind: 'twist',
  stations_mm: [0, 250, 500, 750],
  tilts_urad: [0, 20, 45, 60],
  reading_sd_urad: 2,
  limit_urad: 40,
  bridge_mm: 300,
};
const surface = {
  kind: 'points',
  points: [0, 1, 2].flatMap((x) =>
    [0, 1, 2].map((y) => ({ x_mm: 200 * x, y_mm: 150 * y, z_um: 3 * x * y - 2 * x })),
  ),
  reading_sd_um: 0.5,
  pass_um: 4,
  limit_um: 10,
};
const lathe = {
  lathe: {
    travel: {
      stations_mm: [0, 300, 600],
      shift_um: [0, 1, 2].map((k) => [0, -3 * k, 4 * k]),
      turn_urad: [0, 1, 2].map(() => [0, 0, 40]),
    },
    tool_mm: [0, -60, 150],
    square_urad: { value: 5, sd: 4 },
    turned: [{ name: 'bar', radius_mm: 20, from_mm: 0, to_mm: 300 }],
    faced: [{ name: 'shoulder', at_mm: 300, rim_mm: 40, inner_mm: 20, beside: 'bar' }],
  },
  mill: {
    tool_mm: [0, 0, 60],
    carriages: [
      {
        name: 'table',
        along: 'x',
        carries: 'work',
        reference_mm: [0, 0, -60],
        stations_mm: [-200, 200],
        shift_um: [
          [0, 0, -20],
          [0, 0, 20],
        ],
      },
    ],
    blocks: [{ name: 'vice block', middle_mm: [0, 0, 30], size_mm: [160, 100, 60], faces: ['+z', '+y'] }],
  },
  wear: {
    per: '1000 h',
    features: [{ name: 'facing', unit: 'urad', value: 40, sd: 3, low: 20, high: 66, rate: -5, rate_sd: 1 }],
  },
};

const alone =
  (register: Parameters<typeof sheetRunner>[1] extends (doors: never) => infer R ? R : never) => () =>
    register;

describe('every verb that prints lengths answers an inch shop in inches', () => {
  it.each([
    ['line', 'of heights', alone(registerLine), way, ['--draws', '200']],
    ['line', 'of twist', alone(registerLine), twist, []],
    ['plate', 'of points', alone(registerPlate), surface, []],
    ['rest', 'of a saddle', alone(registerRest), solved('rest-4'), []],
    ['site', 'of a bed', alone(registerSite), solved('site-1'), []],
    ['parts', 'of a lathe and a mill', alone(registerParts), lathe, []],
    ['steer', 'of a saddle', alone(registerSteer), solved('steer-4'), []],
    ['heights', 'with a liner', registerHeights, saddle, []],
    [
      'order',
      'a step’s bench',
      registerOrder,
      { machine: 'engine-lathe', deeds: [] },
      ['--step', 'saddle-bottom'],
    ],
    ['axis', 'with its working', registerAxis, bar, ['--working']],
    ['gib', 'with its working', registerGib, dovetail, ['--working']],
  ] as const)('%s %s', async (verb, _, register, file, words) => {
    const said = sheetRunner(verb, register);
    const inch = await said(file, ...words, '--inch');
    expect([inch.code, inch.err]).toEqual([0, '']);
    expect(inch.out.split('\n').filter((line) => metric.test(line))).toEqual([]);
    expect(inch.out).toMatch(/thou|tenths/);
  });

  it('the working means the same in both: 76.2 mm are 3 in, 25.4 µm over 254 mm a thou over 10 in', async () => {
    const said = sheetRunner('gib', registerGib);
    const { out } = await said(dovetail, '--working', '--inch');
    expect(out).toContain('3 − 0.5 × (1 + cot 30°) = 3 − 1.3660254 = 1.6339746 in');
    expect(out).toContain('0.1 thou/in × 10 in = 1 thou');
    expect(out).toContain('0.24 in/ft ± ');
  });
});
