import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { displacementRow } from '../core/body/displacement.ts';
import { featureRow } from '../core/body/feature.ts';
import { isHeld, settling } from '../core/body/settle.ts';
import type { Setup } from '../core/ledger/setup.ts';
import type { Template } from '../core/ledger/template.ts';
import { heightRow } from '../core/observe/height.ts';
import { levelRow } from '../core/observe/level.ts';
import { sweepSense } from '../core/observe/sweep.ts';
import { evenWrench } from '../core/rest/load.ts';
import { restUnder } from '../core/rest/rest.ts';
import { BadInput } from './refusal.ts';
import { steerInput } from './steer.ts';
import { plannedJob, templateInput } from './template.ts';

const files = readdirSync('machines').filter((file) => file.endsWith('.json'));
const read = (file: string): unknown => JSON.parse(readFileSync(join('machines', file), 'utf8'));
const machines = files.map((file): [string, Template] => [file, templateInput(read(file))]);

/** Change of the reading from the first stop to the last (or the reading itself) as a row over the pose. */
function climbRow(setup: Setup): readonly number[] {
  if (setup.kind === 'level') return levelRow(setup);
  if (setup.kind === 'height') return heightRow(setup);
  const s = setup.plunger.map((part) => part * sweepSense(setup)) as unknown as typeof setup.plunger;
  const first = displacementRow(s, setup.from_mm);
  return displacementRow(s, setup.to_mm).map((part, i) => part - first[i]!);
}

describe.each(machines)('%s', (file, template) => {
  const plan = plannedJob(template, {}, 'as it stands');

  it('bears its own name', () => expect(`${template.id}.json`).toBe(file));

  it('holds every feature that it sets a target for', () => {
    const settled = settling(plan.slide);
    for (const feature of plan.features)
      expect(isHeld(settled, featureRow(feature)), feature.name).toBe(true);
  });

  it('every set-up climbs when the feature it tells of goes the way its words say', () => {
    for (const setup of plan.setups) {
      const told = setup.tells[0]!;
      const feature = plan.features.find((one) => one.name === told)!;
      const words = plan.words.find((one) => one.feature === told)!;
      // Move the slide by the feature alone: a turn about its axis, a shift along its direction.
      const row = featureRow(feature);
      const moved = feature.kind === 'turn' ? row : [...row.slice(0, 3), 0, 0, 0];
      const climb = climbRow(setup).reduce((sum, part, i) => sum + part * moved[i]!, 0);
      expect(Math.abs(climb), setup.id).toBeGreaterThan(0.01);
      expect(setup.climbs_words, setup.id).toBe(climb > 0 ? words.plus : words.minus);
      expect(setup.falls_words, setup.id).toBe(climb > 0 ? words.minus : words.plus);
    }
  });

  it('every feature is told of by a set-up', () => {
    const told = plan.setups.flatMap((setup) => setup.tells);
    for (const feature of plan.features) expect(told).toContain(feature.name);
  });

  it('makes what steer takes, and rests under an even load with every zone pressed', () => {
    const { slide, features, targets, passes } = plan;
    expect(() =>
      steerInput({ slide, features, targets, passes, rounds: [{ sweeps: [], levels: [] }] }),
    ).not.toThrow();
    const gaps = slide.pads.flatMap((pad) => Array<number>(pad.zones).fill(0));
    const ground = { slide, stiffness_N_per_mm3: 50, film_um: 3 };
    const answer = restUnder(ground, gaps, evenWrench(slide, 0.015));
    expect(answer.converged).toBe(true);
    for (const gap of answer.gap_um) expect(gap).toBeCloseTo(-0.3, 6);
  });
});

describe('machines', () => {
  it('there is one for a V and a flat, two Vs, two flats and a dovetail flank, and four pads', () => {
    const ways = machines.map(([, template]) => template.ways.map((way) => way.kind).join(' '));
    expect(ways).toEqual(
      expect.arrayContaining(['vee flat', 'vee vee', 'flat flat flank', 'pad pad pad pad']),
    );
  });

  it('no code knows a machine by its name', () => {
    const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(
      (file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file),
    );
    const knowing = sources.filter((file) => {
      const text = readFileSync(join('src', file), 'utf8');
      return machines.some(([, { id }]) => text.includes(`'${id}'`) || text.includes(`"${id}"`));
    });
    expect(sources.length).toBeGreaterThan(10);
    expect(knowing).toEqual([]);
  });

  const spoilt = (change: (template: Template) => void): string[] => {
    const template = read(files[0]!) as Template;
    change(template);
    try {
      templateInput(template);
    } catch (refused) {
      if (refused instanceof BadInput) return refused.issues.map((issue) => issue.path);
      throw refused;
    }
    return [];
  };
  it.each<[string, (t: Template) => void, string]>([
    ['a key that is not known', (t) => Object.assign(t, { colour: 1 }), 'colour'],
    ['a way of no known kind', (t) => Object.assign(t.ways[0]!, { kind: 'ball' }), 'ways[0].kind'],
    ['a target on nothing', (t) => Object.assign(t.targets[0]!, { feature: 'x' }), 'targets[0].feature'],
    [
      'a set-up that tells of nothing',
      (t) => Object.assign(t.setups[0]!, { tells: ['x'] }),
      'setups[0].tells[0]',
    ],
    ['a material that is not there', (t) => Object.assign(t.ways[0]!, { material: 'x' }), 'ways[0].material'],
    ['a measure over nothing', (t) => Object.assign(t.ways[0]!, { length_mm: 'nowhere' }), ''],
    [
      'a dimension outside its own range',
      (t) => Object.assign(t.dimensions[0]!, { value: -1 }),
      'dimensions[0].value',
    ],
  ])('the schema refuses %s', (_, change, path) => {
    expect(spoilt(change)).toContain(path);
  });

  it('a job refuses a dimension by name', () => {
    const [, template] = machines[0]!;
    const key = template.dimensions[0]!.key;
    expect(() => plannedJob(template, { [key]: -3 }, 'x')).toThrow(`dimensions.${key}: -3; expected`);
  });
});
