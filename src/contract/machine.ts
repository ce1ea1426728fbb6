import { z } from 'zod';
import type { Template } from '../core/ledger/template.ts';
import { type Machine, stepScreens } from '../core/order/machine.ts';
import { machineFaults } from './machine-fits.ts';
import { madeBlockShape } from './made-block.ts';
import { sizeName as key, measure, measuredPlace, measuredTarget, fileWords as words } from './measured.ts';
import { checked } from './refusal.ts';
import { finite, name } from './slide.ts';

export type { Machine } from '../core/order/machine.ts';

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, { error: 'small letters, figures and -' });
const hours = z.number().min(0.05).max(2000);

const slideSchema = z.strictObject({
  id,
  name,
  moves: id,
  on: id,
  template: id,
  dimensions: z.record(z.string(), measure).optional(),
  pads: z.record(z.string(), name).optional(),
  targets: z.array(z.strictObject(measuredTarget)).optional(),
  places: z
    .strictObject({
      minus_end: words.optional(),
      plus_end: words.optional(),
      minus_side: words.optional(),
      plus_side: words.optional(),
    })
    .optional(),
  words: z
    .array(
      z.strictObject({
        feature: name,
        minus: words,
        plus: words,
        minus_sentence: words,
        plus_sentence: words,
      }),
    )
    .optional(),
  makes: z.union([z.literal('as the template'), madeBlockShape(measuredPlace)]).optional(),
  setups: z
    .array(
      z.strictObject({
        id: key,
        name: name.optional(),
        question: words.optional(),
        rides_words: words.optional(),
        touches_words: words.optional(),
        plus_words: words.optional(),
        caution: words.optional(),
      }),
    )
    .optional(),
});

const stepSchema = z.strictObject({
  id,
  title: words,
  reason: words,
  makes: z.array(id),
  from: z.array(
    z.union([z.strictObject({ way: id, why: words }), z.strictObject({ master: words, why: words })]),
  ),
  after: z.array(z.strictObject({ step: id, why: words })).optional(),
  bench: z
    .strictObject({
      slide: id,
      setups: z.array(key).min(1).optional(),
      features: z.array(name).min(1).optional(),
    })
    .optional(),
  opens: z
    .array(z.strictObject({ screen: z.enum(stepScreens), what: words, sum: z.string().optional() }))
    .max(12)
    .optional(),
  proofs: z.array(z.strictObject({ what: words, with: words, test: id.optional() })),
  cautions: z.array(words),
  hours: z.strictObject({ likely: hours, again: hours.optional() }),
});

const heightsSchema = z.strictObject({
  places: z.array(z.strictObject({ name, body: id, at_mm: measuredPlace })).min(2),
  joints: z.array(z.strictObject({ slide: id, origin_mm: measuredPlace, travel: z.enum(['x', 'y']) })).min(1),
  heights: z
    .array(
      z.strictObject({
        name,
        from: name,
        to: name,
        low_um: finite,
        high_um: finite,
        aim_um: finite,
        why: words.optional(),
        rack_deg: z.number().min(10).max(30).optional(),
      }),
    )
    .min(1),
});

/** A machine's shape; what its names point to is {@link machineInput}'s to say. */
export const machineShape = z.strictObject({
  id,
  title: words,
  description: words,
  tests: id.optional(),
  dimensions: z.array(
    z.strictObject({
      key,
      label: words,
      unit: z.enum(['mm', 'deg', 'um', 'kg']),
      value: finite,
      low: finite,
      high: finite,
      where: words,
    }),
  ),
  bodies: z
    .array(z.strictObject({ id, name, caution: words.optional() }))
    .min(1)
    .max(60),
  ways: z.array(z.strictObject({ id, body: id, name, as_found: words.optional() })).max(200),
  slides: z.array(slideSchema).max(40),
  steps: z.array(stepSchema).min(1).max(120),
  heights: heightsSchema.optional(),
});

/**
 * A whole machine, machines/whole/*.json or the user's own.
 * @param templates  the slide templates that it may use
 * @throws BadInput  everything that is wrong with it at once
 */
export function machineInput(value: unknown, templates: readonly Template[]): Machine {
  const fitting = machineShape.superRefine((given, context) => {
    for (const fault of machineFaults(given as Machine, templates))
      context.addIssue({ code: 'custom', path: fault.path, input: fault.found, message: fault.expected });
  });
  return checked(fitting, value) as Machine;
}
