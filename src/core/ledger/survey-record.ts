import type { AlongInput } from '../survey/along.ts';
import type { LineInput } from '../survey/line-input.ts';
import type { PlateInput } from '../survey/plate-input.ts';
import type { Entry } from './entry.ts';

/** What a survey was taken with; each has readings of its own shape. */
export const surveyHows = [
  'level',
  'autocollimator',
  'straightedge',
  'offsets',
  'bridge level',
  'parallel',
  'heights',
  'level grid',
  'eight lines',
] as const;
export type SurveyHow = (typeof surveyHows)[number];

/** A survey as it was typed: what its screen needs to show it again to the letter. Nothing is computed from it. */
export interface SurveySheet {
  readonly how: SurveyHow;
  /** Unit of a bare reading: "um", "mm/m". */
  readonly unit: string;
  /** Unit of a bare length. */
  readonly lengths: 'mm' | 'in';
  /** Step, length, limit and the like, by name. */
  readonly fields: Readonly<Record<string, string>>;
  /** Columns of readings by name: "there", "back", "row 1". */
  readonly cells: Readonly<Record<string, readonly string[]>>;
  /** What of the kit it was taken with, by name; left out: typed by hand. */
  readonly kit?: { readonly instrument?: string; readonly reference?: string };
}

interface SurveyOf {
  /** What it is of, in words: "front flank", "surface plate". */
  readonly of: string;
  readonly sheet: SurveySheet;
}

/** A survey kept with the job: its input as `line` or `plate` takes it, and the sheet it was typed on. */
export type SurveyRecord =
  | (SurveyOf & {
      readonly what: 'line';
      /** Pads whose way it is; empty for anything else. */
      readonly ways: readonly string[];
      /** Where the line's own zero lies, mm from the headstock end (minus end) of the bed. */
      readonly from_mm: number;
      readonly input: LineInput | AlongInput;
    })
  | (SurveyOf & { readonly what: 'plate'; readonly input: PlateInput });

/** A survey with the entry that holds it. */
export type TakenSurvey = SurveyRecord & { readonly entry: string; readonly at: string };

/** Two surveys of one key are of the same thing: the later one counts. */
export function surveyKey(record: SurveyRecord): string {
  if (record.what === 'plate') return `flatness of ${record.of}`;
  const { input } = record;
  if (input.kind === 'twist' || input.kind === 'parallel') return `${input.kind} of ${record.of}`;
  return `${input.direction ?? 'vertical'} of ${record.of}`;
}

/** The surveys that count, by key: the last of each, in the order they were first taken. */
export function surveysOf(live: readonly Entry[]): ReadonlyMap<string, TakenSurvey> {
  const found = new Map<string, TakenSurvey>();
  for (const entry of live) {
    if (entry.kind !== 'survey taken') continue;
    const { id, at, ...record } = entry;
    found.set(surveyKey(record), { ...record, entry: id, at });
  }
  return found;
}
