import { z } from 'zod';
import type { Template } from '../core/ledger/template.ts';
import type { Machine } from '../core/order/machine.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { entryId } from './entry.ts';
import { machineInput } from './machine.ts';
import { BadInput, checked, quoted } from './refusal.ts';

/** What a job about a whole machine is asked for. */
export interface NewRebuild {
  readonly id: string;
  readonly at: string;
  readonly title: string;
  readonly machine: Machine;
}

const title = z.string().trim().min(1).max(200);
const at = z.iso.datetime({ offset: true });
export const rebuildSchema = z.strictObject({
  id: entryId,
  at,
  title,
  /** One of the program's by its id, or a whole machine. */
  machine: z.union([z.string(), z.looseObject({})]),
  /** Sizes in place of the machine's own, by key. */
  dimensions: z.record(z.string(), z.number()).optional(),
});

const under = (issues: BadInput['issues'], name: string): BadInput =>
  new BadInput(issues.map((one) => ({ ...one, path: one.path === '' ? name : `${name}.${one.path}` })));

/**
 * A new job about a whole machine: one of the program's, or one's own.
 * @throws BadInput  a machine that does not hang together, a size that cannot be
 */
export function newRebuild(
  value: unknown,
  machines: readonly Machine[],
  templates: readonly Template[],
): NewRebuild {
  const { machine: which, dimensions = {}, ...rest } = checked(rebuildSchema, value);
  const machine = typeof which === 'string' ? machines.find((one) => one.id === which) : which;
  if (!machine)
    throw new BadInput([
      {
        path: 'machine',
        found: quoted(which),
        expected: `a whole machine, or one of ${machines.map((one) => one.id).join(', ')}`,
      },
    ]);
  try {
    const whole = machineInput(machine, templates);
    const keys = whole.dimensions.map((one) => one.key);
    const stranger = Object.keys(dimensions).find((key) => !keys.includes(key));
    if (stranger !== undefined)
      throw new BadInput([
        { path: `dimensions.${stranger}`, found: quoted(stranger), expected: `one of ${keys.join(', ')}` },
      ]);
    const sized = whole.dimensions.map((one) => ({ ...one, value: dimensions[one.key] ?? one.value }));
    return { ...rest, machine: machineInput({ ...whole, dimensions: sized }, templates) };
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    throw under(failure.issues, 'machine');
  }
}

export const benchSchema = z.strictObject({ id: entryId, at });

/** A step's bench as it is asked for: the id that its job is to have. @throws BadInput */
export const newBench = (value: unknown): { readonly id: string; readonly at: string } =>
  checked(benchSchema, value);

const unitsAsked = z.looseObject({ units: z.enum(['metric', 'inch']).default('metric') });

/** The units that sentences are asked in, from an address's query. @throws BadInput  other units */
export const sentenceUnits = (query: unknown): UnitSystem => checked(unitsAsked, query ?? {}).units;
