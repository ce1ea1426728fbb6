import { describe, expect, it } from 'vitest';
import { readTemplates } from '../adapters/file/templates.ts';
import type { JobPlan } from '../core/ledger/entry.ts';
import { buildPlan } from '../core/ledger/template.ts';
import { blockCost, standCost } from '../core/parts/stand-cost.ts';
import type { Travel } from '../core/parts/travel.ts';
import type { Bed } from '../core/site/bed.ts';
import type { SiteAnswer } from './site.ts';
import { showsFor, usualPlaces, whereToPrint } from './survey/where-to-print.ts';

const plans = readTemplates().map((template): JobPlan => {
  const built = buildPlan(template, {}, template.id);
  if (!built.ok) throw new Error(template.id);
  return built.plan;
});
const planOf = (shows: string): JobPlan => plans.find((plan) => showsFor(plan) === shows)!;

/** Ways four times as long as the slide, hollow by this in their middle. */
function bedUnder({ slide }: JobPlan, hollow_um: number): Bed {
  const along = 'xyz'.indexOf(slide.free);
  const long = 4 * Math.max(...slide.pads.map((pad) => 2 * Math.abs(pad.centre_mm[along]!) + pad.length_mm));
  const stations_mm = Array.from({ length: 41 }, (_, k) => (long * k) / 40);
  return {
    stations_mm,
    ways: slide.pads.map((pad, i) => ({
      pad: pad.name,
      // Each way a little otherwise, so that the slide turns about every axis.
      height_um: stations_mm.map((at) => -hollow_um * (1 + 0.2 * i) * Math.sin((Math.PI * at) / long) ** 2),
    })),
  };
}

function told(plan: JobPlan, hollow_um: number): SiteAnswer {
  const bed = bedUnder(plan, hollow_um);
  const answer = whereToPrint(plan, bed, usualPlaces(plan, bed));
  if (!answer.ok) throw new Error(answer.text);
  return answer;
}

describe('where to print says what the machine shows, by its data', () => {
  it('the lathe’s saddle turns; mill, grinder and knee make a block; of a base or a gib nothing is known', () => {
    expect(new Set(plans.map(showsFor))).toEqual(new Set(['turned', 'block', 'slide']));
    for (const plan of plans) expect(showsFor(plan) === 'block').toBe(plan.makes !== undefined);
  });

  it('no machine that does not turn hears of diameters; a block is told of by the name of its face', () => {
    const block = told(planOf('block'), 60);
    const words = (answer: SiteAnswer) =>
      [answer.best.why, ...answer.candidates.map((one) => one.text)].join(' ');
    expect(words(block)).toContain(`${planOf('block').makes!.faces[0]!.name} of a block`);
    expect(words(block)).toMatch(/out of square/);
    const slide = told(planOf('slide'), 60);
    expect(words(slide)).toMatch(/it leans .* turns .* in plan/);
    for (const one of [block, slide]) expect(words(one)).not.toMatch(/diameter|rim to centre/);
    expect(words(told(planOf('turned'), 60))).toMatch(/diameters wander .* faces lean/);
  });

  it.each(['turned', 'block', 'slide'])(
    'straight ways cost nothing (%s), wear grows with its depth, and places are ranked by it',
    (shows) => {
      const plan = planOf(shows);
      for (const one of told(plan, 0).candidates) for (const cost of one.cost) expect(cost).toBeCloseTo(0, 9);
      const [worn, twice] = [told(plan, 4), told(plan, 8)];
      const most = (answer: SiteAnswer, k: number) =>
        Math.max(...answer.candidates.map(({ cost }) => cost[k]!));
      expect(most(worn, 0)).toBeGreaterThan(0);
      expect(most(twice, 0) / most(worn, 0)).toBeGreaterThan(1.7);
      expect(told(plan, 400).advice).toBe('bed first');
    },
  );
});

describe('what a slide’s stand does to a block: rigid bodies, by hand', () => {
  const mill = plans.find((plan) =>
    plan.makes?.carriages.some((one) => one.name === 'saddle' && one.is_slide),
  )!;
  const makes = { ...mill.makes!, size_mm: [100, 150, 60] as const };
  const stations_mm = [0, 100, 200];
  const along = (pose: (at: number) => readonly number[]): Travel => ({
    name: 'saddle',
    along: 'x',
    stations_mm,
    poses: stations_mm.map((at) => pose(at) as unknown as Travel['poses'][number]),
  });

  it('30 µrad about y tilt the top by 3 µm over 100 mm of it; 20 µrad in plan open a corner by as much', () => {
    const tilted = blockCost(
      makes,
      along(() => [0, 0, 0, 0, 30, 0]),
      [1, 1, 1],
    );
    expect(tilted.parallel_rms_um).toBeCloseTo(3, 9);
    const turned = blockCost(
      makes,
      along(() => [0, 0, 0, 0, 0, 20]),
      [1, 1, 1],
    );
    expect(turned.square_rms_urad).toBeCloseTo(20, 9);
  });

  it('a path that rises 1 µm in 100 mm leaves the top 1 µm thinner at one end; as rms over the work, weighted', () => {
    const rising = blockCost(
      makes,
      along((at) => [0, 0, at / 100, 0, 0, 0]),
      [1, 1, 1],
    );
    expect(rising.parallel_rms_um).toBeCloseTo(1, 9);
    const once = blockCost(
      makes,
      along((at) => [0, 0, 0, 0, at === 100 ? 30 : 0, 0]),
      [1, 2, 1],
    );
    expect(once.parallel_rms_um).toBeCloseTo(3 * Math.sqrt(2 / 4), 9);
  });

  it('leaning is about both level axes together, turning about the upright one', () => {
    const { lean_rms_urad, plan_rms_urad } = standCost(
      along(() => [0, 0, 0, 3, 4, 12]),
      [1, 1, 1],
    );
    expect([lean_rms_urad, plan_rms_urad]).toEqual([5, 12]);
  });
});
