import { type ColumnUnread, cellsOf } from './column.ts';
import { refuse } from './refusal.ts';
import { readSlope, type SlopeRead, type SlopeUnit, slopeSize } from './slope.ts';
import { tidy } from './token.ts';

/** A pasted column of slopes that was understood, in order. */
export interface SlopeColumnRead {
  readonly ok: true;
  /** The unit bare numbers were taken in: the heading's, or the column's. */
  readonly unit: SlopeUnit;
  readonly readings: readonly SlopeRead[];
}

/** Units that a heading may name. */
const headed: readonly (readonly [RegExp, SlopeUnit])[] = [
  [/mm ?(?:\/|per) ?m\b/, 'mm/m'],
  [/(?:urad|microrad\w*)\b/, 'urad'],
  [/(?:arcsecs?|arc ?sec\w*)\b/, 'arcsec'],
  [/um (?:\/|in|per) ?300 ?mm\b/, 'um/300 mm'],
  [/thou (?:\/|in|per) ?12 ?in\b/, 'thou/12 in'],
];

/**
 * Angles pasted from a sheet or an electronic level, as `readPastedColumn` reads heights: all are taken or none, and a wrong line is named.
 */
export function readSlopeColumn(text: string, column: SlopeUnit): SlopeColumnRead | ColumnUnread {
  const cells = cellsOf(text);
  if (!Array.isArray(cells)) return cells;
  const first = cells[0];
  if (!first) return { ...refuse('Nothing was pasted.'), line: 1 };
  const plain = tidy(first.text).toLowerCase();
  const isHead = /^[\p{L}"[(]/u.test(plain) && !readSlope(first.text, column).ok;
  const unit = (isHead && headed.find(([words]) => words.test(plain))?.[1]) || column;
  const values = isHead ? cells.slice(1) : cells;
  if (values.length === 0)
    return { ...refuse(`Line ${first.line} is a heading; no readings follow it.`), line: first.line };
  const readings: SlopeRead[] = [];
  for (const cell of values) {
    const read = readSlope(cell.text, unit);
    if (!read.ok) return { ok: false, why: `Line ${cell.line}: ${read.why}`, line: cell.line };
    readings.push(read);
  }
  return { ok: true, unit, readings };
}

/** A slope as it is written in a column of this unit: as typed if it is then read the same, else with its unit behind it. */
export function slopeWrittenFor(read: SlopeRead, unit: SlopeUnit): string {
  const again = readSlope(read.typed, unit);
  if (again.ok && again.urad === read.urad) return read.typed;
  return `${Number((read.urad / slopeSize(unit)).toPrecision(12))}`;
}
