import { z } from 'zod';
import { slope } from '../core/body/displacement.ts';
import { needs } from '../core/kit/doubt-of.ts';
import { type GradedKind, standards, standardsFor } from '../core/kit/grade.ts';
import {
  type Instrument,
  type Kit,
  type KitTarget,
  quantityOf,
  type Reference,
  type SetUp,
  usualApart_K,
} from '../core/kit/kit.ts';
import { type MaterialName, materials } from '../core/kit/material.ts';
import { checked } from './refusal.ts';
import { positive, sd } from './slide.ts';

/** What `kit` is asked: a kit, targets, and set-ups that are to prove them. */
export interface KitQuestion {
  readonly kit: Kit;
  readonly targets: readonly KitTarget[];
  readonly setups: readonly { readonly target: string; readonly setup: SetUp }[];
  /** Ratio of room to doubt that is aimed at. */
  readonly wanted: number;
}

const name = z.string().min(1).max(80);
const date = z.iso.date();
const owned = { name, checked: date.optional() };
const count = z.int().min(1).max(100);

/** An instrument as it is written. */
export const instrument = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('indicator'), ...owned, graduation_um: positive, repeatability_um: sd }),
  z.strictObject({
    kind: z.enum(['level', 'electronic level', 'autocollimator']),
    ...owned,
    graduation_urad: positive,
    repeatability_urad: sd,
    base_mm: positive,
    class: z.enum(['A', 'B']).optional(),
    zero_urad: sd.optional(),
  }),
]);

const known = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('grade'), standard: z.string(), grade: z.string() }),
  z.strictObject({ by: z.literal('certificate'), doubt_um: positive }),
  z.strictObject({ by: z.literal('limit'), limit_um: positive }),
]);

/** A reference as it is written; referenceFits says what a shape cannot. */
export const reference = z.strictObject({
  kind: z.enum(['plate', 'straightedge', 'square', 'test bar', 'parallels', 'gauge blocks']),
  ...owned,
  length_mm: positive,
  width_mm: positive.optional(),
  known,
  reseat_um: sd.optional(),
  depth_mm: positive.optional(),
  bore_mm: z.number().min(0).optional(),
  material: z.enum(Object.keys(materials) as [MaterialName, ...MaterialName[]]).optional(),
});

const target = z.union([
  z.strictObject({ name, low_urad: z.number().optional(), high_urad: z.number() }),
  z.strictObject({ name, low_um: z.number().optional(), high_um: z.number(), over_mm: positive.optional() }),
]);

const measured = { name, target: name, instrument: name };
const plane = z.enum(['vertical', 'horizontal']);
const setup = z.discriminatedUnion('method', [
  z.strictObject({
    method: z.literal('square sweep'),
    ...measured,
    reference: name,
    length_mm: positive,
    points: z.int().min(3).max(200),
    sweeps: count.default(1),
    seats: count.default(1),
    turned_over: z.boolean().default(false),
  }),
  z.strictObject({
    method: z.literal('level'),
    ...measured,
    readings: count.default(1),
    turned: z.boolean().default(false),
  }),
  z.strictObject({
    method: z.literal('level walk'),
    ...measured,
    length_mm: positive,
    runs: count.default(1),
  }),
  z.strictObject({
    method: z.literal('straightedge sweep'),
    ...measured,
    reference: name,
    length_mm: positive,
    sweeps: count.default(1),
    seats: count.default(1),
    turned_over: z.boolean().default(false),
    plane,
    support_mm: z.number().min(0).optional(),
    sag_taken_out: z.boolean().default(false),
    warmth: z.strictObject({ warmer_K: z.number().min(-50).max(50), sd_K: sd }).optional(),
  }),
  z.strictObject({
    method: z.literal('test bar'),
    ...measured,
    reference: name,
    length_mm: positive,
    readings: count.default(1),
    turned_half: z.boolean().default(false),
    plane,
    sag_taken_out: z.boolean().default(false),
  }),
  z.strictObject({
    method: z.literal('plate print'),
    name,
    target: name,
    reference: name,
    film_um: positive,
    prints: count.default(1),
  }),
  z.strictObject({
    method: z.literal('height by blocks'),
    ...measured,
    reference: name,
    height_mm: positive,
    blocks: z.int().min(1).max(10).default(3),
    readings: count.default(1),
    seats: count.default(1),
    apart_K: sd.default(usualApart_K),
  }),
  z.strictObject({ method: z.literal('level twist'), ...measured, readings: count.default(1) }),
  z.strictObject({ method: z.literal('carried indicator'), ...measured, sweeps: count.default(1) }),
  z.strictObject({
    method: z.literal('plate heights'),
    ...measured,
    reference: name,
    sweeps: count.default(1),
  }),
]);

const base = z.strictObject({
  instruments: z.array(instrument).max(100),
  references: z.array(reference).max(100),
  targets: z.array(target).min(1).max(100),
  setups: z.array(setup).min(1).max(100),
  wanted: z.number().min(1).max(100).default(4),
});
type Given = z.output<typeof base>;
type Say = (path: PropertyKey[], found: unknown, message: string) => void;

export const kitSchema = base.superRefine((given, context) => {
  const say: Say = (path, input, message) => context.addIssue({ code: 'custom', path, input, message });
  oneName(given.instruments, 'instruments', say);
  oneName(given.references, 'references', say);
  oneName(given.targets, 'targets', say);
  oneName(given.setups, 'setups', say);
  given.references.forEach((one, i) => {
    referenceFits(one, ['references', i], say);
  });
  given.targets.forEach((one, i) => {
    const [low, high] = 'high_urad' in one ? [one.low_urad, one.high_urad] : [one.low_um, one.high_um];
    const key = 'high_urad' in one ? 'high_urad' : 'high_um';
    if (!(high > (low ?? 0)))
      say(['targets', i, key], high, low === undefined ? 'above 0' : `above the lower limit, ${low}`);
  });
  given.setups.forEach((one, i) => {
    setupFits(one, i, given, say);
  });
});

function oneName(list: readonly { name: string }[], key: string, say: Say): void {
  list.forEach((one, i) => {
    if (list.findIndex((other) => other.name === one.name) < i)
      say([key, i, 'name'], one.name, 'a name not used before');
  });
}

/** Whether a reference's grade, standard and sizes go together. @param where  path of the reference in the input */
export function referenceFits(
  one: z.output<typeof reference>,
  where: readonly PropertyKey[],
  say: Say,
): void {
  const at = (...path: PropertyKey[]): PropertyKey[] => [...where, ...path];
  if (one.bore_mm !== undefined && !(one.bore_mm < (one.depth_mm ?? 0)))
    say(at('bore_mm'), one.bore_mm, 'less than depth_mm, the diameter');
  if (one.known.by !== 'grade') return;
  const fitting = standardsFor(one.kind as GradedKind);
  const standard = fitting.includes(one.known.standard) ? standards[one.known.standard] : undefined;
  if (!standard)
    say(
      at('known', 'standard'),
      one.known.standard,
      fitting.length ? fitting.join(', ') : `a certificate or a limit: no grades of a ${one.kind} are kept`,
    );
  else if (!standard.grades.includes(one.known.grade))
    say(at('known', 'grade'), one.known.grade, standard.grades.join(', '));
  if (one.kind === 'plate' && one.width_mm === undefined)
    say(at('width_mm'), undefined, 'the width of the plate');
}

function setupFits(one: Given['setups'][number], i: number, given: Given, say: Say): void {
  const at = (key: PropertyKey): PropertyKey[] => ['setups', i, key];
  const target = given.targets.find((other) => other.name === one.target);
  if (!target)
    say(
      at('target'),
      one.target,
      `a target of this file: ${given.targets.map((other) => other.name).join(', ')}`,
    );
  const need = needs[one.method];
  if ('instrument' in one) {
    const fit = given.instruments.filter((other) =>
      (need.instruments as readonly string[]).includes(other.kind),
    );
    if (!fit.some((other) => other.name === one.instrument))
      say(at('instrument'), one.instrument, named(need.instruments.join(' or '), fit));
  }
  if ('reference' in one) {
    const fit = given.references.filter((other) => other.kind === need.reference);
    const found = fit.find((other) => other.name === one.reference);
    if (!found) say(at('reference'), one.reference, named(need.reference ?? '', fit));
    else lengthFits(one, found, at, say);
  }
  if (target) unitFits(one as SetUp, target, at, say);
}

const named = (kind: string, fit: readonly { name: string }[]): string =>
  fit.length
    ? `a ${kind} of the kit: ${fit.map((one) => one.name).join(', ')}`
    : `a ${kind}; the kit has none`;

function lengthFits(
  one: Given['setups'][number],
  found: Given['references'][number],
  at: (key: PropertyKey) => PropertyKey[],
  say: Say,
): void {
  if ('length_mm' in one && one.length_mm > found.length_mm)
    say(at('length_mm'), one.length_mm, `at most the ${found.length_mm} mm of “${found.name}”`);
  if ('height_mm' in one && one.height_mm > found.length_mm)
    say(
      at('height_mm'),
      one.height_mm,
      `at most the ${found.length_mm} mm that “${found.name}” stacks up to`,
    );
  if ('support_mm' in one && one.support_mm !== undefined && one.support_mm > found.length_mm / 2)
    say(
      at('support_mm'),
      one.support_mm,
      `at most half the length of “${found.name}”, ${found.length_mm / 2} mm`,
    );
}

function unitFits(
  one: SetUp,
  target: Given['targets'][number],
  at: (key: PropertyKey) => PropertyKey[],
  say: Say,
): void {
  const isSlope = quantityOf(one) === 'slope';
  if (isSlope) {
    if (!('high_urad' in target) && target.over_mm === undefined)
      say(at('target'), target.name, 'a target in µrad, or in µm with over_mm: this set-up measures a slope');
    const low = 'high_urad' in target ? target.low_urad : target.low_um;
    // A twist is a size, its limit one.
    if (low === undefined && one.method !== 'level twist')
      say(at('target'), target.name, 'a target with both limits: a slope has two directions');
  } else if ('high_urad' in target || target.over_mm !== undefined)
    say(at('target'), target.name, 'a target in µm without over_mm: this set-up measures a height');
}

function targetOf(one: Given['targets'][number]): KitTarget {
  if ('high_urad' in one)
    return {
      name: one.name,
      high: one.high_urad,
      unit: 'urad',
      ...(one.low_urad === undefined ? {} : { low: one.low_urad }),
    };
  const { over_mm } = one;
  const sized = (um: number): number => (over_mm === undefined ? um : slope(um, over_mm));
  return {
    name: one.name,
    high: sized(one.high_um),
    unit: over_mm === undefined ? 'um' : 'urad',
    ...(one.low_um === undefined ? {} : { low: sized(one.low_um) }),
  };
}

/**
 * `kit`'s input, see docs/contract.md.
 * @throws BadInput
 */
export function kitQuestion(value: unknown): KitQuestion {
  const given = checked(kitSchema, value);
  return {
    kit: { instruments: given.instruments as Instrument[], references: given.references as Reference[] },
    targets: given.targets.map(targetOf),
    setups: given.setups.map(({ target: its, ...rest }) => ({ target: its, setup: rest as SetUp })),
    wanted: given.wanted,
  };
}
