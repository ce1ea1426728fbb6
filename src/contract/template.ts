import { z } from 'zod';
import type { JobPlan } from '../core/ledger/entry.ts';
import { buildPlan, type Template, type TemplateAnswers } from '../core/ledger/template.ts';
import { madeBlockFaults, madeBlockShape } from './made-block.ts';
import { sizeName as key, measure, measuredPlace, measuredTarget, fileWords as words } from './measured.ts';
import { BadInput, checked } from './refusal.ts';
import { setupKinds } from './setup.ts';
import { direction, film_um, finite, name, pass_um, positive } from './slide.ts';

export type { Template } from '../core/ledger/template.ts';

const bearing = {
  length_mm: measure,
  zones: z.int().min(1).max(60),
  x_mm: measure.optional(),
  y_mm: measure,
  z_mm: measure.optional(),
  stock_um: measure.optional(),
  material: name.optional(),
};

const waySchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('vee'),
    shape: z.enum(['ridge', 'groove']),
    minus_name: name,
    plus_name: name,
    minus_deg: measure,
    plus_deg: measure,
    minus_width_mm: measure,
    plus_width_mm: measure,
    ...bearing,
  }),
  z.strictObject({ kind: z.literal('flat'), name, width_mm: measure, ...bearing }),
  z.strictObject({
    kind: z.literal('flank'),
    name,
    width_mm: measure,
    angle_deg: measure,
    faces: z.enum(['out', 'in']),
    ...bearing,
  }),
  z.strictObject({ kind: z.literal('pad'), name, width_mm: measure, normal: measuredPlace, ...bearing }),
]);

const setupSchema = setupKinds(measuredPlace, {
  id: key,
  name,
  question: words,
  drawing: name,
  tells: z.array(name).min(1),
  rides_words: words,
  touches_words: words,
  plus_words: words,
  climbs_words: words,
  falls_words: words,
  caution: words.optional(),
});

/** A machine's file, machines/*.json. */
export const templateSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/, { error: 'small letters, figures and -' }),
    title: words,
    part: name,
    description: words,
    dimensions: z
      .array(
        z.strictObject({
          key,
          label: words,
          unit: z.enum(['mm', 'deg', 'um']),
          value: finite.optional(),
          low: finite,
          high: finite,
          where: words,
        }),
      )
      .min(1),
    surface: z.strictObject({ label: words, options: z.array(name).min(1), value: name }),
    materials: z.record(
      name,
      z.strictObject({
        label: words,
        um: pass_um,
        sd_um: z.number().min(0).max(1e4),
        source: words,
      }),
    ),
    ways: z.array(waySchema).min(1),
    features: z
      .array(
        z.discriminatedUnion('kind', [
          z.strictObject({ name, kind: z.literal('turn'), axis: z.enum(['x', 'y', 'z']) }),
          z.strictObject({ name, kind: z.literal('shift'), at_mm: measuredPlace, direction }),
        ]),
      )
      .min(1),
    targets: z
      .array(
        z.strictObject({
          ...measuredTarget,
          guard: z.number().min(0).max(1).optional(),
        }),
      )
      .min(1),
    words: z.array(
      z.strictObject({
        feature: name,
        span_mm: positive,
        minus: words,
        plus: words,
        minus_sentence: words,
        plus_sentence: words,
      }),
    ),
    places: z.strictObject({
      minus_end: words,
      plus_end: words,
      minus_side: words,
      plus_side: words,
      travel: z.enum(['x', 'y', 'z']),
    }),
    film_um: film_um.optional(),
    sink: z.array(z.strictObject({ name, at_mm: measuredPlace, most_um: measure })).optional(),
    setups: z.array(setupSchema).min(1),
    makes: madeBlockShape(measuredPlace).optional(),
    cautions: z.array(words),
  })
  .superRefine((template, context) => {
    for (const fault of templateFaults(template as Template))
      context.addIssue({ code: 'custom', path: fault.path, input: fault.found, message: fault.expected });
  });

interface TemplateFault {
  readonly path: (string | number)[];
  readonly found: unknown;
  readonly expected: string;
}

/** What the shape alone cannot tell: names that point nowhere, measures over dimensions that do not exist. */
function templateFaults(template: Template): TemplateFault[] {
  const faults: TemplateFault[] = [];
  const expectOne = (path: (string | number)[], found: string, among: readonly string[]) => {
    if (!among.includes(found)) faults.push({ path, found, expected: `one of ${among.join(', ')}` });
  };
  const materials = Object.keys(template.materials);
  const features = template.features.map((feature) => feature.name);
  expectOne(['surface', 'value'], template.surface.value, template.surface.options);
  template.surface.options.forEach((option, k) => {
    expectOne(['surface', 'options', k], option, materials);
  });
  template.ways.forEach((way, k) => {
    if (way.material !== undefined) expectOne(['ways', k, 'material'], way.material, materials);
  });
  template.targets.forEach((target, k) => {
    expectOne(['targets', k, 'feature'], target.feature, features);
  });
  template.setups.forEach((setup, k) => {
    setup.tells.forEach((told, i) => {
      expectOne(['setups', k, 'tells', i], told, features);
    });
  });
  for (const feature of features)
    if (!template.words.some((one) => one.feature === feature))
      faults.push({ path: ['words'], found: template.words, expected: `words for the feature "${feature}"` });
  if (template.makes)
    for (const { path, found, expected } of madeBlockFaults(template.makes, template.places.travel))
      faults.push({ path: ['makes', ...path], found, expected });
  template.dimensions.forEach((dimension, k) => {
    const { value = dimension.low, low, high } = dimension;
    if (!(low <= value && value <= high))
      faults.push({ path: ['dimensions', k, 'value'], found: value, expected: `from ${low} to ${high}` });
  });
  try {
    const built = buildPlan(template, {}, template.title);
    if (!built.ok)
      for (const { key, expected } of built.refusals) faults.push({ path: [key], found: template, expected });
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
    faults.push({ path: [], found: template, expected: `measures that can be read: ${fault.message}` });
  }
  return faults;
}

/**
 * A form of slides, machines/*.json or the user’s own, as it came; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export const templateInput = (value: unknown): Template => checked(templateSchema, value) as Template;

/** What a request says about the machine: its dimensions by key, and under "surface" a material. */
export const answersSchema = z.record(z.string().max(100), z.union([finite, z.string().max(200)]));

/**
 * A job's plan from a template and the user's dimensions.
 * @param under  where the dimensions stand in the request, for the refusal: "dimensions"
 * @throws BadInput  naming each dimension that cannot be taken
 */
export function plannedJob(
  template: Template,
  answers: TemplateAnswers,
  title: string,
  under = 'dimensions',
): JobPlan {
  const built = buildPlan(template, answers, title);
  if (built.ok) return built.plan;
  throw new BadInput(
    built.refusals.map(({ key, found, expected }) => ({ path: `${under}.${key}`, found, expected })),
  );
}
