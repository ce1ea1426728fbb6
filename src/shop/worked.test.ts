import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sumsOf } from '../../tests/fixture/worked-sums.ts';
import { readTemplates } from '../adapters/file/templates.ts';
import { readWholeMachines } from '../adapters/file/whole-machines.ts';
import { solveWithHighs } from '../adapters/solver/highs.ts';
import { steerInput } from '../contract/steer.ts';
import { heights } from './order/heights.ts';
import { heightsWorking } from './order/heights-working.ts';
import { heightsAsk } from './order/machine-chain.ts';
import { steer } from './steer.ts';
import { steerWorking } from './steer-working.ts';
import { line } from './survey/line.ts';
import { lineWorking } from './survey/line-working.ts';
import { bandWorked, type Worked } from './worked.ts';

const linesOf = (working: readonly Worked[], what: RegExp) =>
  working.filter((one) => what.test(one.what)).map((one) => one.worked);

it('a verdict is written with its numbers put in', () => {
  expect(bandWorked(-15.3, 4.3, { low: 6, high: 20 }, 'µrad', 'outside')).toBe(
    '6 against −15.3 − 4.3 = −19.6; −15.3 + 4.3 = −11 against 20 µrad: outside',
  );
});

it('a sum that does not come to what it says is seen', () => {
  const said = (worked: string) => sumsOf([{ what: 'x', formula: '', worked }]);
  expect(said('(3 + 4)/2 = 3.5 µm; √(3² + 4²) = 5 µm, one sd')).toEqual({ count: 2, wrong: [] });
  expect(said('(3 + 4)/2 = 3.6 µm').wrong).toHaveLength(1);
  expect(said('Φ(0) − Φ(−1.96) = 0.475').wrong).toEqual([]);
});

describe('line', () => {
  it('each step, height, width and verdict comes to what it says', () => {
    const asked = {
      kind: 'angles' as const,
      step_mm: 200,
      angles_urad: [30, 12, -4, -20, -33],
      return_urad: [-31, -22, -3, 11, 32],
      reading_sd_urad: 2,
      limit_um: 30,
    };
    const working = lineWorking(asked, line(asked));
    const { count, wrong } = sumsOf(working);
    expect(wrong).toEqual([]);
    // Five means, three widths and the verdict's one side.
    expect(count).toBe(9);
    // Heights of the means by hand: 31, 11.5, −3.5, −21, −32 µrad on 200 mm.
    expect(linesOf(working, /^heights$/)).toEqual([
      'step 200 mm; at 0, 200, 400, 600, 800, 1000 mm: 0, 6.2, 8.5, 7.8, 3.6, −2.8 µm',
    ]);
    expect(linesOf(working, /minimum zone/)[0]).toContain(' = 9.62 µm, one sd ');
  });

  it('heights turned over, plus hollow', () => {
    const asked = {
      kind: 'heights' as const,
      stations_mm: [0, 500, 1000],
      heights_um: [0, 8, 0],
      reversed_um: [0, 4, 0],
      plus: 'hollow' as const,
    };
    expect(linesOf(lineWorking(asked, line(asked)), /^heights$/)).toEqual([
      'at 0, 500, 1000 mm: 0, −6, 0 µm',
    ]);
  });
});

it('heights: each link, liner and limit comes to what it says', () => {
  const asked = {
    machine: 'engine-lathe',
    measured: { 'half nut over lead screw': { um: -470, sd_um: 8 } },
    changes: [
      {
        name: 'wear',
        joint: 'saddle-on-bed',
        when: 'found',
        off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 },
        sd_um: 5,
      },
    ],
    liners: [
      {
        joint: 'saddle-on-bed',
        pads: ['front flank', 'rear flank', 'flat'],
        brings: 'half nut over lead screw',
        sheet_mm: 1.6,
      },
    ],
  };
  const answer = heights(heightsAsk(asked, readWholeMachines(), readTemplates()));
  if (!answer.ok) throw new Error(answer.text);
  const working = heightsWorking(answer);
  const { count, wrong } = sumsOf(working);
  expect(wrong).toEqual([]);
  expect(count).toBeGreaterThan(15);
  expect(linesOf(working, /half nut over lead screw: comes to/)[0]).toMatch(/^\(−470\) \+ .* = 30 µm /);
  expect(working.every((one) => !/NaN|undefined/.test(one.worked))).toBe(true);
});

it('steer: chance, bearing, verdict and doubt come to what they say; the metal is the plan’s', async () => {
  const { input } = JSON.parse(readFileSync('checks/data/cases/steer-1.json', 'utf8')) as { input: unknown };
  const asked = steerInput(input);
  const answer = await steer(asked, solveWithHighs);
  if (!answer.ok) throw new Error(answer.text);
  const working = steerWorking(asked, answer);
  const { count, wrong } = sumsOf(working);
  expect(wrong).toEqual([]);
  expect(count).toBeGreaterThanOrEqual(3 * asked.targets.length);
  // What rounding leaves behind is no number to show.
  expect(working.filter((one) => /0\.0000000/.test(one.worked))).toEqual([]);
  expect(linesOf(working, /^metal to take off/)).toHaveLength(answer.plan.action === 'stop' ? 0 : 1);
  for (const one of answer.estimate.features)
    expect(working.some((line) => line.what === `${one.name} now`)).toBe(true);
  expect(working.every((one) => !/NaN|undefined/.test(one.worked))).toBe(true);
});
