import { type Told, told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { divisionOf } from '../../core/survey/follow-on.ts';
import type { LineSurvey } from '../../core/survey/line.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { type Apart, runsApart } from '../../core/survey/runs-apart.ts';
import { median, missingStations, suspects } from '../../core/survey/suspect.ts';
import type { ThereAndBack } from '../../core/survey/there-and-back.ts';
import type { TablePlaces } from './line.ts';
import { type LineClosure, statedSd } from './line-closure.ts';
import { type ReadingSort, suspectText } from './suspect-words.ts';

/** Something that whoever took the readings should look at; nothing was left out or changed for it. */
export interface SurveyWarning {
  readonly code: string;
  readonly text: string;
  /** `angles_urad[5]`, or the line of a pasted table. */
  readonly path?: string;
}

/** A list of readings, in the order of the way, and how to name one of them. */
interface Named {
  readonly key: string;
  readonly values: readonly number[];
  /** The index in the list as it was given. */
  readonly given: (index: number) => number;
}

export function lineWarnings(
  input: LineInput,
  found: LineSurvey,
  closure: LineClosure | undefined,
  table: TablePlaces | undefined,
  system: UnitSystem = 'metric',
): SurveyWarning[] {
  const sort: ReadingSort = input.kind === 'angles' ? 'angle' : 'size';
  const words = told(system);
  const places = placesOf(input);
  const where = (index: number) => whereText(input, index, words);
  const path = (list: Named, index: number) =>
    table ? `line ${table.lines[index]}` : `${list.key}[${list.given(index)}]`;
  const lists = listsOf(input);
  const slips = lists.flatMap((list) => suspects(places, list.values).map((one) => ({ list, one })));
  const warnings: SurveyWarning[] = slips.map(({ list, one }) => ({
    code: one.code,
    text: suspectText(one, `${where(one.index)}${runWord(list.key)}`, sort, system),
    path: path(list, one.index),
  }));
  if (input.kind === 'heights')
    warnings.push(
      ...missingStations(input.stations_mm).map((one) => ({
        code: one.code,
        text: suspectText(one, where(one.index), sort, system),
        path: table ? `line ${table.lines[one.index]}` : `stations_mm[${one.index}]`,
      })),
    );
  const { runs } = found.profile;
  if (runs && closure) {
    const named = new Set(slips.map(({ one }) => one.index));
    const division = divisionOf(lists.flatMap((list) => list.values));
    const apart = runsApart(runs, statedSd(input) ?? 0, division);
    warnings.push(
      ...runsWarnings(
        runs,
        closure,
        (value, options) => words[sort](value, options),
        words,
        where,
        named,
        apart,
      ).map((one) => ({
        code: one.code,
        text: one.text,
        ...(one.index === undefined ? {} : { path: path(lists[0]!, one.index) }),
      })),
    );
  }
  for (const { line, typed, taken, key } of table?.otherUnits ?? [])
    warnings.push({
      code: 'mixed units',
      text: `Line ${line}: “${typed}” has a unit of its own and was taken as ${taken}; other cells of ${key} take the heading's.`,
      path: `line ${line}`,
    });
  if (!found.sd)
    warnings.push({
      code: 'no doubt',
      text: `No doubt is known: neither the sd of a reading (${input.kind === 'angles' ? 'reading_sd_urad' : 'reading_sd_um'}) nor a run back was given, so nothing can be proven.`,
    });
  if (found.profile.widened > 1)
    warnings.push({
      code: 'scatter',
      text: `The two runs scatter ${found.profile.widened.toPrecision(2)} times more than stated; the doubt is widened by as much.`,
    });
  return warnings;
}

const placesOf = (input: LineInput): readonly number[] =>
  input.kind === 'heights' ? input.stations_mm : input.angles_urad.map((_, i) => (i + 0.5) * input.step_mm);

const whereText = (input: LineInput, index: number, { place }: Told): string =>
  input.kind === 'heights'
    ? `Station ${place(input.stations_mm[index]!)}`
    : `Step ${index + 1}, from ${place(index * input.step_mm).replace(/\smm$/, '')} to ${place((index + 1) * input.step_mm)}`;

const runWord = (key: string): string =>
  key.startsWith('return') ? ', run back' : key.startsWith('reversed') ? ', reversed run' : '';

function listsOf(input: LineInput): Named[] {
  const as = (key: string, values: readonly number[] | undefined): Named[] =>
    values ? [{ key, values, given: (index) => index }] : [];
  const back = (key: string, values: readonly number[] | undefined): Named[] =>
    values ? [{ key, values: values.toReversed(), given: (index) => values.length - 1 - index }] : [];
  return input.kind === 'angles'
    ? [...as('angles_urad', input.angles_urad), ...back('return_urad', input.return_urad)]
    : [
        ...as('heights_um', input.heights_um),
        ...back('return_um', input.return_um),
        ...as('reversed_um', input.reversed_um),
      ];
}

interface RunWarning {
  readonly code: string;
  readonly text: string;
  readonly index?: number;
}

/** Times less scatter that another reading of the run back must leave before it is suggested. */
const clearlyBetter = 9;

function runsWarnings(
  runs: ThereAndBack,
  closure: LineClosure,
  tell: Told['size'],
  words: Told,
  where: (index: number) => string,
  named: ReadonlySet<number>,
  apart: readonly Apart[],
): RunWarning[] {
  const there = runs.mean.map((value, i) => value - runs.differences[i]! / 2);
  const back = runs.mean.map((value, i) => value + runs.differences[i]! / 2);
  const order = orderWarning(there, back);
  if (order) return [order];
  const warnings: RunWarning[] = [];
  if (!closure.closes) {
    const drift = tell(runs.drift, { sd: runs.drift_sd });
    const jump = tell(runs.jump, { decimals: 1 });
    warnings.push({
      code: 'does not close',
      text: `The run back does not close: it ends ${words.size(closure.closing_um, { sd: closure.closing_sd_um ?? 0 })} from where the run there began. A drift of ${drift} from reading to reading and a jump of ${jump} at the turn go with it; both drop out of the mean of the two runs. Largest of what is left: ${where(closure.worst.index)}, ${tell(closure.worst.left, { decimals: 1 })}.`,
    });
  }
  const usual = median(runs.left.map(Math.abs));
  const figure = (value: number) => tell(value, { decimals: 1 });
  for (const { index, left } of apart)
    if (!named.has(index))
      warnings.push({
        code: 'runs apart',
        index,
        text: `${where(index)}: ${figure(there[index]!)} there and ${figure(back[index]!)} back; after drift they are ${figure(left)} apart, others some ${tell(usual, { signed: false, decimals: 1 })}. One of the two is a slip; take this place again.`,
      });
  return warnings;
}

/** A run back that fits the run there only when read the other way round, or with its signs turned. */
function orderWarning(there: readonly number[], back: readonly number[]): RunWarning | undefined {
  if (there.length < 5) return undefined;
  const readings = [
    {
      as: back.toReversed(),
      code: 'run back in order there',
      text: 'The run back fits the run there only when it is read the other way round. It is taken as given, the last place first; if you wrote it in the order of the run there, turn the list round.',
    },
    {
      as: back.map((value) => -value),
      code: 'run back with signs turned',
      text: 'The run back fits the run there only with its signs turned. It is taken as given; if the instrument was turned end for end for the way back, turn its signs.',
    },
  ];
  const asGiven = scatterBetween(there, back);
  const better = readings.filter((one) => scatterBetween(there, one.as) * clearlyBetter < asGiven);
  // An even hollow looks the same either way, but for its level.
  const level = (one: (typeof readings)[number]) => Math.abs(median(one.as) - median(there));
  const [best] = better.sort((one, other) => level(one) - level(other));
  return best && { code: best.code, text: best.text };
}

/** Sum of squared differences about their median: a jump at the turn does not count. */
function scatterBetween(there: readonly number[], back: readonly number[]): number {
  const differences = back.map((value, i) => value - there[i]!);
  const level = median(differences);
  return differences.reduce((sum, difference) => sum + (difference - level) ** 2, 0);
}
