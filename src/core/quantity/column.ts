import { type DeviationRead, readDeviation } from './deviation.ts';
import { refuse, type Unreadable } from './refusal.ts';
import { readSpoken } from './spoken.ts';
import { tidy } from './token.ts';
import { type DeviationUnit, deviationWords, type size_um } from './unit.ts';

/** A pasted column that was understood, in order. */
export interface ColumnRead {
  readonly ok: true;
  /** The unit bare numbers were taken in: the heading's, or the column's. */
  readonly unit: DeviationUnit;
  /** The heading as pasted, when there was one. */
  readonly heading?: string;
  readonly readings: readonly DeviationRead[];
}

/** Why a pasted column was not taken; nothing of it was. */
export interface ColumnUnread extends Unreadable {
  /** Which line of the pasted text, from 1. */
  readonly line: number;
}

/** More stops than any sweep has. */
const mostReadings = 2_000;

export interface Cell {
  readonly text: string;
  readonly line: number;
}

/**
 * Readings pasted from a sheet or an instrument: one a line, or one line parted by tabs. A heading may name the unit of
 * bare numbers (`Reading, µm`, `[thou]`). All are taken or none: a wrong line is named.
 *
 * Nothing is skipped in silence: an empty line between readings would shift all that follow to the wrong stop.
 */
export function readPastedColumn(text: string, column: DeviationUnit): ColumnRead | ColumnUnread {
  const cells = cellsOf(text);
  if (!Array.isArray(cells)) return cells;
  if (cells.length === 0) return { ...refuse('Nothing was pasted.'), line: 1 };
  const first = cells[0]!;
  const head = headingOf(first.text, column);
  const unit = head?.unit ?? column;
  const values = head ? cells.slice(1) : cells;
  if (values.length === 0)
    return { ...refuse(`Line ${first.line} is a heading; no readings follow it.`), line: first.line };
  if (values.length > mostReadings)
    return { ...refuse(`${values.length} readings; a sweep has at most ${mostReadings}.`), line: first.line };

  const readings: DeviationRead[] = [];
  for (const cell of values) {
    const read = readInColumn(cell.text, unit);
    if (!read.ok) {
      const inRow = cells.some((other) => other !== cell && other.line === cell.line);
      const which = inRow ? `, value ${readings.length + 1}` : '';
      return { ok: false, why: `Line ${cell.line}${which}: ${read.why}`, line: cell.line };
    }
    readings.push(read);
  }
  return { ok: true, unit, readings, ...(head ? { heading: first.text } : {}) };
}

/**
 * In a pasted column a bare decimal is in the column's unit whatever its size: it was reckoned, not spoken, and its
 * neighbours are in that unit. Written with the unit behind it, it is read as any other.
 */
function readInColumn(text: string, unit: DeviationUnit): DeviationRead | Unreadable {
  const spoken = readSpoken(text, deviationWords);
  const bare = spoken.ok && spoken.figures !== undefined && spoken.terms[0]!.unit === undefined;
  const decimal = bare && spoken.figures!.includes('.');
  const read = readDeviation(decimal ? `${text} ${unit}` : text, unit);
  return read.ok ? { ...read, typed: text } : read;
}

/** The filled cells with their lines, or why they do not make one column. */
export function cellsOf(text: string): Cell[] | ColumnUnread {
  const rows = text
    .split(/\r\n|\n|\r/)
    .map((row, i) => ({ cells: row.split('\t').map((cell) => cell.trim()), line: i + 1 }))
    .map(({ cells, line }) => ({ cells: trimEmpty(cells), line }));
  const filled = rows.filter((row) => row.cells.length > 0);
  if (filled.length === 0) return [];
  const last = filled.at(-1)!.line;
  const between = rows.find((row) => row.cells.length === 0 && row.line > filled[0]!.line && row.line < last);
  if (between)
    return {
      ...refuse(`Line ${between.line} is empty: a reading is missing there. Fill it, or paste in two parts.`),
      line: between.line,
    };
  const wide = filled.length > 1 ? filled.find((row) => row.cells.length > 1) : undefined;
  if (wide)
    return {
      ...refuse(`Line ${wide.line} holds ${wide.cells.length} values. Paste one column, or one row.`),
      line: wide.line,
    };
  const hole = filled[0]!.cells.indexOf('');
  if (hole >= 0)
    return {
      ...refuse(`Line ${filled[0]!.line}: value ${hole + 1} is empty: a reading is missing there.`),
      line: filled[0]!.line,
    };
  return filled.flatMap(({ cells, line }) => cells.map((cell) => ({ text: cell, line })));
}

function trimEmpty(cells: readonly string[]): string[] {
  const first = cells.findIndex((cell) => cell !== '');
  return first < 0 ? [] : cells.slice(first, cells.findLastIndex((cell) => cell !== '') + 1);
}

/** A first cell that is words, and the unit it names at its end or in brackets. */
function headingOf(text: string, column: DeviationUnit): { unit: DeviationUnit | undefined } | undefined {
  if (readDeviation(text, column).ok) return undefined;
  const plain = tidy(text);
  if (!/^[\p{L}"[(]/u.test(plain)) return undefined;
  const named = /[[(]([^\])]*)[\])]\s*$/.exec(plain)?.[1] ?? /(?:^|[\s,:])([^\s,:]+)$/.exec(plain)?.[1];
  const spoken = deviationWords.get(named?.trim().toLowerCase() ?? '');
  if (spoken !== undefined && isColumnUnit(spoken)) return { unit: spoken };
  return /\p{L}{3,}/u.test(plain) ? { unit: undefined } : undefined;
}

const isColumnUnit = (unit: keyof typeof size_um): unit is DeviationUnit =>
  ['um', 'mm', 'thou', 'tenths', 'in'].includes(unit);
