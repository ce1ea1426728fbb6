import { say } from '../../core/quantity/say.ts';
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

const figure = (value: number, unit: string): string => say(value, unit, { decimals: 1 }).text;

/** A slip in words: where, what was found, what its neighbours lead to, what would explain it; and that it still counts. */
export function suspectText(one: Suspect, where: string, unit: string): string {
  if (one.code === 'station missing')
    return `${where} follows with a gap: ${one.expected} mm is missing from the row. If it was skipped on purpose, all is well; if a reading was forgotten, those behind it stand at the wrong place.`;
  if (one.code === 'signs turned from here')
    return `${where}: from here on all signs look turned (${figure(one.found, unit)} where ${figure(one.expected, unit)} would follow on). Was the instrument turned, or read from the other side? It counts as typed.`;
  if (one.code === 'other unit')
    return `${where}: ${one.found} ${unit} is written finer and is far smaller than the rest; a value in mm or mm/m among the others? It counts as typed.`;
  const cause = causes.find(([times]) => times === one.times)?.[1];
  return `${where}: ${figure(one.found, unit)} stands out; its neighbours lead to ${figure(one.expected, unit)}.${cause ? ` ${cause[0]!.toUpperCase()}${cause.slice(1)}?` : ' Look at it again.'} It counts as typed.`;
}
