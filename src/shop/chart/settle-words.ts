import type { ChartFile } from '../../contract/chart.ts';
import type { ChartLine } from '../../core/chart/chart-line.ts';
import type { NextMeasurement } from '../../core/chart/next-measurement.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted } from '../phrase.ts';
import { setupWords } from './kit-ways.ts';
import { doubtText, shortText } from './line-shown.ts';

/** What would settle a line, or how far it is out; undefined when there is nothing to say. */
export function lineNote(
  line: ChartLine,
  next: NextMeasurement | undefined,
  system: UnitSystem,
): string | undefined {
  if (line.verdict === 'outside')
    return (line.judged?.short ?? 0) > 0
      ? `${shortText(line, system)} beyond the ${line.judged!.side === 'low' ? 'lower' : 'upper'} limit`
      : 'its whole doubt lies beyond the limit';
  const how = line.settle;
  if (!how) return undefined;
  switch (how.by) {
    case 'first measurement':
      return next?.how
        ? `not measured yet; ${next.how.join(', then ')} to be sure enough`
        : 'not measured yet';
    case 'doubt told':
      return 'nothing is proven without its doubt: measure it again and say how sure it is';
    case 'more readings':
      return next?.how
        ? `${next.how.join(', then ')}: about ${counted(Math.ceil(next.minutes), 'minute')}`
        : `${counted(how.more, 'more reading')} ${how.more === 1 ? 'settles' : 'settle'} it, if the value stays`;
    case 'less doubt':
      return next?.how
        ? `${next.how.join(', then ')}: about ${counted(Math.ceil(next.minutes), 'minute')}`
        : `repeating will not settle it: the doubt must come down to ${doubtText(line, how.to_um, system)}, with a better reference or by turning it over`;
    case 'other work':
      return 'it lies on its limit: no measurement will settle it, work on it or change the limit';
  }
}

/** The cheapest next measurement of the whole chart, in a sentence, with what it is to be measured with where that was chosen. */
export function nextSentence(
  lines: readonly ChartLine[],
  next: readonly NextMeasurement[],
  setups: ChartFile['setups'],
): string | undefined {
  const [first] = next;
  const line = first && lines.find((one) => one.id === first.line);
  if (!first || !line) return undefined;
  const minutes = counted(Math.ceil(first.minutes), 'minute');
  const how = first.how?.join(', then ');
  const measured = line.settle?.by === 'first measurement' ? 'measure it' : 'read it again';
  const what =
    how === undefined ? measured : line.settle?.by === 'first measurement' ? `measure it: ${how}` : how;
  const setup = setups.find((one) => one.target === line.id)?.setup;
  const using = setup ? ` (${setupWords(setup)})` : '';
  const alike = next.filter((one) => one.minutes === first.minutes).length - 1;
  const also = alike > 0 ? `; ${counted(alike, 'other line')} would take as little` : '';
  return `Cheapest next: “${line.name}”, ${what}${using}, about ${minutes}${also}.`;
}
