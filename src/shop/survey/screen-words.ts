import type { SurveyHow } from '../../core/ledger/survey-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { eightLines } from '../../core/survey/plate-input.ts';
import type { LineAnswer } from './line.ts';
import { sayWidth } from './line-sentence.ts';
import type { SurveyWarning } from './line-warnings.ts';
import { lineWords } from './sheet-layout.ts';

/** A list of the contract in words of the surface. */
const listWords: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [/along_x_urad\[(\d+)\]/, (found) => `Row ${Number(found[1]) + 1} from your side`],
  [/along_y_urad\[(\d+)\]/, (found) => `Column ${Number(found[1]) + 1} from the left`],
  [/lines_urad\.(\w+)/, (found) => lineWords[found[1] as keyof typeof lineWords] ?? found[1]!],
];

/**
 * A warning as the screen says it: no names of the contract.
 * @param place  the cell it is of, as the sheet calls it
 */
export function warningWords(warning: SurveyWarning, how: SurveyHow, place?: string): string {
  if (warning.code === 'no doubt')
    return how === 'heights' || how === 'level grid' || how === 'eight lines'
      ? 'No doubt is known, so nothing can be proven. Say how well one reading repeats.'
      : 'No doubt is known, so nothing can be proven. Say how well one reading repeats, or run back to the start.';
  let text = place ? warning.text.replace(/^Step \d+, from .+? to \S+\s(?:mm|in)/, place) : warning.text;
  for (const [pattern, words] of listWords)
    for (let found = pattern.exec(text); found; found = pattern.exec(text))
      text = text
        .replace(found[0], words(found))
        .replace(/\[(\d+)\]/, (_, k: string) => `, step ${Number(k) + 1}`);
  for (const name of eightLines) text = text.replace(new RegExp(`^${name} `), `${lineWords[name]} `);
  return text.replace(/^loop (\d+), (\d+)/, 'The cell in column $1, row $2');
}

/** Closing and drift of a run there and back, in words. */
export function closureWords(answer: LineAnswer, system: UnitSystem): string | undefined {
  const { closure } = answer;
  if (!closure) return undefined;
  const closing = sayDeviation(closure.closing_um, system, {
    ...(closure.closing_sd_um === undefined ? {} : { sd: closure.closing_sd_um }),
  }).text;
  const isAngle = closure.drift_urad !== undefined;
  const drift = told(system)[isAngle ? 'angle' : 'size'](closure.drift_urad ?? closure.drift_um ?? 0, {
    sd: closure.drift_sd,
  });
  return `${closure.closes ? 'The run back closes' : 'The run back does not close'}: it ends ${closing} from where the run there began. A drift of ${drift} from reading to reading is taken out.`;
}

/** The lowest or highest place off the line through the ends: where, how much, how sure. */
export function worstOf(answer: LineAnswer): {
  readonly index: number;
  readonly um: number;
  readonly sd_um?: number;
} {
  const sizes = answer.endpoint_um.map(Math.abs);
  const index = sizes.indexOf(Math.max(...sizes));
  const sd_um = answer.sd?.endpoint_um[index];
  return { index, um: answer.endpoint_um[index]!, ...(sd_um === undefined ? {} : { sd_um }) };
}

/** The straightedge's own bend that was taken out: its largest, where, how sure. */
export function edgeBendWords(answer: LineAnswer, system: UnitSystem): string | undefined {
  const { edge_bend_um: bend, edge_bend_sd_um: sds } = answer;
  if (!bend) return undefined;
  const sizes = bend.map(Math.abs);
  const index = sizes.indexOf(Math.max(...sizes));
  const sd = sds?.[index];
  const size = sayDeviation(bend[index]!, system, sd ? { sd } : {}).text;
  return `Its own sag and bow are worked out and taken out: ${size} at ${sayLength(answer.stations_mm[index]!, system).text}, the most; plus is up.`;
}

/** Depth of wear below the stretches that were not run on, in words. */
export function wearWords(answer: LineAnswer, from_mm: number, system: UnitSystem): string | undefined {
  const { wear } = answer;
  if (!wear) return undefined;
  const { um, sd_um, station_mm } = wear.deepest;
  return `Worn ${sayWidth(um, system, sd_um)} deep at ${sayLength(station_mm + from_mm, system).text} from the headstock end, below what was not run on.`;
}
