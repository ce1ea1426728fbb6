import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { machineInput } from '../../contract/machine.ts';
import type { BadInput } from '../../contract/refusal.ts';
import {
  blankBody,
  blankDimension,
  blankSlide,
  blankStep,
  blankWay,
  idFrom,
  isListed,
  moved,
  placeWords,
  scratchMachine,
} from './machine-draft.ts';

const templates = readTemplates();

describe('a machine of one’s own', () => {
  it.each(templates.map((one) => one.id))('from scratch hangs together with %s', (template) => {
    const machine = scratchMachine(template, 'My Ünlikely mill');
    expect(machineInput(machine, templates)).toEqual(machine);
    expect(machine.id).toBe('my-u-nlikely-mill');
  });

  it('grown by one blank of each kind it still hangs together, twice over', () => {
    let machine = scratchMachine('lathe-saddle', 'mine');
    for (let k = 0; k < 2; k++)
      machine = {
        ...machine,
        dimensions: [...machine.dimensions, blankDimension(machine)],
        bodies: [...machine.bodies, blankBody(machine)],
        ways: [...machine.ways, blankWay(machine)],
        slides: [...machine.slides, blankSlide(machine, 'double-v')],
        steps: [...machine.steps, blankStep(machine)],
      };
    expect(machineInput(machine, templates).steps.length).toBe(4);
  });

  it('ids are never taken twice', () => {
    expect(idFrom('Flat!', ['flat'])).toBe('flat-2');
    expect(idFrom('Flat width', ['flat_width', 'flat_width_2'], '_')).toBe('flat_width_3');
    expect(idFrom('—', [])).toBe('new');
  });

  it('what is wrong is said by the place’s own name', () => {
    const machine = scratchMachine('lathe-saddle', 'mine');
    const broken = {
      ...machine,
      steps: machine.steps.map((step, k) => (k === 1 ? { ...step, from: [{ way: 'bed', why: 'w' }] } : step)),
    };
    try {
      machineInput(broken, templates);
      expect.unreachable();
    } catch (failure) {
      const [issue] = (failure as BadInput).issues;
      expect(placeWords(broken, issue!.path)).toBe('Step “Saddle underside to the bed”, made from 1, way');
    }
    expect(placeWords(machine, 'dimensions[7].low')).toBe('Size 8, low');
    expect(placeWords(machine, 'title')).toBe('title');
    expect(placeWords(undefined, '')).toBe('The machine');
  });

  it('what has not a machine’s lists is not shown as lists', () => {
    const machine = scratchMachine('lathe-saddle', 'mine');
    expect(isListed(machine)).toBe(true);
    for (const broken of [undefined, 5, [], {}, { ...machine, steps: 5 }, { ...machine, ways: [null] }])
      expect(isListed(broken)).toBe(false);
    expect(isListed({ ...machine, steps: [{ ...machine.steps[0], hours: null }] })).toBe(false);
  });

  it('moves an item and leaves a list alone beyond its ends', () => {
    expect(moved([1, 2, 3], 2, 0)).toEqual([3, 1, 2]);
    expect(moved([1, 2, 3], 0, -1)).toEqual([1, 2, 3]);
  });
});
