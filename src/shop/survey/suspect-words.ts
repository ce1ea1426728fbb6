import { type Told, told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Suspect } from '../../core/survey/suspect.ts';

const causes: readonly (readonly [number, string])[] = [
  [-1, 'its sign turned'],
  [10, 'ten times too large'],
  [-10, 'ten times too large and its sign turned'],
  [100, 'a hundred times too large'],
  [0.1, 'ten times too small'],
  [25.4, 'another unit, 25.4 times too large'],
  [1 / 25.4, 'another unit, 25.4 times too small'],
  [1000, 'another unit, a thousand times too large'],
  [0.001, 'another unit, a thousand times too small'],
];

/** What a reading is: a deviation (µm) or an angle (µrad). */
export type ReadingSort = 'size' | 'angle';

const figure = (value: number, sort: ReadingSort, words: Told): string => words[sort](value, { decimals: 1 });

/** A slip in words: where, what was found, what its neighbours lead to, what would explain it; and that it still counts. */
export function suspectText(
  one: Suspect,
  where: string,
  sort: ReadingSort,
  system: UnitSystem = 'metric',
): string {
  const words = told(system);
  if (one.code === 'station missing')
    return `${where} follows with a gap: ${words.place(one.expected)} is missing from the row. If it was skipped on purpose, all is well; if a reading was forgotten, those behind it stand at the wrong place.`;
  if (one.code === 'signs turned from here')
    return `${where}: from here on all signs look turned (${figure(one.found, sort, words)} where ${figure(one.expected, sort, words)} would follow on). Was the instrument turned, or read from the other side? It counts as typed.`;
  if (one.code === 'other unit')
    return `${where}: ${finer(one.found, sort, system)} is written finer and is far smaller than the rest; a value in mm or mm/m among the others? It counts as typed.`;
  const cause = causes.find(([times]) => times === one.times)?.[1];
  return `${where}: ${figure(one.found, sort, words)} stands out; its neighbours lead to ${figure(one.expected, sort, words)}.${cause ? ` ${cause[0]!.toUpperCase()}${cause.slice(1)}?` : ' Look at it again.'} It counts as typed.`;
}

/** A reading with all its own figures. */
const finer = (value: number, sort: ReadingSort, system: UnitSystem): string =>
  system === 'metric' ? `${value} ${sort === 'size' ? 'µm' : 'µrad'}` : told(system)[sort](value);
