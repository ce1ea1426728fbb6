import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../core/math/random.ts';
import type { Machine } from '../core/order/machine.ts';
import { needsOf, orderedSteps } from '../core/order/needs.ts';
import { progress, type StepDeed } from '../core/order/progress.ts';
import { machineInput } from './machine.ts';
import { BadInput } from './refusal.ts';
import { templateInput } from './template.ts';

const json = (file: string) => JSON.parse(readFileSync(file, 'utf8'));
const templates = readdirSync('machines')
  .filter((name) => name.endsWith('.json'))
  .map((name) => templateInput(json(`machines/${name}`)));
const names = readdirSync('machines/whole');
const whole = (name: string): Machine => machineInput(json(`machines/whole/${name}`), templates);

/** What stands on a step, found the long way: every path along the bases. */
function restsOn(machine: Machine, step: string, on: string): boolean {
  const made = machine.steps.find((one) => one.id === on)!.makes;
  return machine.steps
    .find((one) => one.id === step)!
    .from.some((basis) => {
      if (!('way' in basis)) return false;
      if (made.includes(basis.way)) return true;
      const maker = machine.steps.find((one) => one.makes.includes(basis.way));
      return maker !== undefined && restsOn(machine, maker.id, on);
    });
}

describe.each(names)('%s', (name) => {
  const machine = whole(name);

  it('no steps wait for each other in a ring, and every step comes behind all that it needs', () => {
    const ordered = orderedSteps(machine);
    if (!ordered.ok) throw new Error(ordered.ring.join(' → '));
    expect([...ordered.order].sort()).toEqual(machine.steps.map((step) => step.id).sort());
    for (const [id, needs] of needsOf(machine))
      for (const need of needs)
        expect(ordered.order.indexOf(need.step)).toBeLessThan(ordered.order.indexOf(id));
  });

  it('a reference scraped again re-opens exactly what stands on it, whichever it is', () => {
    const ordered = orderedSteps(machine);
    if (!ordered.ok) throw new Error('a ring');
    const all: StepDeed[] = ordered.order.map((step) => ({ step, what: 'done' }));
    expect(progress(machine, all).every((state) => state.status === 'done')).toBe(true);
    let most = 0;
    for (const { id } of machine.steps) {
      const open = progress(machine, [...all, { step: id, what: 'done' }])
        .filter((state) => state.status !== 'done')
        .map((state) => state.id);
      const expected = machine.steps.map((step) => step.id).filter((step) => restsOn(machine, step, id));
      expect(open, id).toEqual(expected);
      most = Math.max(most, open.length);
    }
    expect(most).toBeGreaterThan(machine.steps.length / 3);
  });

  it('any order of doing what is ready ends with everything done, even when work is done again on the way', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const next = seededRandom(seed).even;
      const deeds: StepDeed[] = [];
      let again = 3;
      for (let turn = 0; ; turn++) {
        expect(turn, `seed ${seed}`).toBeLessThan(20 * machine.steps.length);
        const states = progress(machine, deeds);
        const ready = states.filter((one) => one.status !== 'done' && one.waits_for.length === 0);
        if (ready.length === 0) {
          expect(
            states.every((one) => one.status === 'done'),
            `seed ${seed}`,
          ).toBe(true);
          break;
        }
        const pick = ready[Math.floor(next() * ready.length)]!;
        deeds.push({ step: pick.id, what: pick.was_done && next() < 0.5 ? 'proven' : 'done' });
        const finished = states.filter((one) => one.status === 'done');
        if (again > 0 && finished.length > 2 && next() < 0.1) {
          again--;
          deeds.push({ step: finished[Math.floor(next() * finished.length)]!.id, what: 'reopened' });
        }
      }
    }
  });

  it('every test that a step answers is in the list of the machine’s tests', () => {
    const list = json(`machines/tests/${machine.tests}.json`).tests.map((one: { id: string }) => one.id);
    const asked = machine.steps.flatMap((step) => step.proofs.flatMap((proof) => proof.test ?? []));
    expect(asked.length).toBeGreaterThan(5);
    for (const test of asked) expect(list).toContain(test);
  });

  it('acceptance stands on every way but those that a later setting of the machine replaces', () => {
    const acceptance = machine.steps.find((step) => step.id === 'acceptance')!;
    for (const step of machine.steps.filter((one) => one.makes.length > 0))
      if (!restsOn(machine, 'acceptance', step.id)) expect(['cross-top', 'table-bottom']).toContain(step.id);
    expect(acceptance.makes).toEqual([]);
  });
});

function issues(change: (machine: ReturnType<typeof json>) => void) {
  const machine = json('machines/whole/engine-lathe.json');
  change(machine);
  try {
    machineInput(machine, templates);
    return [];
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((one) => `${one.path}: ${one.expected}`);
    throw failure;
  }
}

describe('a machine that does not fit is told where and what is expected', () => {
  it('names that point nowhere', () => {
    expect(issues((m) => (m.ways[3].body = 'bett'))[0]).toMatch(/^ways\[3\]\.body: one of the bodies: bed, /);
    expect(issues((m) => (m.slides[0].template = 'lathe'))[0]).toMatch(
      /^slides\[0\]\.template: one of the slide/,
    );
    expect(issues((m) => (m.steps[2].makes = ['bed-tale'])).join('\n')).toContain(
      'steps[2].makes[0]: one of the ways',
    );
    expect(issues((m) => (m.steps[9].bench.setups = ['sqare']))[0]).toContain(
      'bench.setups[0]: a set-up of the template',
    );
    expect(issues((m) => (m.heights.places[0].body = 'x'))[0]).toContain('heights.places[0].body');
  });

  it('a way that two steps make, one that none makes, one made from itself', () => {
    expect(issues((m) => m.steps[3].makes.push('bed-tail'))[0]).toContain('"bed-datum" makes it');
    expect(issues((m) => delete m.ways[6].as_found)[0]).toContain(
      'a way that a step makes, or one with `as_found`',
    );
    expect(issues((m) => (m.steps[3].from[0].way = 'bed-flat'))[0]).toContain('does not make itself');
    expect(issues((m) => (m.steps[3].from = []))[0]).toMatch(
      /^steps\[3\]\.from: what its ways are made true from/,
    );
  });

  it('steps in a ring are told as the ring', () => {
    const ring = issues((m) => m.steps[2].from.push({ way: 'saddle-bottom', why: 'wrong' }));
    expect(ring).toEqual([expect.stringMatching(/^steps: steps that do not wait/)]);
  });

  it('sums over dimensions that are not there, sizes out of their bounds', () => {
    expect(issues((m) => (m.slides[0].dimensions.length = 'sadle'))[0]).toContain(
      'names the dimension "sadle"',
    );
    expect(issues((m) => (m.slides[0].dimensions.length = 12))[0]).toContain('slides[0].dimensions.length');
    expect(issues((m) => (m.dimensions[0].value = 50))[0]).toBe('dimensions[0].value: from 200 to 12000');
  });

  it('pads that the template does not have, and two of one name', () => {
    expect(issues((m) => (m.slides[0].pads = { v: 'front' }))[0]).toMatch(
      /^slides\[0\]\.pads\.v: a pad of the template: /,
    );
    expect(issues((m) => (m.slides[0].pads = { 'front flank': 'flat' }))[0]).toContain(
      'no other pad of the slide has',
    );
  });

  it('unknown keys, and the same id twice', () => {
    expect(issues((m) => (m.maker = 'x'))[0]).toBe('maker: it to be left out');
    expect(issues((m) => m.bodies.push({ id: 'bed', name: 'again' }))[0]).toContain('bodies[7].id');
  });
});
