import { describe, expect, it } from 'vitest';

import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { readingFits } from '../../contract/reading-fits.ts';
import { axisOf, type TurnedBar } from '../../core/axis/bar-axis.ts';
import { heldOf, readingOf } from '../../core/axis/usual-bar.ts';
import { rise } from '../../core/body/displacement.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import { foldJob } from '../../core/ledger/job.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import { axisPads, barDeed, barSteps, heightDeed, heightSteps } from './axis-pads.ts';

const templates = readTemplates();
const lathe = readWholeMachines().find((one) => one.id === 'engine-lathe')!;
const steps = barSteps(lathe, templates);
const [head, tail] = steps as [(typeof steps)[0], (typeof steps)[0]];
const held = heldOf({ diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 });
const top = (far: readonly [number, number]): TurnedBar => readingOf({ side: 'top', near: [0, 0], far });
const found = (reading: TurnedBar) => ({ ...axisOf(held, reading), side: reading.side });
const mean = (zones: readonly number[] | undefined) =>
  zones!.reduce((sum, one) => sum + one, 0) / zones!.length;

describe('from an axis to the pads of the part that holds it', () => {
  it('the lathe’s benches with a bar: the headstock’s points to the tailstock, the tailstock’s back at it', () => {
    expect(steps.map(({ step, toward }) => [step, toward])).toEqual([
      ['headstock', 1],
      ['tail-body', -1],
    ]);
    expect(heightSteps(steps).map(({ step }) => step)).toEqual(['tail-body']);
  });

  it('worked by hand: a free end 34.77 µm low in the readings hangs 4.77 µm by itself: 100 µrad low, aimed 25 high, over 380 mm', () => {
    const sag = found(top([0, 0])).sag_um;
    const pads = axisPads(head.plan, found(top([-30 - sag, -30 - sag])), 'metric')!;
    expect([pads.value_urad, pads.aim_urad]).toEqual([expect.closeTo(100, 9), -25]);
    const ends = ['headstock end', 'tailstock end'].map((end) => mean(pads.off_um[`front, ${end}`]));
    // 125 µrad: the gear-train end comes down 47.5 µm more than the nose end.
    expect(ends[0]! - ends[1]!).toBeCloseTo(rise(125, 380), 9);
    expect(Math.min(...Object.values(pads.off_um).flat())).toBe(0);
    expect(pads.sentence).toMatch(/front, headstock end 48\s±\s4\sµm; back, headstock end 48\s±\s4\sµm/);
    expect(axisPads(head.plan, found(top([-30 - sag, -30 - sag])), 'inch')!.sentence).toMatch(/tenths|thou/);
  });

  it('a tailstock whose bar points down toward the spindle: the pads on its handwheel side come down', () => {
    const sag = found(top([0, 0])).sag_um;
    const pads = axisPads(tail.plan, found(top([-30 - sag, -30 - sag])), 'metric')!;
    // 100 µrad low at its free end, aimed 10 µm in 300 mm high: 133.3 µrad over the length of its base.
    const [near, far] = ['headstock end', 'tailstock end'].map((end) => mean(pads.off_um[`back, ${end}`]));
    const along = Math.abs(tail.plan.slide.pads[0]!.centre_mm[0] - tail.plan.slide.pads[1]!.centre_mm[0]);
    expect(far! - near!).toBeCloseTo(rise(100 + 100 / 3, along), 9);
  });

  it('what is proven in its band takes nothing off, and a reading sideways says nothing of flat pads', () => {
    const sag = found(top([0, 0])).sag_um;
    const pads = axisPads(head.plan, found(top([7.5 - sag, 7.5 - sag])), 'metric')!;
    expect(new Set(Object.values(pads.off_um).flat())).toEqual(new Set([0]));
    expect(pads.sentence).toContain('nothing comes off');
    const front = readingOf({ side: 'front', near: [0, 0], far: [30, 30] });
    expect(axisPads(head.plan, found(front), 'metric')).toBeUndefined();
    expect(barDeed(head.plan, 1, held, [front])).toBeUndefined();
  });

  it('taken to the bench, the planner is asked of the same slope with the same doubt', () => {
    for (const { plan } of steps) {
      const reading = readingOf({ side: 'bottom', near: [1, -3], far: [22, 54] });
      const deed = barDeed(plan, 1, held, [reading])!;
      expect(readingFits(plan, deed)).toEqual([]);
      const entries = [
        { kind: 'job made', plan, id: 'made', at: '2031-11-25T14:32:00+01:00', seq: 1 },
        { ...deed, id: 'bar', at: '2031-11-25T14:33:00+01:00', seq: 2 },
      ] as Entry[];
      const [sweep] = steerInput(foldJob(entries)).rounds[0]!.sweeps;
      const { slope_urad, sd_urad } = axisOf(held, reading);
      const between_mm = Math.abs(sweep!.points_mm[1]![0] - sweep!.points_mm[0]![0]);
      // From underneath, a bar that rises lets the plunger out.
      expect(sweep!.readings_um[1]! - sweep!.readings_um[0]!).toBeCloseTo(-rise(slope_urad, between_mm), 9);
      expect(sweep!.reading_sd_um * Math.SQRT2).toBeCloseTo(rise(sd_urad, between_mm), 9);
    }
  });

  it('a bar that cannot be is refused by its field', () => {
    const deed = barDeed(head.plan, 1, { ...held, far_mm: 400 }, [top([0, 0])])!;
    expect(readingFits(head.plan, deed)).toMatchObject([{ path: 'held.out_mm', found: '320' }]);
    const other = barDeed(head.plan, 1, held, [top([0, 0])])!;
    expect(readingFits(head.plan, { ...other, setup: 'level_across' } as typeof other)).toMatchObject([
      { path: 'setup', expected: 'a set-up of the job along a test bar: "bar"' },
    ]);
    const sideways = { ...other, reading: readingOf({ side: 'front', near: [0, 0], far: [0, 0] }) };
    expect(readingFits(head.plan, sideways as typeof other)).toMatchObject([{ path: 'reading.side' }]);
  });

  it('a tailstock’s height goes to its bench as it was found; sideways there is nothing to scrape', () => {
    const deed = heightDeed(tail.plan, 2, { plane: 'up', um: -28 });
    expect(deed).toMatchObject({ kind: 'height read', round: 2, setup: 'height', reading: { value: -28 } });
    expect(readingFits(tail.plan, deed!)).toEqual([]);
    expect(heightDeed(tail.plan, 2, { plane: 'sideways', um: -28 })).toBeUndefined();
  });
});
