import { z } from 'zod';
import { type HeldBar, type TurnedBar, usualReadingSd_um } from '../core/axis/bar-axis.ts';
import type { BarPlace } from '../core/axis/bar-sweep.ts';
import { type CentresReading, type SwungSag, swungSag } from '../core/axis/centres.ts';
import { barOf, heldOf, readingOf, turnedOf } from '../core/axis/usual-bar.ts';
import { materials } from '../core/kit/material.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { finite, name, place, sd } from './slide.ts';

const um = z.number().min(-1e5).max(1e5);
const turned = z.tuple([um, um]);
const long_mm = z.number().min(0).max(1e4);
const barSchema = {
  diameter_mm: z.number().min(1).max(500),
  bore_mm: z.number().min(0).max(499).optional(),
  density_kg_m3: z.number().min(500).max(25_000).optional(),
  modulus_GPa: z.number().min(1).max(1000).optional(),
};

const turnedKept = z.strictObject({ first_um: um, turned_um: um });
/** A bar and its readings as a ledger keeps them: nothing left out. */
export const barKept = {
  held: z.strictObject({
    bar: z.strictObject({
      diameter_mm: barSchema.diameter_mm,
      bore_mm: z.number().min(0).max(499),
      density_kg_m3: z.number().min(500).max(25_000),
      modulus_GPa: z.number().min(1).max(1000),
    }),
    out_mm: long_mm,
    near_mm: long_mm,
    far_mm: long_mm,
    reading_sd_um: sd,
  }),
  reading: z.strictObject({
    side: z.enum(['top', 'bottom', 'front', 'back']),
    near: turnedKept,
    far: turnedKept,
  }),
};

/** What is wrong with a bar: its places out of order or beyond its end, or a bore as wide as it is. */
export function barIssues({ bar, out_mm, near_mm, far_mm }: HeldBar, path: string): Issue[] {
  const issues: Issue[] = [];
  if (!(near_mm < far_mm))
    issues.push({ path: `${path}.far_mm`, found: String(far_mm), expected: `more than ${near_mm}` });
  if (!(far_mm <= out_mm))
    issues.push({ path: `${path}.out_mm`, found: String(out_mm), expected: `at least ${far_mm}` });
  if (bar.bore_mm >= bar.diameter_mm)
    issues.push({
      path: `${path}.bar.bore_mm`,
      found: String(bar.bore_mm),
      expected: `less than ${bar.diameter_mm}`,
    });
  return issues;
}

const band = z.strictObject({ low_um: um, high_um: um, over_mm: z.number().min(1).max(1e4) });

const centresSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('bar between centres'),
    plane: z.enum(['up', 'sideways']),
    ...barSchema,
    between_mm: long_mm,
    head_at_mm: long_mm,
    tail_at_mm: long_mm,
    head: turned,
    tail: turned,
    reading_sd_um: sd.optional(),
    low_um: um,
    high_um: um,
    aim_um: um,
  }),
  z.strictObject({
    kind: z.literal('swung indicator'),
    plane: z.enum(['up', 'sideways']),
    first_um: um,
    opposite_um: um,
    bracket_sag_um: z.number().min(0).max(1e4).optional(),
    bracket: z
      .strictObject({
        arm_mm: z.number().min(1).max(2000),
        diameter_mm: z.number().min(1).max(200),
        mass_kg: z.number().min(0).max(20),
        density_kg_m3: z.number().min(500).max(25_000).optional(),
        modulus_GPa: z.number().min(1).max(1000).optional(),
      })
      .optional(),
    reading_sd_um: sd.optional(),
    low_um: um,
    high_um: um,
    aim_um: um,
  }),
  z.strictObject({
    kind: z.literal('two bars'),
    plane: z.enum(['up', 'sideways']),
    first_um: um,
    exchanged_um: um,
    reading_sd_um: sd.optional(),
    low_um: um,
    high_um: um,
    aim_um: um,
  }),
]);

/** `axis`' input as it is written. */
export const axisSchema = z.strictObject({
  bar: z
    .strictObject({
      ...barSchema,
      out_mm: long_mm,
      near_mm: long_mm,
      far_mm: long_mm,
      reading_sd_um: sd.optional(),
    })
    .optional(),
  readings: z
    .array(z.strictObject({ side: z.enum(['top', 'bottom', 'front', 'back']), near: turned, far: turned }))
    .max(8)
    .optional(),
  bands: z.strictObject({ up: band.optional(), sideways: band.optional() }).optional(),
  centres: z.array(centresSchema).max(8).optional(),
  scrape: z
    .strictObject({
      machine: name,
      step: name,
      dimensions: z.record(z.string(), finite).optional(),
      nose_mm: place.optional(),
      toward: z.union([z.literal(1), z.literal(-1)]).optional(),
      /** Levels (µrad) and heights (µm) by the id of their set-up. */
      read: z.record(z.string(), finite).optional(),
    })
    .optional(),
});

type Written = z.output<typeof axisSchema>;

/** A band over a length. */
export interface AxisBand {
  readonly low_um: number;
  readonly high_um: number;
  readonly over_mm: number;
}

/** What `axis` is asked, with what was left out filled in. */
export interface AxisAsk {
  readonly held?: HeldBar;
  readonly readings: readonly TurnedBar[];
  readonly bands: { readonly up?: AxisBand; readonly sideways?: AxisBand };
  readonly centres: readonly (CentresReading & {
    readonly low_um: number;
    readonly high_um: number;
    readonly aim_um: number;
  })[];
  readonly scrape?: {
    /** Where the bar is held; left out: as the bench's own line along it has it. */
    readonly place?: BarPlace;
    readonly machine: string;
    readonly step: string;
    readonly dimensions: Readonly<Record<string, number>>;
    readonly read: Readonly<Record<string, number>>;
  };
}

type WrittenBar = Pick<NonNullable<Written['bar']>, keyof typeof barSchema>;
type WrittenSwing = Extract<z.output<typeof centresSchema>, { kind: 'swung indicator' }>;
/** Read on something stiff, worked out, or nothing: sideways its weight does not bend it toward the barrel. */
function bracketOf({ plane, bracket, bracket_sag_um }: WrittenSwing, reading_sd_um: number): SwungSag {
  if (plane === 'sideways') return { um: 0, sd_um: 0 };
  // It is the difference of two readings itself.
  if (bracket_sag_um !== undefined) return { um: bracket_sag_um, sd_um: reading_sd_um * Math.SQRT2 };
  const { arm_mm, diameter_mm, mass_kg } = bracket!;
  const { density_kg_m3 = materials.steel.density_kg_m3, modulus_GPa = materials.steel.modulus_GPa } =
    bracket!;
  return swungSag({ arm_mm, diameter_mm, mass_kg, density_kg_m3, modulus_GPa });
}

const scrapeOf = ({
  nose_mm,
  toward,
  dimensions = {},
  read = {},
  ...rest
}: NonNullable<Written['scrape']>): NonNullable<AxisAsk['scrape']> => ({
  ...rest,
  ...(nose_mm && toward ? { place: { nose_mm, toward } } : {}),
  dimensions,
  read,
});

/**
 * `axis`' input, see docs/contract.md.
 * @throws BadInput
 */
export function axisInput(value: unknown): AxisAsk {
  const written = checked(axisSchema, value);
  const issues = axisIssues(written);
  if (issues.length > 0) throw new BadInput(issues);
  const { bar, readings = [], bands = {}, centres = [], scrape } = written;
  return {
    ...(bar ? { held: heldOf(bar) } : {}),
    readings: readings.map(readingOf),
    bands: { ...(bands.up ? { up: bands.up } : {}), ...(bands.sideways ? { sideways: bands.sideways } : {}) },
    centres: centres.map((one) => {
      const { low_um, high_um, aim_um, plane, reading_sd_um = usualReadingSd_um } = one;
      const common = { low_um, high_um, aim_um, plane, reading_sd_um };
      if (one.kind === 'two bars')
        return { ...common, kind: one.kind, first_um: one.first_um, exchanged_um: one.exchanged_um };
      if (one.kind === 'swung indicator') {
        const { kind, first_um, opposite_um } = one;
        return { ...common, kind, first_um, opposite_um, bracket: bracketOf(one, reading_sd_um) };
      }
      const { kind, between_mm, head_at_mm, tail_at_mm } = one;
      const read = { head: turnedOf(one.head), tail: turnedOf(one.tail) };
      return { ...common, kind, bar: barOf(one), between_mm, head_at_mm, tail_at_mm, ...read };
    }),
    ...(scrape ? { scrape: scrapeOf(scrape) } : {}),
  };
}

/** Places out of order, bands the wrong way round, a bore as wide as its bar, nothing to work on. */
function axisIssues(written: Written): Issue[] {
  const issues: Issue[] = [];
  const add = (path: string, found: unknown, expected: string) =>
    issues.push({ path, found: String(found), expected });
  const { bar, readings = [], bands = {}, centres = [] } = written;
  if (readings.length === 0 && centres.length === 0)
    add('readings', 'nothing', 'readings of a bar, or `centres`');
  if (readings.length > 0 && !bar) add('bar', 'nothing', 'the bar that was read');
  if (bar && !(bar.near_mm < bar.far_mm)) add('bar.far_mm', bar.far_mm, `more than ${bar.near_mm}`);
  if (bar && !(bar.far_mm <= bar.out_mm)) add('bar.out_mm', bar.out_mm, `at least ${bar.far_mm}`);
  const bored = (path: string, one: WrittenBar) => {
    if ((one.bore_mm ?? 0) >= one.diameter_mm)
      add(`${path}.bore_mm`, one.bore_mm, `less than ${one.diameter_mm}`);
  };
  if (bar) bored('bar', bar);
  for (const plane of ['up', 'sideways'] as const) {
    const its = bands[plane];
    if (its && !(its.low_um < its.high_um))
      add(`bands.${plane}.high_um`, its.high_um, `more than ${its.low_um}`);
  }
  const { scrape } = written;
  if (scrape && (scrape.nose_mm === undefined) !== (scrape.toward === undefined))
    add(
      'scrape.toward',
      scrape.toward ?? 'nothing',
      'it and `nose_mm` together, or neither: as the bench’s set-up has them',
    );
  centres.forEach((one, k) => {
    const path = `centres[${k}]`;
    if (!(one.low_um < one.high_um)) add(`${path}.high_um`, one.high_um, `more than ${one.low_um}`);
    else if (!(one.low_um <= one.aim_um && one.aim_um <= one.high_um))
      add(`${path}.aim_um`, one.aim_um, `from ${one.low_um} to ${one.high_um}`);
    if (one.kind === 'two bars') return;
    if (one.kind === 'swung indicator') {
      const said = [one.bracket, one.bracket_sag_um].filter((it) => it !== undefined).length;
      if (one.plane === 'up' ? said !== 1 : said > 0)
        add(
          `${path}.bracket_sag_um`,
          said === 0 ? 'nothing' : said === 1 ? 'the sag of a bracket' : '`bracket` too',
          one.plane === 'up'
            ? 'what the bracket reads too much, top less underside, on something true; or `bracket` to work it out'
            : 'nothing: a bracket sags down, not sideways',
        );
      return;
    }
    bored(path, one);
    if (!(one.head_at_mm < one.tail_at_mm))
      add(`${path}.tail_at_mm`, one.tail_at_mm, `more than ${one.head_at_mm}`);
    if (!(one.tail_at_mm <= one.between_mm))
      add(`${path}.between_mm`, one.between_mm, `at least ${one.tail_at_mm}`);
  });
  return issues;
}
