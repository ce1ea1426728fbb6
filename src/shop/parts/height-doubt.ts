import type { TakenSurvey } from '../../core/ledger/survey-record.ts';
import { surveyLine } from '../../core/survey/line.ts';

/**
 * How surely heights of the bed's form are known, one sd, µm: the largest of any station of any way's survey, so that no
 * place is made surer than it is. Undefined where a survey says nothing of its doubt.
 */
export function heightDoubt(surveys: Iterable<TakenSurvey>): number | undefined {
  let most_um: number | undefined;
  for (const one of surveys) {
    if (one.what !== 'line' || one.ways.length === 0) continue;
    const { input } = one;
    if (input.kind !== 'angles' && input.kind !== 'heights') continue;
    const { sd } = surveyLine(input);
    if (!sd) return undefined;
    most_um = Math.max(most_um ?? 0, ...sd.endpoint_um);
  }
  return most_um;
}
