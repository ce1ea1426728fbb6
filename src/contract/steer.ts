import { z } from 'zod';
import type { Pad } from '../core/body/pad.ts';
import type { SteerInput } from '../core/observe/round.ts';
import { checked } from './refusal.ts';
import {
  causeText,
  direction,
  film_um,
  finite,
  name,
  notNegative,
  pass_um,
  perPad,
  place,
  sd,
  slideSchema,
  slope_urad,
  slopeSd_urad,
} from './slide.ts';

/** Real slides stay within metres and millimetres of error; beyond this it is a slip of unit. */
const reading_um = z.number().min(-1e6).max(1e6);

const sweepSchema = z
  .strictObject({
    name,
    rides: z.enum(['slide', 'reference']),
    touches: z.enum(['slide', 'reference']),
    plunger: direction,
    points_mm: z.array(place).min(2).max(2000),
    readings_um: z.array(reading_um).min(2).max(2000),
    reading_sd_um: sd,
    face_slope_urad: slope_urad,
    face_slope_sd_urad: slopeSd_urad,
    face: name.optional(),
    turned_over: z.boolean().optional(),
  })
  .superRefine((sweep, context) => {
    const { points_mm, readings_um } = sweep;
    if (points_mm.length !== readings_um.length)
      context.addIssue({
        code: 'custom',
        path: ['readings_um'],
        input: readings_um,
        message: `one reading for each of the ${points_mm.length} points`,
      });
    if (sweep.rides === sweep.touches)
      context.addIssue({
        code: 'custom',
        path: ['touches'],
        input: sweep.touches,
        message: `the other side than rides ("${sweep.rides}"): an indicator that rides what it touches sees nothing`,
      });
    const first = points_mm[0]!;
    if (points_mm.every((p) => p.every((part, i) => Math.abs(part - first[i]!) < 1e-6)))
      context.addIssue({
        code: 'custom',
        path: ['points_mm'],
        input: points_mm,
        message: 'at least two different places',
      });
  });

const levelSchema = z.strictObject({ name, along: direction, reading_urad: reading_um, sd_urad: sd });

const heightSchema = z.strictObject({ name, at_mm: place, direction, reading_um, sd_um: sd });

const scrapedSchema = z
  .record(z.string(), z.union([z.boolean(), z.array(z.number().min(0).max(200))]))
  .superRefine((scraped, context) => {
    for (const [key, value] of Object.entries(scraped)) {
      if ((key === 'spot') !== (typeof value === 'boolean'))
        context.addIssue({
          code: 'custom',
          path: [key],
          input: value,
          message: key === 'spot' ? 'true or false' : 'a list of passes, one for each zone',
        });
    }
  })
  .transform((scraped) => {
    const { spot, ...passes } = scraped;
    return { spot: spot === true, passes: passes as Record<string, number[]> };
  });

const roundSchema = z.strictObject({
  sweeps: z.array(sweepSchema).max(200),
  levels: z.array(levelSchema).max(200),
  heights: z.array(heightSchema).max(200).optional(),
  print: perPad(z.number().min(0).max(1)).optional(),
  scraped: scrapedSchema.optional(),
  ruled_out: z.array(causeText).max(200).optional(),
});

export const featureSchema = z.discriminatedUnion('kind', [
  z.strictObject({ name, kind: z.literal('turn'), axis: z.enum(['x', 'y', 'z']) }),
  z.strictObject({ name, kind: z.literal('shift'), at_mm: place, direction }),
]);

export const targetSchema = z
  .strictObject({
    feature: name,
    low: finite,
    high: finite,
    aim: finite.optional(),
    guard: z.number().min(0).max(1).optional(),
  })
  .superRefine((target, context) => {
    if (target.low >= target.high)
      context.addIssue({
        code: 'custom',
        path: ['high'],
        input: target.high,
        message: `more than low (${target.low})`,
      });
    if (target.aim !== undefined && (target.aim < target.low || target.aim > target.high))
      context.addIssue({
        code: 'custom',
        path: ['aim'],
        input: target.aim,
        message: `a value from low (${target.low}) to high (${target.high})`,
      });
  });

export const sinkSchema = z.strictObject({
  name,
  at_mm: place,
  direction: direction.optional(),
  most_um: notNegative,
});

/** What a pass takes off each material, as first believed. */
export const passesSchema = z.record(
  z.string(),
  z.strictObject({ um: pass_um, sd_um: z.number().min(0).max(1e4) }),
);

/** `steer`'s input, see docs/contract.md. */
export const steerSchema = z
  .strictObject({
    slide: slideSchema,
    features: z.array(featureSchema).min(1).max(24),
    targets: z.array(targetSchema).min(1).max(24),
    passes: passesSchema,
    sink: z.array(sinkSchema).max(24).optional(),
    film_um: film_um.optional(),
    rounds: z.array(roundSchema).min(1).max(200),
  })
  .superRefine((input, context) => {
    const refuse = (path: (string | number)[], found: unknown, expected: string) =>
      context.addIssue({ code: 'custom', path, input: found, message: expected });
    const features = input.features.map((feature) => feature.name);
    if (new Set(features).size !== features.length)
      refuse(['features'], features, 'features with different names');
    const targets = input.targets.map((target) => target.feature);
    if (new Set(targets).size !== targets.length) refuse(['targets'], targets, 'one target for a feature');
    targets.forEach((target, k) => {
      if (!features.includes(target)) refuse(['targets', k, 'feature'], target, `one of ${listed(features)}`);
    });
    for (const [k, pad] of input.slide.pads.entries())
      if (!Object.hasOwn(input.passes, pad.material))
        refuse(
          ['slide', 'pads', k, 'material'],
          pad.material,
          `a material of passes (${listed(Object.keys(input.passes))})`,
        );
    input.rounds.forEach((round, r) => {
      checkPads(input.slide, round.print, ['rounds', r, 'print'], refuse);
      checkPads(input.slide, round.scraped?.passes, ['rounds', r, 'scraped'], refuse);
    });
  });

const listed = (names: readonly string[]): string => names.map((n) => JSON.stringify(n)).join(', ') || 'none';

function checkPads(
  slide: { readonly pads: readonly Pick<Pad, 'name' | 'zones'>[] },
  byPad: Readonly<Record<string, readonly number[]>> | undefined,
  path: (string | number)[],
  refuse: (path: (string | number)[], found: unknown, expected: string) => void,
): void {
  for (const [key, values] of Object.entries(byPad ?? {})) {
    const pad = slide.pads.find((one) => one.name === key);
    if (!pad)
      refuse([...path, key], values, `a pad of the slide: ${listed(slide.pads.map((one) => one.name))}`);
    else if (values.length !== pad.zones)
      refuse([...path, key], values, `${pad.zones} numbers, one for each zone`);
  }
}

/**
 * `steer`’s input as it came; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export const steerInput = (value: unknown): SteerInput => checked(steerSchema, value) as SteerInput;
