import { lineFromTable } from '../../contract/line.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { readPastedColumn } from '../../core/quantity/column.ts';
import { readDeviation } from '../../core/quantity/deviation.ts';
import { type SlopeUnit, slopeSize } from '../../core/quantity/slope.ts';
import { readSlopeColumn, slopeWrittenFor } from '../../core/quantity/slope-column.ts';
import { type DeviationUnit, size_um } from '../../core/quantity/unit.ts';
import { isAngle, readReading } from './sheet-fields.ts';
import { fieldValue, type SheetLayout } from './sheet-layout.ts';
import type { CellPlace } from './sheet-reading.ts';

/** A pasted text poured into a sheet, with the cell to go on at; or why none of it was taken. */
export type Poured =
  | { readonly ok: true; readonly sheet: SurveySheet; readonly next: CellPlace; readonly said?: string }
  | { readonly ok: false; readonly why: string };

const refused = (why: string): Poured => ({ ok: false, why: `${why} Nothing was taken.` });

/** A value in the sheet's unit, as figures. */
export function figuresOf(value: number, sheet: SurveySheet): string {
  const size = isAngle(sheet) ? slopeSize(sheet.unit as SlopeUnit) : size_um[sheet.unit as DeviationUnit];
  const number = Number((value / size).toPrecision(10));
  return isAngle(sheet) || Number.isInteger(number) || sheet.unit === 'um'
    ? `${number}`
    : `${number} ${sheet.unit}`;
}

/**
 * Pours a pasted text into a sheet from a cell on: one column, a block of rows and columns as it stands in a table, or a table with headings
 * (`station [mm], angle [arcsec], return angle`). All is taken or none.
 */
export function poured(sheet: SurveySheet, layout: SheetLayout, at: CellPlace, text: string): Poured {
  const rows = text
    .replace(/\s+$/, '')
    .split(/\r\n|\n|\r/)
    .map((row) => row.split('\t').map((cell) => cell.trim()));
  const isBlock = rows.length > 1 && rows.some((row) => row.length > 1);
  const isHeaded = rows[0]!.filter((cell) => /\p{L}{3,}/u.test(cell)).length > 1;
  const isLine = layout.columns.some(({ key }) => key === 'there');
  // A heading of one column may hold a comma ("level, µrad"); the lines below it tell whether commas part columns.
  const isParted = rows.length > 1 && /\p{L}{3,}/u.test(rows[0]![0]!) && /\d\s*[,;]/.test(rows[1]!.join(' '));
  if (isLine && (isHeaded || isParted)) return fromTable(sheet, layout, text);
  return isBlock ? block(sheet, layout, at, rows) : column(sheet, layout, at, text);
}

function column(sheet: SurveySheet, layout: SheetLayout, at: CellPlace, text: string): Poured {
  const texts = readColumn(sheet, text);
  if (!Array.isArray(texts)) return refused(texts.why);
  const { places } = layout.columns.find(({ key }) => key === at.column)!;
  const room = places.length - at.index;
  if (texts.length > room)
    return refused(`${texts.length} readings were pasted; from here there are ${room} cells.`);
  const index = Math.min(places.length - 1, at.index + texts.length);
  return { ok: true, sheet: withCells(sheet, layout, at.column, at.index, texts), next: { ...at, index } };
}

function readColumn(sheet: SurveySheet, text: string): string[] | { readonly why: string } {
  if (isAngle(sheet)) {
    const unit = sheet.unit as SlopeUnit;
    const read = readSlopeColumn(text, unit);
    if (!read.ok) return read;
    // Bare numbers below a heading of another unit are turned into the sheet's.
    return read.readings.map((one) => slopeWrittenFor(one, unit));
  }
  const unit = sheet.unit as DeviationUnit;
  const read = readPastedColumn(text, unit);
  if (!read.ok) return read;
  return read.readings.map((one) => {
    const again = readDeviation(one.typed, unit);
    return again.ok && again.um === one.um ? one.typed : one.echo;
  });
}

/** The sheet with texts in a column from a cell on. */
export function withCells(
  sheet: SurveySheet,
  layout: SheetLayout,
  key: string,
  from: number,
  texts: readonly string[],
): SurveySheet {
  const { places } = layout.columns.find((one) => one.key === key)!;
  const old = sheet.cells[key] ?? [];
  const column = places.map((_, i) => texts[i - from] ?? old[i] ?? '');
  return { ...sheet, cells: { ...sheet.cells, [key]: column } };
}

/** A block: rows of a grid lie as they lie in the table; lines stand side by side, a run back place by place beside the run there. */
function block(
  sheet: SurveySheet,
  layout: SheetLayout,
  at: CellPlace,
  rows: readonly (readonly string[])[],
): Poured {
  const first = layout.columns.findIndex(({ key }) => key === at.column);
  const lies = at.column.startsWith('row');
  const wide = Math.max(...rows.map((row) => row.length));
  const lists = lies ? rows : Array.from({ length: wide }, (_, j) => rows.map((row) => row[j] ?? ''));
  if (first + lists.length > layout.columns.length)
    return refused(
      `${lists.length} ${lies ? 'rows' : 'columns'} were pasted; from here there are ${layout.columns.length - first}.`,
    );
  let filled = sheet;
  for (const [j, list] of lists.entries()) {
    const { key, label, places } = layout.columns[first + j]!;
    const room = places.length - at.index;
    if (list.length > room)
      return refused(`${label}: ${list.length} readings were pasted; from here there are ${room} cells.`);
    for (const [k, cell] of list.entries()) {
      const line = lies ? j : k;
      const value = lies ? k : j;
      if (cell === '')
        return refused(`Line ${line + 1}, value ${value + 1} is empty: a reading is missing there.`);
      const read = readReading(cell, sheet.unit, isAngle(sheet));
      if (!read.ok) return refused(`Line ${line + 1}, value ${value + 1}: ${read.why}`);
    }
    const inOrder = key === 'back' ? list.toReversed() : list;
    filled = withCells(filled, layout, key, at.index, inOrder);
  }
  const last = layout.columns[first + lists.length - 1]!;
  return { ok: true, sheet: filled, next: { column: last.key, index: last.places.length - 1 } };
}

/** A whole table with headings, read as the command line reads it. */
function fromTable(sheet: SurveySheet, layout: SheetLayout, text: string): Poured {
  const angle = isAngle(sheet);
  try {
    const step_mm = fieldValue(layout.fields, 'step');
    const { input, otherUnits } = lineFromTable(
      text,
      angle ? { kind: 'angles', step_mm } : { kind: 'heights' },
    );
    const lists: [string, readonly number[] | undefined][] =
      input.kind === 'angles'
        ? [
            ['there', input.angles_urad],
            ['back', input.return_urad],
          ]
        : [
            ['there', input.heights_um],
            ['back', input.return_um],
            ['reversed', input.reversed_um],
          ];
    if (input.kind === 'angles' && Math.abs(input.step_mm - step_mm) > 1e-6 * step_mm)
      return refused(`The table’s step is ${input.step_mm} mm, this sheet’s ${step_mm} mm.`);
    let filled = sheet;
    const places = layout.columns[0]!.places;
    for (const [key, list] of lists) {
      if (!list) continue;
      if (list.length !== places.length)
        return refused(`The table holds ${list.length} readings; this sheet has ${places.length} cells.`);
      filled = { ...filled, cells: { ...filled.cells, [key]: list.map((value) => figuresOf(value, sheet)) } };
    }
    const said = otherUnits.map(
      ({ line, typed, taken }) =>
        `Line ${line}: “${typed}” has a unit of its own and was taken as ${taken}. Is it right?`,
    );
    return {
      ok: true,
      sheet: filled,
      next: { column: 'there', index: places.length - 1 },
      ...(said.length ? { said: said.join(' ') } : {}),
    };
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    const [issue] = failure.issues;
    return refused(`${issue!.path}: ${issue!.found}; expected ${issue!.expected}.`);
  }
}

/** The sheet with another unit for bare readings: what is written already keeps its meaning. */
export function inUnit(sheet: SurveySheet, layout: SheetLayout, unit: string): SurveySheet {
  const next = { ...sheet, unit };
  const cells = Object.fromEntries(
    layout.columns.map(({ key }) => [
      key,
      (sheet.cells[key] ?? []).map((text) => {
        const read = readReading(text, sheet.unit, isAngle(sheet));
        if (text.trim() === '' || !read.ok) return text;
        const again = readReading(text, unit, isAngle(sheet));
        return again.ok && again.value === read.value ? text : figuresOf(read.value, next);
      }),
    ]),
  );
  return { ...next, cells: { ...sheet.cells, ...cells } };
}

/** The sheet with the signs of a column turned from a cell on. */
export function turned(sheet: SurveySheet, layout: SheetLayout, at: CellPlace): SurveySheet {
  const texts = (sheet.cells[at.column] ?? []).map((text, i) => {
    const read = i < at.index ? undefined : readReading(text, sheet.unit, isAngle(sheet));
    return read?.ok && read.value !== 0 ? figuresOf(-read.value, sheet) : text;
  });
  return withCells(sheet, layout, at.column, 0, texts);
}

/** The sheet with a column read the other way round. */
export const reversedOrder = (sheet: SurveySheet, key: string): SurveySheet => ({
  ...sheet,
  cells: { ...sheet.cells, [key]: (sheet.cells[key] ?? []).toReversed() },
});
