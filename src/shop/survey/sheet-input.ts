import { alongInput } from '../../contract/along.ts';
import { lineInput } from '../../contract/line.ts';
import { plateInput } from '../../contract/plate.ts';
import { BadInput, issueText } from '../../contract/refusal.ts';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import type { AlongInput } from '../../core/survey/along.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { eightLines, type PlateInput } from '../../core/survey/plate-input.ts';
import { laidEdge } from './laid-edge.ts';
import { isAngle } from './sheet-fields.ts';
import { fieldValue, type SheetLayout } from './sheet-layout.ts';
import type { Subject } from './subjects.ts';

/** A cell as it was read. */
export type CellRead =
  | { readonly is: 'empty' | 'left out' }
  | { readonly is: 'read'; readonly value: number; readonly echo: string; readonly echoOther: string }
  | { readonly is: 'wrong'; readonly why: string };

/** Cells of a sheet by column. */
export type Cells = Readonly<Record<string, readonly CellRead[]>>;

/** What a sheet's cells make, as the verbs take it. */
export type SurveyInput = LineInput | AlongInput | PlateInput;

/** Stepped feet count from their own zero; stops are named from the headstock end. */
export const isStepped = (sheet: SurveySheet): boolean => isAngle(sheet) && sheet.how !== 'bridge level';

/** The input, nothing while there is too little of it, or why it cannot be. */
interface Built {
  readonly input?: SurveyInput;
  readonly wrong?: string;
}

/** The input held to the contract; what it refuses, in words. */
function held(input: unknown, read: (value: unknown) => SurveyInput): Built {
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

/** A line as far as its cells go without a gap. */
export function lineOf(sheet: SurveySheet, subject: Subject, layout: SheetLayout, cells: Cells): Built {
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
        ...optional(
          'bridge_mm',
          layout.fields.bridge?.is === 'read' ? layout.fields.bridge.value : undefined,
        ),
        ...optional('limit_urad', limit),
      },
      alongInput,
    );
  }
  if (sheet.how === 'parallel') {
    const other = isAll && cells.other ? upToGap(cells.other) : undefined;
    // Beside a second way only what both have counts; a stop that any run left out is left out of all.
    const kept = there.flatMap((value, i) =>
      value === undefined ||
      (cells.other && other?.[i] === undefined) ||
      (hasBack && back[back.length - 1 - i] === undefined)
        ? []
        : [i],
    );
    if (kept.length < 2) return {};
    return held(
      {
        kind: 'parallel',
        name: name.charAt(0).toUpperCase() + name.slice(1),
        stations_mm: kept.map((i) => layout.stations_mm[i]! + from),
        heights_um: kept.map((i) => there[i]),
        ...(other ? { other_um: kept.map((i) => other[i]) } : {}),
        ...(hasBack ? { return_um: kept.toReversed().map((i) => back[back.length - 1 - i]) } : {}),
        ...optional('reading_sd_um', repeat),
        ...optional('limit_um', limit),
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
  const edge = subject.kind === 'vertical' ? laidEdge(sheet, layout) : {};
  const built = held(
    {
      kind: 'heights',
      stations_mm: kept.map((i) => layout.stations_mm[i]! + from),
      heights_um: kept.map((i) => there[i]),
      ...(hasBack ? { return_um: kept.toReversed().map((i) => back[back.length - 1 - i]) } : {}),
      ...(reversed.length === there.length ? { reversed_um: kept.map((i) => reversed[i]) } : {}),
      ...optional('reading_sd_um', repeat),
      ...optional('reference_sd_um', sdOf(layout, 'edge')),
      ...optional('straightedge', edge.straightedge),
      ...common,
    },
    lineInput,
  );
  return edge.wrong === undefined ? built : { ...built, wrong: built.wrong ?? edge.wrong };
}

/** A surface, once all its cells are read or left out. */
export function plateOf(
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
