import type { SurveySheet } from '../../../core/ledger/survey-record.ts';

/** A survey's sheet as it is typed, with the sheet before the last deed that changed many cells at once. */
export interface SurveyDraft {
  readonly sheet: SurveySheet;
  readonly before?: { readonly sheet: SurveySheet; readonly deed: string };
}

/** The draft with one thing typed; what can be undone stays so. */
export const typedOn = (draft: SurveyDraft, sheet: SurveySheet): SurveyDraft => ({ ...draft, sheet });

/** The draft after a deed on many cells, which one press undoes. */
export const after = (draft: SurveyDraft, sheet: SurveySheet, deed: string): SurveyDraft => ({
  sheet,
  before: { sheet: draft.sheet, deed },
});

/** Whether two sheets say the same. */
export const isSame = (one: SurveySheet, other: SurveySheet): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
