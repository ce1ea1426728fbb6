import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { axisInput } from '../../contract/axis.ts';
import { axis } from './axis.ts';
import { heights } from './heights.ts';
import { heightsAskOf } from './rebuild.ts';
import {
  blankAxis,
  blankCentres,
  blankChange,
  blankLiner,
  changeSizes,
  heightSlides,
  slidePads,
  writtenAs,
} from './sheet-blanks.ts';

const templates = readTemplates();
const machines = readWholeMachines();

describe.each(machines.filter((one) => one.heights).map((one) => [one.id, one] as const))(
  'sheets of %s',
  (_, machine) => {
    it('every slide of its heights takes a blank change and a blank liner that the shop can read', () => {
      for (const { value: joint } of heightSlides(machine)) {
        const pads = slidePads(machine, joint, templates);
        expect(pads.length).toBeGreaterThan(2);
        const change = blankChange(joint, pads);
        const liner = blankLiner(joint, pads, machine.heights!.heights[0]!.name);
        expect(() => heightsAskOf(machine, { changes: [change], liners: [liner] }, templates)).not.toThrow();
        const answer = heights(heightsAskOf(machine, { changes: [change] }, templates));
        expect(answer.ok).toBe(true);
      }
    });
  },
);

it('a change put on instead of taken off keeps its sizes and turns its sign', () => {
  const machine = machines.find((one) => one.id === 'engine-lathe')!;
  const pads = slidePads(machine, 'saddle-on-bed', templates);
  const off = writtenAs(blankChange('saddle-on-bed', pads), 'off', { [pads[2]!]: 100 });
  const on = writtenAs(off, 'on', changeSizes(off));
  const found = (change: typeof off) => {
    const answer = heights(heightsAskOf(machine, { changes: [change] }, templates));
    return answer.ok ? answer.heights.map((one) => one.um) : [];
  };
  const down = found(off);
  expect(Math.max(...down.map(Math.abs))).toBeGreaterThan(10);
  expect(found(on)).toEqual(down.map((um) => expect.closeTo(-um, 9)));
});

it('blank sheets of axes are answered: nothing out but the bar’s sag', () => {
  const answer = axis(axisInput(blankAxis('spindle').asked), machines, templates);
  expect(answer.axes.map((one) => one.plane)).toEqual(['up', 'sideways']);
  expect(answer.axes[1]!.slope_urad).toBe(0);
  expect(answer.axes[0]!.sag_um).toBeGreaterThan(2);
  expect(axis(axisInput(blankCentres('tailstock').asked), machines, templates).centres[0]!.um).toBe(0);
});

it('a slide that is not there has no faces', () =>
  expect(slidePads(machines[0]!, 'no', templates)).toEqual([]));
