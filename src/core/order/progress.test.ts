import { describe, expect, it } from 'vitest';
import { forecast } from './forecast.ts';
import type { Machine, Step } from './machine.ts';
import { orderedSteps, standingOn } from './needs.ts';
import { progress, type StepDeed } from './progress.ts';

const step = (id: string, makes: string[], from: string[], after: string[] = [], likely = 7): Step => ({
  id,
  title: id,
  reason: 'r',
  makes,
  from: from.map((way) => ({ way, why: `made from ${way}` })),
  after: after.map((one) => ({ step: one, why: 'first' })),
  proofs: [],
  cautions: [],
  hours: { likely },
});
/** bed → saddle → slide; head from bed; oil comes after slide only. */
const machine: Pick<Machine, 'steps'> = {
  steps: [
    step('oil', [], [], ['slide'], 3),
    step('slide', ['slide-face'], ['saddle-face'], [], 11),
    step('saddle', ['saddle-face'], ['bed-face'], [], 19),
    step('head', ['seat'], ['bed-face'], [], 13),
    step('bed', ['bed-face'], [], [], 41),
  ],
};
const done = (...ids: string[]): StepDeed[] => ids.map((id) => ({ step: id, what: 'done' }));
const statuses = (deeds: readonly StepDeed[]) =>
  Object.fromEntries(progress(machine, deeds).map((state) => [state.id, state.status]));

describe('order of work', () => {
  it('is what each step is made from, whatever order the steps are written in', () => {
    expect(orderedSteps(machine)).toEqual({ ok: true, order: ['bed', 'saddle', 'slide', 'oil', 'head'] });
  });

  it('a ring of steps that wait for each other is named', () => {
    const ring = { steps: [step('a', ['fa'], ['fb']), step('b', ['fb'], ['fc']), step('c', ['fc'], ['fa'])] };
    expect(orderedSteps(ring)).toEqual({ ok: false, ring: ['a', 'b', 'c', 'a'] });
    expect(() => progress(ring, [])).toThrow('a → b → c → a');
  });

  it('only the bed is ready at first; the rest waits, and says for what and why', () => {
    const states = progress(machine, []);
    expect(states.filter((one) => one.status === 'ready').map((one) => one.id)).toEqual(['bed']);
    expect(states.find((one) => one.id === 'slide')!.waits_for).toEqual([
      { step: 'saddle', kind: 'rests on', way: 'saddle-face', why: 'made from saddle-face' },
    ]);
  });

  it('a bed scraped again takes back what stands on it, through every step, and says the way there', () => {
    const deeds = done('bed', 'saddle', 'head', 'slide', 'oil', 'bed');
    expect(statuses(deeds)).toEqual({
      bed: 'done',
      saddle: 'to be re-proven',
      head: 'to be re-proven',
      slide: 'to be re-proven',
      oil: 'done',
    });
    const slide = progress(machine, deeds).find((one) => one.id === 'slide')!;
    expect(slide.because).toEqual([
      { by: 'bed', through: ['bed', 'saddle', 'slide'], kind: 'done again', why: 'made from saddle-face' },
    ]);
    expect(slide.waits_for.map((need) => need.step)).toEqual(['saddle']);
  });

  it('proven again without a change, a step takes nothing with it and gives back what stood on it', () => {
    const deeds = done('bed', 'saddle', 'head', 'slide', 'bed');
    const proven = statuses([...deeds, { step: 'saddle', what: 'proven' }]);
    expect([proven.saddle, proven.slide, proven.head]).toEqual(['done', 'done', 'to be re-proven']);
    const scraped = statuses([...deeds, { step: 'saddle', what: 'done' }]);
    expect([scraped.saddle, scraped.slide]).toEqual(['done', 'to be re-proven']);
  });

  it('reopened and not yet done again, a step is ready itself and what stood on it waits', () => {
    const deeds: StepDeed[] = [...done('bed', 'saddle', 'slide'), { step: 'saddle', what: 'reopened' }];
    const states = progress(machine, deeds);
    const by = (id: string) => states.find((one) => one.id === id)!;
    expect([by('saddle').status, by('slide').status]).toEqual(['ready', 'to be re-proven']);
    expect(by('slide').because).toEqual([
      { by: 'saddle', through: ['saddle', 'slide'], kind: 'not done', why: 'made from saddle-face' },
    ]);
  });

  it('done before what it stands on, a step must be proven once that is done', () => {
    const early = statuses(done('slide'));
    expect(early.slide).toBe('to be re-proven');
    expect(statuses(done('slide', 'bed', 'saddle')).slide).toBe('to be re-proven');
    expect(statuses([...done('slide', 'bed', 'saddle'), { step: 'slide', what: 'proven' }]).slide).toBe(
      'done',
    );
  });

  it('what a step stands under is found through all steps, and what only comes after is not in it', () => {
    expect([...standingOn(machine, 'bed')].sort()).toEqual(['head', 'saddle', 'slide']);
    expect([...standingOn(machine, 'slide')]).toEqual([]);
  });

  it('a step that the machine does not have is refused', () =>
    expect(() => progress(machine, done('apron'))).toThrow('"apron" is not a step'));
});

describe('forecast', () => {
  const left = (deeds: readonly StepDeed[]) => forecast(machine, progress(machine, deeds));

  it('before anything is known, the usual hours are left, with a wide doubt', () => {
    const before = left([]);
    expect(before.left.hours).toBeCloseTo(3 + 11 + 19 + 13 + 41, 9);
    expect(before.pace).toEqual({ times: 1, sd: 0.5 });
    expect(before.left.sd).toBeGreaterThan(0.5 * 87);
  });

  it('one step that took twice its hours moves the pace to 1.53: ln 2 weighed 0.25 to 0.16', () => {
    // Posterior mean of a normal: ln 2 × (1/0.16) / (1/0.16 + 1/0.25) = 0.4227; e^0.4227 = 1.526.
    const after = left([{ step: 'bed', what: 'done', hours: 82 }]);
    expect(after.pace.times).toBeCloseTo(1.526, 3);
    expect(after.left.hours).toBeCloseTo(1.526 * (3 + 11 + 19 + 13), 1);
    expect(after.spent).toBe(82);
  });

  it('hours spent on an open step come off what is left of it, but never all', () => {
    const some = left([{ step: 'bed', what: 'worked', hours: 30 }]);
    expect(some.steps.find((one) => one.id === 'bed')!.left.hours).toBeCloseTo(11, 9);
    const more = left([{ step: 'bed', what: 'worked', hours: 300 }]);
    expect(more.steps.find((one) => one.id === 'bed')!.left.hours).toBeCloseTo(0.15 * 41, 9);
  });

  it('a step to be re-proven costs a fifth of its hours where the machine says nothing else', () => {
    const again = left(done('bed', 'saddle', 'bed'));
    expect(again.steps.find((one) => one.id === 'saddle')!.left.hours).toBeCloseTo(19 / 5, 9);
  });
});
