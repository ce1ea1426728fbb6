import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { isAngle, readReading, unitWords } from './sheet-fields.ts';
import { fieldWords, hows } from './sheet-hows.ts';
import { type CellRead, type Cells, isStepped, lineOf, plateOf, type SurveyInput } from './sheet-input.ts';
import { fieldValue, type SheetLayout, sheetLayout } from './sheet-layout.ts';
import type { Subject } from './subjects.ts';

/** What stands in a cell for a stop that was left out on purpose. */
export const leftOut = 'left out';

/** A cell of a sheet. */
export interface CellPlace {
  readonly column: string;
  readonly index: number;
}

/** Something to look at, and where. */
export interface SheetNotice {
  readonly text: string;
  readonly at: CellPlace;
}

/** A sheet read: its cells, the survey as far as it goes, and what still stands in the way of keeping it. */
export interface SheetReading {
  readonly layout: SheetLayout;
  readonly cells: Cells;
  readonly filled: number;
  readonly total: number;
  readonly input?: SurveyInput;
  /** All cells are read, not only those up to some place. */
  readonly isWhole: boolean;
  readonly missing?: { readonly why: string; readonly at?: CellPlace; readonly field?: string };
  /** Cells that were read in a unit of their own. */
  readonly notices: readonly SheetNotice[];
  readonly from_mm: number;
  /** The cell that a path of the input is of, `angles_urad[5]`. */
  readonly placeOf: (path: string | undefined) => CellPlace | undefined;
}

const isPlateHow = ({ how }: SurveySheet): boolean =>
  how === 'heights' || how === 'level grid' || how === 'eight lines';
/** Stops may be left out where each reading is a height of its own. */
export const mayLeaveOut = ({ how }: SurveySheet): boolean => hows[how].reads === 'height';

function readCell(text: string, sheet: SurveySheet): CellRead {
  const plain = text.trim();
  if (plain === '') return { is: 'empty' };
  if (plain === leftOut && mayLeaveOut(sheet)) return { is: 'left out' };
  const read = readReading(plain, sheet.unit, isAngle(sheet));
  return read.ok
    ? { is: 'read', value: read.value, echo: read.echo, echoOther: read.echoOther }
    : { is: 'wrong', why: read.why };
}

export function readSheet(sheet: SurveySheet, subject: Subject): SheetReading {
  const layout = sheetLayout(sheet);
  const cells = Object.fromEntries(
    layout.columns.map(({ key, places }) => [
      key,
      places.map((_, k) => readCell(sheet.cells[key]?.[k] ?? '', sheet)),
    ]),
  );
  const all = Object.values(cells).flat();
  const filled = all.filter((cell) => cell.is === 'read' || cell.is === 'left out').length;
  const isWhole = all.length > 0 && filled === all.length;
  const built = isPlateHow(sheet)
    ? plateOf(sheet, subject, layout, cells, isWhole)
    : lineOf(sheet, subject, layout, cells);
  const missing =
    missingFrom(sheet, layout, cells) ?? (built.wrong === undefined ? undefined : { why: built.wrong });
  return {
    layout,
    cells,
    filled,
    total: all.length,
    isWhole,
    ...(built.input ? { input: built.input } : {}),
    ...(missing ? { missing } : {}),
    notices: ownUnits(sheet, layout, cells),
    from_mm: isStepped(sheet) ? fieldValue(layout.fields, 'from') : 0,
    placeOf: (path) => placeOfPath(path, cells),
  };
}

/** The first thing in the way of keeping the sheet. */
function missingFrom(sheet: SurveySheet, layout: SheetLayout, cells: Cells): SheetReading['missing'] {
  if (layout.lacks) return { why: layout.lacks.why, field: layout.lacks.field };
  for (const name of hows[sheet.how].fields) {
    const read = layout.fields[name]!;
    if (read.is === 'wrong') return { why: `${fieldWords[name]!.label}: ${read.why}`, field: name };
  }
  for (const is of ['wrong', 'empty'] as const)
    for (const { key, label, places } of layout.columns) {
      const index = cells[key]!.findIndex((cell) => cell.is === is);
      if (index < 0) continue;
      const where = layout.columns.length > 1 ? `${label}, ${places[index]}` : places[index]!;
      const at = { column: key, index };
      if (is === 'wrong') return { why: `${where}: the reading cannot be read yet.`, at };
      const rest = mayLeaveOut(sheet)
        ? ' Take it, or leave the stop out.'
        : ' Take it: every later height hangs on it.';
      return { why: `${where}: the reading is missing.${rest}`, at };
    }
  return undefined;
}

/** A unit that the sheet's bare numbers are never in: read so, a cell with a unit of its own keeps its value. */
const another = (sheet: SurveySheet): string =>
  isAngle(sheet) ? (sheet.unit === 'arcsec' ? 'urad' : 'arcsec') : sheet.unit === 'mm' ? 'in' : 'mm';

/** Cells whose own unit is not the column's: taken, and told. */
function ownUnits(sheet: SurveySheet, layout: SheetLayout, cells: Cells): SheetNotice[] {
  return layout.columns.flatMap(({ key, places }) =>
    cells[key]!.flatMap((cell, index): SheetNotice[] => {
      if (cell.is !== 'read' || cell.value === 0) return [];
      const typed = (sheet.cells[key]?.[index] ?? '').trim();
      const figures = /[\d.]+/.exec(typed)?.[0];
      const words = typed.replace(/^[-+−–\s]*[\d.\s]+/, '').trim();
      if (figures === undefined || words === '') return [];
      const elsewhere = readReading(typed, another(sheet), isAngle(sheet));
      const bare = readReading(figures, sheet.unit, isAngle(sheet));
      if (!elsewhere.ok || elsewhere.value !== cell.value) return [];
      if (bare.ok && Math.abs(Math.abs(bare.value) - Math.abs(cell.value)) <= 1e-9 * Math.abs(cell.value))
        return [];
      const text = `${places[index]}: “${typed}” has a unit of its own and was taken as ${cell.echo}; bare numbers here are in ${unitWords(sheet.unit)}.`;
      return [{ text, at: { column: key, index } }];
    }),
  );
}

/** `angles_urad[5]` and the like back to their cells; a stop left out is counted over. */
function placeOfPath(path: string | undefined, cells: Cells): CellPlace | undefined {
  const found = /^([a-z_]+)(?:\.([a-z_]+))?\[(\d+)\](?:\[(\d+)\])?/.exec(path ?? '');
  if (!found) return undefined;
  const [, list, line, one, two] = found;
  const index = Number(one);
  if (line && cells[line]) return { column: line, index };
  if (list === 'along_x_urad') return { column: `row ${index + 1}`, index: Number(two ?? 0) };
  if (list === 'along_y_urad') return { column: `column ${index + 1}`, index: Number(two ?? 0) };
  if (list === 'points') return nth(Object.keys(cells), cells, index);
  const column = list!.startsWith('return')
    ? 'back'
    : list === 'reversed_um'
      ? 'reversed'
      : list === 'other_um'
        ? 'other'
        : 'there';
  return cells[column] ? nth([column], cells, index) : undefined;
}

function nth(columns: readonly string[], cells: Cells, n: number): CellPlace | undefined {
  let left = n;
  for (const column of columns)
    for (const [index, cell] of cells[column]!.entries())
      if (cell.is === 'read' && left-- === 0) return { column, index };
  return undefined;
}
