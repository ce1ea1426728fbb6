import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { jobFile } from '../../contract/job-file.ts';
import { machineInput } from '../../contract/machine.ts';
import { foldJob } from '../../core/ledger/job.ts';
import type { Machine } from '../../core/order/machine.ts';
import { heldNames, type NamedList, renamed, renameRefusal } from './machine-rename.ts';

const templates = readTemplates();
const lists: readonly NamedList[] = ['dimensions', 'bodies', 'ways', 'slides', 'steps'];
const namesOf = (machine: Machine, list: NamedList): string[] =>
  machine[list].map((one) => ('key' in one ? one.key : one.id));

describe.each(readWholeMachines().map((machine) => [machine.id, machine] as const))('%s', (_, machine) => {
  it.each(lists)(
    'with every one of its %s called anew, one after the other, it still hangs together, and back again it is the same',
    (list) => {
      let now: Machine = machine;
      const to = (name: string): string => `${name}${list === 'dimensions' ? '_z9' : '-z9'}`;
      for (const name of namesOf(machine, list)) now = renamed(now, list, name, to(name));
      expect(namesOf(now, list)).toEqual(namesOf(machine, list).map(to));
      expect(() => machineInput(now, templates)).not.toThrow();
      for (const name of namesOf(machine, list)) now = renamed(now, list, to(name), name);
      expect(now).toEqual(machine);
    },
  );
});

describe('a name that cannot be', () => {
  const [machine] = readWholeMachines().filter((one) => one.id === 'engine-lathe');
  it('says why: letters, another’s name, or what the ledger holds; the same name is no change', () => {
    const why = (list: NamedList, to: string, held = {}) =>
      renameRefusal(machine!, list, namesOf(machine!, list)[0]!, to, held);
    const [first, second] = namesOf(machine!, 'ways');
    expect(why('ways', first!)).toBeUndefined();
    expect(why('ways', second!)).toBe(`Another way is “${second}” already; it stays “${first}”.`);
    expect(why('ways', 'Front flat')).toContain('small letters, figures and -');
    expect(why('dimensions', 'front-flat')).toContain('small letters, figures and _');
    expect(why('ways', 'front-flat')).toBeUndefined();
    expect(why('ways', 'front-flat', { ways: [first] })).toContain('The ledger holds what was done');
  });

  it('a half-done job holds the steps that hours were written of and the slides whose heights are set', () => {
    const { live } = foldJob(jobFile(JSON.parse(readFileSync('demo/lathe.job.json', 'utf8'))).entries);
    const held = heldNames(live);
    expect(held.steps).toContain('support');
    expect(held.slides).toContain('saddle-on-bed');
    expect(held.steps).not.toContain('cutting-tests');
  });
});
