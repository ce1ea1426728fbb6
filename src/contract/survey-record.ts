import { z } from 'zod';
import type { JobPlan } from '../core/ledger/entry.ts';
import { type SurveyRecord, surveyHows } from '../core/ledger/survey-record.ts';
import { alongInput, isAlong } from './along.ts';
import { lineInput } from './line.ts';
import { plateInput } from './plate.ts';
import { BadInput, type Issue, quoted } from './refusal.ts';
import { name } from './slide.ts';

/** Holds a part of an entry to a verb's own contract, with its issues at their own paths. */
const heldTo = (read: (value: unknown) => unknown) =>
  z.unknown().superRefine((value, context) => {
    try {
      read(value);
    } catch (failure) {
      if (!(failure instanceof BadInput)) throw failure;
      for (const { path, expected } of failure.issues) {
        const steps = (path.match(/[A-Za-z_]\w*|\d+/g) ?? []).map((step) =>
          /^\d/.test(step) ? Number(step) : step,
        );
        const input = steps.reduce<unknown>(
          (inside, step) => (inside as Record<string, unknown>)?.[step],
          value,
        );
        context.addIssue({ code: 'custom', path: steps, input, message: expected });
      }
    }
  });

const typed = z.string().max(200);
/** One column of readings as typed. */
const column = z.array(typed).max(2_000);

const sheet = z.strictObject({
  how: z.enum(surveyHows),
  unit: z.string().min(1).max(40),
  lengths: z.enum(['mm', 'in']),
  fields: z.record(z.string().max(40), typed),
  cells: z.record(z.string().max(40), column),
  kit: z
    .strictObject({
      instrument: z.string().min(1).max(200).optional(),
      reference: z.string().min(1).max(200).optional(),
    })
    .optional(),
});

const of = z.string().min(1).max(200);

/** Kinds of a surface's input; all others are of a line. */
const plateKinds: readonly unknown[] = ['points', 'grid', 'eight lines'];
const kindOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined;

/** A survey as a job keeps it; `surveyFits` holds its parts to each other. */
export const surveyShape = {
  what: z.enum(['line', 'plate']),
  of,
  ways: z.array(name).max(24).optional(),
  from_mm: z.number().min(-1e5).max(1e5).optional(),
  sheet,
  input: heldTo((value) =>
    plateKinds.includes(kindOf(value))
      ? plateInput(value)
      : isAlong(value)
        ? alongInput(value)
        : lineInput(value),
  ),
};

/** Whether the input is of what the survey says it is, and its ways are pads of the plan. */
export function surveyFits(plan: JobPlan, record: SurveyRecord): Issue[] {
  const isPlate = plateKinds.includes(record.input.kind);
  if (isPlate !== (record.what === 'plate'))
    return [{ path: 'input.kind', found: quoted(record.input.kind), expected: `a ${record.what}` }];
  const { ways, from_mm } = record as { ways?: readonly string[]; from_mm?: number };
  const wanted = { ways, from_mm };
  const wrong = (['ways', 'from_mm'] as const).filter((key) => (wanted[key] === undefined) !== isPlate);
  if (wrong.length)
    return wrong.map((path) => ({
      path,
      found: isPlate ? 'a key of a line' : 'nothing',
      expected: isPlate ? 'it to be left out of a surface' : 'it, for a line',
    }));
  const pads = plan.slide.pads.map((pad) => pad.name);
  return (ways ?? []).flatMap((way, k): Issue[] =>
    pads.includes(way)
      ? []
      : [
          {
            path: `ways[${k}]`,
            found: quoted(way),
            expected: `one of ${pads.map((pad) => JSON.stringify(pad)).join(', ')}`,
          },
        ],
  );
}

const share = z.number().min(0).max(1);
export const hingeSchema = z.strictObject({ pushed_first: share, pushed_last: share.optional() });

const moved_um = z.number().min(-1e4).max(1e4);
const side_mm = z.number().min(1).max(1e5);
export const rockSchema = z.strictObject({
  moved_um: z.tuple([moved_um, moved_um, moved_um, moved_um]),
  sd_um: z.number().min(0).max(1e4),
  length_mm: side_mm,
  width_mm: side_mm,
});
