import { z } from 'zod';
import type { Machine } from '../core/order/machine.ts';
import type { StepDeed } from '../core/order/progress.ts';
import { BadInput, checked, type Issue } from './refusal.ts';

const hours = z.number().min(0).max(10_000);
const deedsSchema = z.array(
  z.strictObject({
    step: z.string(),
    what: z.enum(['begun', 'done', 'proven', 'reopened', 'worked']),
    hours: hours.optional(),
  }),
);
export const progressFile = z.strictObject({ machine: z.string(), deeds: deedsSchema });

/** A machine with what was done to it so far. */
export interface OrderFile {
  readonly machine: Machine;
  readonly deeds: readonly StepDeed[];
}

/**
 * `order`'s file: a machine as in machines/whole, or {machine: id, deeds[]} for one of the program's.
 * @throws BadInput
 */
export function orderFile(
  value: unknown,
  machines: readonly Machine[],
  machineOf: (value: unknown) => Machine,
): OrderFile {
  if (value === null || typeof value !== 'object' || !('machine' in value))
    return { machine: machineOf(value), deeds: [] };
  const { machine: id, deeds } = checked(progressFile, value);
  const machine = machines.find((one) => one.id === id);
  if (!machine)
    throw new BadInput([
      {
        path: 'machine',
        found: JSON.stringify(id),
        expected: `one of ${machines.map((one) => one.id).join(', ')}`,
      },
    ]);
  const issues = deeds.flatMap(({ step }, k) => unknownStep(step, `deeds[${k}].step`, machine));
  if (issues.length > 0) throw new BadInput(issues);
  return { machine, deeds: deeds as readonly StepDeed[] };
}

function unknownStep(step: string, path: string, machine: Machine): Issue[] {
  const ids = machine.steps.map((one) => one.id);
  if (ids.includes(step)) return [];
  return [{ path, found: JSON.stringify(step), expected: `one of ${ids.join(', ')}` }];
}

const whats: Readonly<Record<string, StepDeed['what']>> = {
  begun: 'begun',
  done: 'done',
  again: 'done',
  proven: 'proven',
  open: 'reopened',
  worked: 'worked',
};

/**
 * The words behind `--done`: `survey,support=5.5,again:support,proven:bed-flat`.
 * @throws BadInput  naming the word, and what is expected
 */
export function orderedDeeds(text: string, machine: Machine): readonly StepDeed[] {
  const issues: Issue[] = [];
  const words = text.split(',').map((word) => word.trim());
  const deeds = words.flatMap((word, k): StepDeed[] => {
    if (word === '') {
      if (words.length > 1)
        issues.push({ path: `--done, word ${k + 1}`, found: 'nothing', expected: 'a step' });
      return [];
    }
    const path = `--done, word ${k + 1}`;
    const parts = /^(?:([a-z]+):)?([^:=]+)(?:=(.*))?$/.exec(word);
    const [, how = 'done', step = word, spent] = parts ?? [];
    const what = Object.hasOwn(whats, how) ? whats[how] : undefined;
    if (!what)
      issues.push({
        path,
        found: JSON.stringify(word),
        expected: `${Object.keys(whats).join(':, ')}: or no such word`,
      });
    issues.push(...unknownStep(step, path, machine));
    const given = spent === undefined ? undefined : hours.safeParse(Number(spent.trim() || 'none'));
    if (given && !given.success)
      issues.push({ path, found: JSON.stringify(word), expected: 'hours from 0 to 10000 behind the =' });
    if (what === 'worked' && spent === undefined)
      issues.push({
        path,
        found: JSON.stringify(word),
        expected: 'the hours worked, such as worked:bed-v=6',
      });
    return what ? [{ step, what, ...(given?.success ? { hours: given.data } : {}) }] : [];
  });
  if (issues.length > 0) throw new BadInput(issues);
  return deeds;
}
