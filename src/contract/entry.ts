import { z } from 'zod';
import type { Deed, Entry } from '../core/ledger/entry.ts';
import { axisSchema, barKept } from './axis.ts';
import { chartSetSchema, resultSchema } from './chart.ts';
import { gibSchema } from './gib.ts';
import { heightsKept } from './heights.ts';
import { machineShape } from './machine.ts';
import { madeBlockShape } from './made-block.ts';
import { practiceShape } from './practice.ts';
import { cornersSchema, exclusionsSchema, surfaceSchema } from './print.ts';
import { checked } from './refusal.ts';
import { setupKinds } from './setup.ts';
import { causeText, film_um, name, perPad, place, positive, slideSchema } from './slide.ts';
import { featureSchema, passesSchema, sinkSchema, targetSchema } from './steer.ts';
import { hingeSchema, rockSchema, surveyShape } from './survey-record.ts';

const words = z.string().max(500);
const longText = z.string().max(5_000);
/** Rounds are counted from 1; nobody scrapes five hundred. */
const round = z.int().min(1).max(500);
export const entryId = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, figures, - and _, at most 64');
/** A photo is called by the SHA-256 of its bytes. */
export const photoHash = z.string().refine((text) => /^[0-9a-f]{64}$/.test(text), {
  error: 'the SHA-256 of a photo, 64 figures 0-9 and a-f',
});
const time = z.iso.datetime({ offset: true });

const setupSchema = setupKinds(place, {
  id: name,
  name,
  question: words,
  drawing: name,
  tells: z.array(name).max(24),
  rides_words: words,
  touches_words: words,
  plus_words: words,
  climbs_words: words,
  falls_words: words,
  caution: words.optional(),
});

export const featureWordsSchema = z.strictObject({
  feature: name,
  span_mm: positive,
  minus: words,
  plus: words,
  minus_sentence: words,
  plus_sentence: words,
});

export const placesSchema = z.strictObject({
  minus_end: words,
  plus_end: words,
  minus_side: words,
  plus_side: words,
  travel: z.enum(['x', 'y', 'z']),
});

export const planSchema = z.strictObject({
  title: z.string().min(1).max(200),
  template: name,
  demo: words.optional(),
  slide: slideSchema,
  features: z.array(featureSchema).min(1).max(24),
  targets: z.array(targetSchema).min(1).max(24),
  words: z.array(featureWordsSchema).max(24),
  places: placesSchema,
  passes: passesSchema,
  sink: z.array(sinkSchema).max(24).optional(),
  film_um: film_um.optional(),
  setups: z.array(setupSchema).max(60),
  makes: madeBlockShape(place).optional(),
  cautions: z.array(words).max(30),
});

const reading = z.strictObject({ typed: z.string().max(60), value: z.number().min(-1e6).max(1e6) });

const record = z.strictObject({
  push: z.enum(['climbed', 'fell']).optional(),
  other_side: z.boolean().optional(),
  turned_over: z.boolean().optional(),
  support: words.optional(),
  temperature_C: z.number().min(-40).max(80).optional(),
});

const taken = { round, setup: name, repeat: z.int().min(0).max(99).optional(), record };

/** What can be written into a ledger, by its kind. */
const deeds = [
  z.strictObject({ kind: z.literal('job made'), plan: planSchema }),
  z.strictObject({ kind: z.literal('plan amended'), change: planSchema.partial() }),
  z.strictObject({ kind: z.literal('sweep taken'), ...taken, readings: z.array(reading).min(2).max(200) }),
  z.strictObject({ kind: z.literal('level read'), ...taken, reading }),
  z.strictObject({ kind: z.literal('height read'), ...taken, reading }),
  z.strictObject({
    kind: z.literal('bar read'),
    round,
    setup: name,
    repeat: z.int().min(0).max(99).optional(),
    ...barKept,
  }),
  z.strictObject({
    kind: z.literal('print read'),
    round,
    share: perPad(z.number().min(0).max(1)),
    tapped: perPad(z.enum(['burnished', 'heavy', 'faint', 'none'])).optional(),
  }),
  z.strictObject({
    kind: z.literal('print photographed'),
    round,
    pad: name,
    photo: photoHash,
    corners: cornersSchema,
    size: surfaceSchema,
    exclusions: exclusionsSchema.optional(),
    shares: z.array(z.number().min(0).max(1).nullable()).min(1).max(60),
    density_per_25mm: z.number().min(0).max(1e4),
    bearing_pct: z.number().min(0).max(100),
    confidence: z.number().min(0).max(1),
    warnings: z.array(z.string().min(1).max(60)).max(30),
  }),
  z.strictObject({
    kind: z.literal('part turned over'),
    round,
    how: z.enum(['end over end', 'front to back']),
  }),
  z.strictObject({
    kind: z.literal('pass made'),
    round,
    pass: z.int().min(1).max(200),
    spot: z.boolean().optional(),
    zones: perPad(z.union([z.literal(0), z.literal(1)])),
  }),
  z.strictObject({ kind: z.literal('round closed'), round }),
  z.strictObject({
    kind: z.literal('cause settled'),
    round,
    cause: causeText,
    answer: z.enum(['yes', 'no', 'cannot tell']),
  }),
  z.strictObject({ kind: z.literal('survey taken'), ...surveyShape }),
  z.strictObject({ kind: z.literal('hinge tested'), round, test: hingeSchema }),
  z.strictObject({ kind: z.literal('rock tested'), round, test: rockSchema }),
  z.strictObject({ kind: z.literal('practice begun'), ...practiceShape }),
  z.strictObject({ kind: z.literal('truth shown'), round }),
  z.strictObject({ kind: z.literal('machine set'), machine: machineShape }),
  z.strictObject({
    kind: z.literal('step told'),
    step: name,
    what: z.enum(['begun', 'done', 'proven', 'reopened', 'worked']),
    hours: z.number().min(0).max(10_000).optional(),
    note: longText.optional(),
  }),
  z.strictObject({ kind: z.literal('bench opened'), job: entryId, step: name }),
  z.strictObject({ kind: z.literal('bench of'), job: entryId, step: name }),
  z.strictObject({ kind: z.literal('heights set'), heights: heightsKept }),
  z.strictObject({ kind: z.literal('axis taken'), of: name, asked: axisSchema }),
  z.strictObject({ kind: z.literal('gib taken'), of: name, asked: gibSchema }),
  z.strictObject({ kind: z.literal('chart set'), chart: chartSetSchema }),
  z.strictObject({
    kind: z.literal('result taken'),
    test: z.string().min(1).max(120),
    when: z.enum(['first', 'final']),
    result: resultSchema,
  }),
  z.strictObject({ kind: z.literal('stop signed'), round, note: longText.optional() }),
  z.strictObject({ kind: z.literal('note'), round: round.optional(), text: longText }),
  z.strictObject({ kind: z.literal('undone'), entry: entryId }),
] as const;

/** The kinds of deed, as docs/job-file.md lists them. */
export const deedKinds: readonly string[] = deeds.map((deed) => deed.shape.kind.value);

const written = z.strictObject({
  on: z.string().regex(/^[0-9a-f]{8}$/, 'eight figures 0-9 and a-f'),
  knowing: z.int().min(0),
});
const sent = { id: entryId, at: time, written: written.optional() };
const stored = { ...sent, seq: z.int().min(1) };
const extended = <S extends Record<string, z.ZodType>>(shape: S) =>
  z.discriminatedUnion(
    'kind',
    deeds.map((deed) => z.strictObject({ ...deed.shape, ...shape })) as unknown as [
      (typeof deeds)[0],
      ...(typeof deeds)[number][],
    ],
  );

/** An entry as it is sent: a deed with the id and time its writer gave it. */
export type SentEntry = Deed & Pick<Entry, 'id' | 'at' | 'written'>;

export const sentSchema = extended(sent);
export const entrySchema = extended(stored);

/** @throws BadInput */
export const sentEntry = (value: unknown): SentEntry => checked(sentSchema, value) as unknown as SentEntry;

/** @throws BadInput */
export const storedEntry = (value: unknown): Entry => checked(entrySchema, value) as unknown as Entry;
