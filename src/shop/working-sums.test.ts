import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sumsOf } from '../../tests/fixture/worked-sums.ts';
import { alongInput } from '../contract/along.ts';
import { partsInput } from '../contract/parts.ts';
import { plateInput } from '../contract/plate.ts';
import { restInput } from '../contract/rest.ts';
import { siteInput } from '../contract/site.ts';
import { parts } from './parts.ts';
import { partsWorking } from './parts-working.ts';
import { rest } from './rest.ts';
import { restWorking } from './rest-working.ts';
import { site } from './site.ts';
import { siteWorking } from './site-working.ts';
import { along } from './survey/along.ts';
import { alongWorking } from './survey/along-working.ts';
import { plate } from './survey/plate.ts';
import { plateWorking } from './survey/plate-working.ts';
import type { Worked } from './worked.ts';

const given = (name: string) => JSON.parse(readFileSync(`checks/data/cases/${name}.json`, 'utf8')).input;
const worked = (lines: readonly Worked[], what: RegExp) =>
  lines.filter((one) => what.test(one.what)).map((one) => one.worked);

/** In both systems the sums hold, and there are as many. */
const held = (of: (system: 'metric' | 'inch') => readonly Worked[]) => {
  const [metric, inch] = [sumsOf(of('metric')), sumsOf(of('inch'))];
  expect(inch).toEqual(metric);
  return metric;
};

describe('a working comes to what it says', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'rest, case %i: every pressed zone and the bearing; the pads push back as the load pushes',
    (k) => {
      const ask = restInput(given(`rest-${k}`));
      const answer = rest(ask);
      if (!answer.ok) throw new Error(answer.text);
      const lines = restWorking(ask, answer);
      const pressed = answer.force_N.filter((force) => force > 0).length;
      expect(sumsOf(lines)).toEqual({ count: pressed + 1, wrong: [] });
      const [pads, load] = worked(lines, /^the balance/)[0]!
        .split(';')
        .map((text) =>
          /\[(.*)\]/
            .exec(text)![1]!
            .split(', ')
            .map((part) => Number(part.replace('−', '-'))),
        );
      // Along the travel nothing holds; across it and upright the two are equal and opposite.
      for (const axis of [1, 2]) expect(pads![axis]! + load![axis]!).toBeCloseTo(0, 1);
    },
  );

  it.each([1, 2, 3, 4, 5])('plate, case %i: both planes, both widths, what must come off', (k) => {
    const answer = plate(plateInput(given(`plate-${k}`)));
    const { count, wrong } = held((system) => plateWorking(answer, system));
    expect(wrong).toEqual([]);
    expect(count).toBeGreaterThanOrEqual(answer.contacts.length + 3);
  });

  it.each([1, 2, 3])('site, case %i: each place’s costs', (k) => {
    const ask = siteInput(given(`site-${k}`));
    const answer = site(ask);
    if (!answer.ok) throw new Error(answer.text);
    const { count, wrong } = held((system) => siteWorking(answer, ask.duty, system));
    expect(wrong).toEqual([]);
    // Diameters, faces and both; the sums over the work leave their middle out.
    expect(count).toBe(3 * answer.candidates.length);
  });

  it('twist over a bridge, and parallelism of two profiles', () => {
    const twist = alongInput({
      kind: 'twist',
      stations_mm: [0, 500, 1000],
      tilts_urad: [4, 10, 24],
      reading_sd_urad: 2,
      bridge_mm: 300,
      limit_urad: 40,
    });
    const lines = alongWorking(twist, along(twist));
    // Range, its doubt, ends, over the bridge (20 × 0.3), the verdict's one side.
    expect(held((system) => alongWorking(twist, along(twist), system))).toEqual({ count: 5, wrong: [] });
    expect(worked(lines, /bridge/)).toEqual(['20 × 300/1000 = 6 µm']);
    const pair = alongInput({
      kind: 'parallel',
      stations_mm: [0, 500, 1000],
      heights_um: [3, 7, 5],
      other_um: [1, 9, 2],
    });
    expect(worked(alongWorking(pair, along(pair)), /^change/)).toEqual(['at 0, 500, 1000 mm: 0, −4, 1 µm']);
  });

  it('parts: cylindricity is half of what the diameters differ by', () => {
    const ask = partsInput({
      lathe: {
        travel: {
          stations_mm: [0, 150, 300],
          shift_um: [
            [0, 0, 0],
            [0, -2, 0],
            [0, -6, 0],
          ],
        },
        tool_mm: [0, -100, 100],
        side: 'front',
        square_urad: { value: 10, sd: 1 },
        spindle: { across_urad: { value: 0, sd: 0 }, up_urad: { value: 0, sd: 0 } },
        turned: [{ name: 'shaft', tool_high_mm: 0, radius_mm: 25, from_mm: 0, to_mm: 300 }],
        faced: [{ name: 'flange', at_mm: 150, rim_mm: 100, inner_mm: 0 }],
      },
    });
    const answer = parts(ask);
    if (!answer.ok) throw new Error(answer.text);
    const lines = partsWorking(answer);
    expect(held((system) => partsWorking(answer, system)).wrong).toEqual([]);
    // The tool goes 6 µm from the axis of a front tool: 12 µm of diameter, so 6 µm between two cylinders.
    expect(worked(lines, /cylindricity/)[0]).toContain('= 6 µm');
    expect(worked(lines, /flange: hollow/)[0]).toContain('1 µm');
  });
});
