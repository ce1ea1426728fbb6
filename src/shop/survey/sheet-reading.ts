import { alongInput } from '../../contract/along.ts';
import { lineInput } from '../../contract/line.ts';
import { plateInput } from '../../contract/plate.ts';
import { BadInput, issueText } from '../../contract/refusal.ts';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import type { AlongInput } from '../../core/survey/along.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { eightLines, type PlateInput } from '../../core/survey/plate-input.ts';
import { isAngle, readReading, unitWords } from './sheet-fields.ts';
import { fieldWords, hows } from './sheet-hows.ts';
import { fieldValue, type SheetLayout, sheetLayout } from './sheet-layout.ts';
import type { Subject } from './subjects.ts';

/** What stands in a cell for a stop that was left out on purpose. */
export const leftOut = 'left out';

/** A cell as it was read. */
export type CellRead =
  | { readonly is: 'empty' | 'left out' }
  | { readonly is: 'read'; readonly value: number; readonly echo: string; readonly echoOther: string }
  | { readonly is: 'wrong'; readonly why: string };

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
  readonly cells: Readonly<Record<string, readonly CellRead[]>>;
  readonly filled: number;
  readonly total: number;
  readonly input?: LineInput | AlongInput | PlateInput;
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
/** Stepped feet count from their own zero; stops are named from the headstock end. */
const isStepped = (sheet: SurveySheet): boolean => isAngle(sheet) && sheet.how !== 'bridge level';
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
  const missing = missingFrom(sheet, layout, cells) ?? ('wrong' in built ? { why: built.wrong } : undefined);
  return {
    layout,
    cells,
    filled,
    total: all.length,
    isWhole,
    ...('input' in built && built.input ? { input: built.input } : {}),
    ...(missing ? { missing } : {}),
    notices: ownUnits(sheet, layout, cells),
    from_mm: isStepped(sheet) ? fieldValue(layout.fields, 'from') : 0,
    placeOf: (path) => placeOfPath(path, cells),
  };
}

type Cells = SheetReading['cells'];

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

type Built = { readonly input?: NonNullable<SheetReading['input']> } | { readonly wrong: string };

/** The input held to the contract; what it refuses, in words. */
function held(input: unknown, read: (value: unknown) => NonNullable<SheetReading['input']>): Built {
  try {
    return { input: read(input) };
  } catch (failure) {
    if (failure instanceof BadInput) return { wrong: failure.issues.map(issueText).join('. ') };
    throw failure;
  }
}

/** ± is two sd. */
const sdOf = (layout: SheetLayout, field: string): number | undefined => {
  const read = layout.fields[field];
  return read?.is === 'read' ? read.value / 2 : undefined;
};

const optional = (key: string, value: unknown): Record<string, unknown> =>
  value === undefined ? {} : { [key]: value };

/** Readings up to the first that is not there yet; those left out are `undefined`. */
function upToGap(cells: readonly CellRead[]): (number | undefined)[] {
  const end = cells.findIndex((cell) => cell.is === 'empty' || cell.is === 'wrong');
  return cells
    .slice(0, end < 0 ? undefined : end)
    .map((cell) => (cell.is === 'read' ? cell.value : undefined));
}

function lineOf(sheet: SurveySheet, subject: Subject, layout: SheetLayout, cells: Cells): Built {
  if (!cells.there) return {};
  const there = upToGap(cells.there);
  const isAll = there.length === cells.there.length;
  const back = isAll && cells.back ? upToGap(cells.back) : [];
  const reversed = isAll && cells.reversed ? upToGap(cells.reversed) : [];
  const limit = layout.fields.limit?.is === 'read' ? layout.fields.limit.value : undefined;
  const hasBack = back.length === there.length;
  const repeat = sdOf(layout, 'repeat');
  const name = subject.of;
  const from = fieldValue(layout.fields, 'from');
  if (sheet.how === 'bridge level') {
    if (there.length < 2) return {};
    return held(
      {
        kind: 'twist',
        name: name.charAt(0).toUpperCase() + name.slice(1),
        stations_mm: layout.stations_mm.slice(0, there.length).map((at) => at + from),
        tilts_urad: there,
        ...(hasBack ? { return_urad: back } : {}),
        ...optional('reading_sd_urad', repeat),
        ...optional('limit_urad', limit),
      },
      alongInput,
    );
  }
  const unworn = layout.fields.unworn;
  const common = {
    name: name.charAt(0).toUpperCase() + name.slice(1),
    ...(subject.kind === 'horizontal' ? { direction: 'horizontal' } : {}),
    ...optional('limit_um', limit),
    // Stretches are spoken from the headstock end; stepped feet count from their own zero.
    ...(isAll && unworn?.is === 'read' && unworn.stretches
      ? { unworn_mm: unworn.stretches.map(([a, b]) => (isStepped(sheet) ? [a - from, b - from] : [a, b])) }
      : {}),
  };
  if (isAngle(sheet)) {
    if (there.length < 2) return {};
    return held(
      {
        kind: 'angles',
        step_mm: fieldValue(layout.fields, 'step'),
        angles_urad: there,
        ...(hasBack ? { return_urad: back } : {}),
        ...optional('reading_sd_urad', repeat),
        ...common,
      },
      lineInput,
    );
  }
  // A stop that any run left out is left out of all.
  const all = there.map((_, i) => i);
  const kept = all.filter(
    (i) =>
      there[i] !== undefined &&
      (!hasBack || back[back.length - 1 - i] !== undefined) &&
      (reversed.length !== there.length || reversed[i] !== undefined),
  );
  if (kept.length < 3) return {};
  return held(
    {
      kind: 'heights',
      stations_mm: kept.map((i) => layout.stations_mm[i]! + from),
      heights_um: kept.map((i) => there[i]),
      ...(hasBack ? { return_um: kept.toReversed().map((i) => back[back.length - 1 - i]) } : {}),
      ...(reversed.length === there.length ? { reversed_um: kept.map((i) => reversed[i]) } : {}),
      ...optional('reading_sd_um', repeat),
      ...optional('reference_sd_um', sdOf(layout, 'edge')),
      ...common,
    },
    lineInput,
  );
}

function plateOf(
  sheet: SurveySheet,
  subject: Subject,
  layout: SheetLayout,
  cells: Cells,
  isWhole: boolean,
): Built {
  if (!isWhole) return {};
  const value = (name: string) => fieldValue(layout.fields, name);
  const read = (name: string) => (layout.fields[name]?.is === 'read' ? value(name) : undefined);
  const common = {
    name: subject.of.charAt(0).toUpperCase() + subject.of.slice(1),
    ...optional('limit_um', read('limit')),
    ...optional('pass_um', read('pass')),
  };
  const repeat = sdOf(layout, 'repeat');
  const numbers = (key: string) => cells[key]!.map((cell) => (cell.is === 'read' ? cell.value : undefined));
  const of = (start: string) =>
    layout.columns.filter(({ key }) => key.startsWith(start)).map(({ key }) => numbers(key));
  if (sheet.how === 'heights') {
    const points = of('row').flatMap((row, j) =>
      row.flatMap((z_um, i) =>
        z_um === undefined ? [] : [{ x_mm: i * value('step_x'), y_mm: j * value('step_y'), z_um }],
      ),
    );
    return held({ kind: 'points', points, ...optional('reading_sd_um', repeat), ...common }, plateInput);
  }
  if (sheet.how === 'level grid')
    return held(
      {
        kind: 'grid',
        step_x_mm: value('step_x'),
        step_y_mm: value('step_y'),
        along_x_urad: of('row'),
        along_y_urad: of('column'),
        ...optional('reading_sd_urad', repeat),
        ...common,
      },
      plateInput,
    );
  return held(
    {
      kind: 'eight lines',
      step_x_mm: value('length_x') / value('steps_x'),
      step_y_mm: value('length_y') / value('steps_y'),
      step_diagonal_mm: Math.hypot(value('length_x'), value('length_y')) / value('steps_diagonal'),
      lines_urad: Object.fromEntries(eightLines.map((name) => [name, numbers(name)])),
      ...optional('reading_sd_urad', repeat),
      ...common,
    },
    plateInput,
  );
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
  const column = list!.startsWith('return') ? 'back' : list === 'reversed_um' ? 'reversed' : 'there';
  return cells[column] ? nth([column], cells, index) : undefined;
}

function nth(columns: readonly string[], cells: Cells, n: number): CellPlace | undefined {
  let left = n;
  for (const column of columns)
    for (const [index, cell] of cells[column]!.entries())
      if (cell.is === 'read' && left-- === 0) return { column, index };
  return undefined;
}
