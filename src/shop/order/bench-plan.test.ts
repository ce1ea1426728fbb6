import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { planSchema } from '../../contract/entry.ts';
import { BadInput } from '../../contract/refusal.ts';
import { displacementRow } from '../../core/body/displacement.ts';
import { featureRow } from '../../core/body/feature.ts';
import { scale } from '../../core/body/vector.ts';
import type { Setup } from '../../core/ledger/setup.ts';
import { heightRow } from '../../core/observe/height.ts';
import { levelRow } from '../../core/observe/level.ts';
import { sweepSense } from '../../core/observe/sweep.ts';
import { benchPlan } from './bench-plan.ts';

const templates = readTemplates();
const machines = readWholeMachines();
const benches = machines.flatMap((machine) =>
  machine.steps.flatMap((step) =>
    step.bench ? [[`${machine.id}: ${step.id}`, machine, step.id] as const] : [],
  ),
);

/** How much a set-up's number climbs for a pose of the slide. */
function climbs(setup: Setup, pose: readonly number[]): number {
  const times = (row: ArrayLike<number>): number => pose.reduce((sum, part, i) => sum + part * row[i]!, 0);
  if (setup.kind === 'level') return times(levelRow(setup));
  if (setup.kind === 'height') return times(heightRow(setup));
  const s = scale(setup.plunger, sweepSense(setup));
  return times(displacementRow(s, setup.to_mm)) - times(displacementRow(s, setup.from_mm));
}

describe.each(benches)('bench of %s', (_, machine, step) => {
  const plan = benchPlan(machine, step, templates)!;

  it('is a plan that a job can be made from', () => {
    expect(planSchema.safeParse(plan).error).toBeUndefined();
    expect(plan.targets.length).toBeGreaterThan(0);
    expect(plan.cautions.length).toBeGreaterThan(2);
  });

  it('each set-up climbs when its feature goes the way its words say', () => {
    for (const setup of plan.setups) {
      const feature = plan.features.find((one) => one.name === setup.tells[0])!;
      const words = plan.words.find((one) => one.feature === feature.name)!;
      const row = featureRow(feature);
      const climb = climbs(setup, feature.kind === 'turn' ? row : [...row.slice(0, 3), 0, 0, 0]);
      expect(Math.abs(climb), setup.id).toBeGreaterThan(0.01);
      expect(setup.climbs_words, setup.id).toBe(climb > 0 ? words.plus : words.minus);
      expect(setup.falls_words, setup.id).toBe(climb > 0 ? words.minus : words.plus);
    }
  });

  it('every target is told of by a set-up', () => {
    const told = plan.setups.flatMap((setup) => setup.tells);
    for (const target of plan.targets) expect(told).toContain(target.feature);
  });
});

describe('a bench', () => {
  const lathe = machines.find((one) => one.id === 'engine-lathe')!;
  it('takes the machine’s own sizes', () => {
    const plan = benchPlan(lathe, 'saddle-bottom', templates, { saddle_length: 512, across: 301 })!;
    expect(plan.slide.pads.map((pad) => pad.length_mm)).toEqual([512, 512, 512]);
    expect(plan.slide.pads[2]!.centre_mm[1]).toBe(301);
  });
  it('keeps the smaller stock, and adds the sink limits to its own', () => {
    const sink = [{ name: 'half nut', at_mm: [0, -95, -140] as const, most_um: 61 }];
    const plan = benchPlan(lathe, 'saddle-bottom', templates, {}, { sink, stock_um: { flat: 420 } })!;
    expect(plan.slide.pads.map((pad) => pad.stock_um)).toEqual([undefined, undefined, 420]);
    expect(plan.sink?.at(-1)).toEqual(sink[0]);
  });
  it('is not opened by a step without one, and not by a step there is not', () => {
    expect(benchPlan(lathe, 'survey', templates)).toBeUndefined();
    expect(() => benchPlan(lathe, 'surveys', templates)).toThrow('not a step');
  });
});

it('a machine that came with a job’s file and does not fit its template is bad input, not our mistake', () => {
  const machine = machines.find((one) => one.steps.some((step) => step.bench))!;
  const step = machine.steps.find((one) => one.bench)!;
  const odd = machine.slides.map((slide) => ({ ...slide, dimensions: { ...slide.dimensions, lenght: 300 } }));
  expect(() => benchPlan({ ...machine, slides: odd }, step.id, templates)).toThrow(BadInput);
});
