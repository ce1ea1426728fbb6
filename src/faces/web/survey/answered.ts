import { isAlong } from '../../../contract/along.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { AlongInput } from '../../../core/survey/along.ts';
import type { LineInput } from '../../../core/survey/line-input.ts';
import type { PlateInput } from '../../../core/survey/plate-input.ts';
import { type AlongAnswer, along } from '../../../shop/survey/along.ts';
import { alongWorking } from '../../../shop/survey/along-working.ts';
import { type LineAnswer, line } from '../../../shop/survey/line.ts';
import { lineWorking } from '../../../shop/survey/line-working.ts';
import { type PlateAnswer, plate } from '../../../shop/survey/plate.ts';
import { plateWorking } from '../../../shop/survey/plate-working.ts';
import type { Worked } from '../../../shop/worked.ts';

/** A survey's answer by its sort; stations of a line count from the headstock end. */
export type Answered =
  | {
      readonly sort: 'line';
      readonly input: LineInput;
      readonly answer: LineAnswer;
      readonly from_mm: number;
    }
  | { readonly sort: 'along'; readonly input: AlongInput; readonly answer: AlongAnswer }
  | { readonly sort: 'plate'; readonly input: PlateInput; readonly answer: PlateAnswer };

/** @param system  units of the warnings */
export function answered(
  input: LineInput | AlongInput | PlateInput,
  from_mm: number,
  system: UnitSystem,
): Answered {
  if (input.kind === 'points' || input.kind === 'grid' || input.kind === 'eight lines')
    return { sort: 'plate', input, answer: plate(input, undefined, undefined, system) };
  if (isAlong(input))
    return {
      sort: 'along',
      input: input as AlongInput,
      answer: along(input as AlongInput, undefined, system),
    };
  const own = line(input as LineInput, undefined, undefined, system);
  const answer = { ...own, stations_mm: own.stations_mm.map((at) => at + from_mm) };
  return { sort: 'line', input: input as LineInput, answer, from_mm };
}

/** How a survey's numbers came about. */
export function workingOf(found: Answered, system: UnitSystem): Worked[] {
  switch (found.sort) {
    case 'line':
      return lineWorking(found.input, found.answer, system);
    case 'along':
      return alongWorking(found.input, found.answer, system);
    case 'plate':
      return plateWorking(found.answer, system);
  }
}
