import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { type EightLine, eightLines } from '../../core/survey/plate-input.ts';
import { type FieldRead, readField, stepsIn } from './sheet-fields.ts';
import { fieldWords, hows } from './sheet-hows.ts';

/** A column of cells: its key in the sheet, what it is called, and where each of its cells stands. */
export interface SheetColumn {
  readonly key: string;
  readonly label: string;
  readonly places: readonly string[];
}

/** A sheet's fields as read, and the cells that they make; no cells while a field is lacking. */
export interface SheetLayout {
  readonly fields: Readonly<Record<string, FieldRead>>;
  readonly columns: readonly SheetColumn[];
  /** Stops along a line, mm from its own zero. */
  readonly stations_mm: readonly number[];
  readonly lacks?: { readonly field: string; readonly why: string };
}

const systemOf = (sheet: SurveySheet): UnitSystem => (sheet.lengths === 'mm' ? 'metric' : 'inch');

/** Line names as the operator sees the surface. */
export const lineWords: Readonly<Record<EightLine, string>> = {
  front: 'Front side',
  back: 'Back side',
  left: 'Left side',
  right: 'Right side',
  middle_x: 'Middle line along',
  middle_y: 'Middle line across',
  rising: 'Diagonal, front left to back right',
  falling: 'Diagonal, back left to front right',
};

/** The number that a field holds, 0 when it holds none. */
export const fieldValue = (fields: SheetLayout['fields'], name: string): number => {
  const read = fields[name];
  return read?.is === 'read' ? read.value : 0;
};

export function sheetLayout(sheet: SurveySheet): SheetLayout {
  const how = hows[sheet.how];
  const fields = Object.fromEntries(how.fields.map((name) => [name, readField(sheet, name)]));
  const nothing = { fields, columns: [], stations_mm: [] };
  for (const name of how.fields) {
    const read = fields[name]!;
    if (read.is === 'wrong' && fieldWords[name]!.needed)
      return { ...nothing, lacks: { field: name, why: read.why } };
    if (read.is === 'empty' && fieldWords[name]!.needed)
      return { ...nothing, lacks: { field: name, why: `${fieldWords[name]!.label} is not said yet.` } };
  }
  const value = (name: string) => fieldValue(fields, name);
  const say = (mm: number) => sayLength(mm, systemOf(sheet)).text;
  const span = (from: number, step: number) =>
    `${sayLength(from, systemOf(sheet)).number} to ${say(from + step)}`;
  if (sheet.how === 'eight lines') return { ...nothing, columns: eightLineColumns(value) };
  if (sheet.how === 'heights' || sheet.how === 'level grid') {
    const [nx, ny] = [
      stepsIn(value('length_x'), value('step_x')),
      stepsIn(value('length_y'), value('step_y')),
    ];
    if (typeof nx === 'string') return { ...nothing, lacks: { field: 'length_x', why: nx } };
    if (typeof ny === 'string') return { ...nothing, lacks: { field: 'length_y', why: ny } };
    if ((nx + 1) * (ny + 1) > 441)
      return {
        ...nothing,
        lacks: {
          field: 'step_x',
          why: `That is ${(nx + 1) * (ny + 1)} stations; at most 441 are worked out here. Take longer steps.`,
        },
      };
    const [dx, dy] = [value('step_x'), value('step_y')];
    const rows = Array.from({ length: ny + 1 }, (_, k) => k * dy);
    const columns = Array.from({ length: nx + 1 }, (_, k) => k * dx);
    const where = (mm: number, last: number, near: string, far: string) =>
      mm === 0 ? `, ${near}` : mm === last ? `, ${far}` : '';
    const row = (mm: number, places: readonly string[]): SheetColumn => ({
      key: `row ${rows.indexOf(mm) + 1}`,
      label: `Row at ${say(mm)}${where(mm, rows.at(-1)!, 'nearest you', 'at the back')}`,
      places,
    });
    if (sheet.how === 'heights')
      return {
        ...nothing,
        columns: rows.map((mm) =>
          row(
            mm,
            columns.map((at) => say(at)),
          ),
        ),
      };
    return {
      ...nothing,
      columns: [
        ...rows.map((mm) =>
          row(
            mm,
            columns.slice(0, -1).map((at) => span(at, dx)),
          ),
        ),
        ...columns.map((mm, k) => ({
          key: `column ${k + 1}`,
          label: `Column at ${say(mm)}${where(mm, columns.at(-1)!, 'at the left', 'at the right')}`,
          places: rows.slice(0, -1).map((at) => span(at, dy)),
        })),
      ],
    };
  }
  const step = value('step');
  const steps = stepsIn(value('length'), step);
  if (typeof steps === 'string') return { ...nothing, lacks: { field: 'length', why: steps } };
  const from = value('from');
  const stations_mm = Array.from({ length: steps + 1 }, (_, k) => k * step);
  const stepped = how.reads === 'angle' && sheet.how !== 'bridge level';
  const places = stepped
    ? stations_mm.slice(0, -1).map((at) => span(from + at, step))
    : stations_mm.map((at) => say(from + at));
  return {
    fields,
    stations_mm,
    columns: [
      {
        key: 'there',
        label: sheet.cells.other ? 'The way itself, from the headstock end' : 'From the headstock end',
        places,
      },
      ...(sheet.cells.other
        ? [{ key: 'other', label: 'The way it runs along, the same stops', places }]
        : []),
      ...(sheet.cells.back
        ? [{ key: 'back', label: 'Back again, from the far end', places: places.toReversed() }]
        : []),
      ...(sheet.cells.reversed
        ? [{ key: 'reversed', label: 'With the straightedge turned over', places }]
        : []),
    ],
  };
}

function eightLineColumns(value: (name: string) => number): SheetColumn[] {
  const counts: Readonly<Record<EightLine, number>> = {
    front: value('steps_x'),
    back: value('steps_x'),
    left: value('steps_y'),
    right: value('steps_y'),
    middle_x: value('steps_x'),
    middle_y: value('steps_y'),
    rising: value('steps_diagonal'),
    falling: value('steps_diagonal'),
  };
  return eightLines.map((name) => ({
    key: name,
    label: lineWords[name],
    places: Array.from({ length: counts[name] }, (_, k) => `step ${k + 1}`),
  }));
}
