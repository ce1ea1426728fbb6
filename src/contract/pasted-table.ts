import Papa from 'papaparse';
import { readDeviation } from '../core/quantity/deviation.ts';
import { readLength } from '../core/quantity/length.ts';
import { readSlope, type SlopeUnit, slopeSize } from '../core/quantity/slope.ts';
import { tidy } from '../core/quantity/token.ts';
import { type DeviationUnit, deviationWords, lengthWords, size_um } from '../core/quantity/unit.ts';
import { BadInput, type Issue, quoted } from './refusal.ts';

/** What a column holds: a place (mm), a height (µm), an angle (µrad), or a word as it stands. */
export type ColumnSort = 'place' | 'height' | 'angle' | 'word';

/** A column that a table may have: its key, what it may be called, what it holds. */
export interface ColumnRule {
  readonly key: string;
  readonly called: readonly string[];
  readonly sort: ColumnSort;
}

/** A cell that was read in another unit than its heading's. */
export interface OtherUnit {
  readonly key: string;
  readonly index: number;
  readonly line: number;
  readonly typed: string;
  /** What it was taken for: "+7.62 µm". */
  readonly taken: string;
}

export interface PastedTable {
  /** Numbers in mm, µm or µrad by the column's sort; words apart. A cell that is empty to the end of its column is left out. */
  readonly numbers: Readonly<Record<string, readonly number[]>>;
  readonly words: Readonly<Record<string, string>>;
  /** The line of each row of numbers, from 1. */
  readonly lines: readonly number[];
  readonly otherUnits: readonly OtherUnit[];
}

interface Column {
  readonly rule: ColumnRule;
  readonly at: number;
  readonly heading: string;
  readonly unit: string | undefined;
}

const mostRows = 100_000;
const bare = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * A table as CSV, or pasted from a sheet: a line of headings, then a line a row; parted by commas, semicolons or tabs. A heading carries its
 * unit (`heights_um`, `angle [mm/m]`, `station, in`); a cell may carry its own; a column named `unit` gives a unit line by line. Lines of a
 * heading's name and one value may stand before the headings (`step_mm,200`).
 *
 * @throws BadInput  naming line and heading: an unknown heading, an empty cell between readings, a cell that cannot be read
 */
export function pastedTable(text: string, rules: readonly ColumnRule[]): PastedTable {
  const rows = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter: delimiterOf(text) })
    .data.map((cells, i) => ({ line: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (rows.length === 0)
    throw new BadInput([{ path: '', found: 'nothing', expected: 'a table with headings' }]);
  const before = rows.findIndex(({ cells }) => !isSetting(cells, rules));
  const settings = before < 0 ? rows : rows.slice(0, before);
  const [head, ...body] = before < 0 ? [] : rows.slice(before);
  if (!head || body.length === 0)
    throw new BadInput([
      {
        path: `line ${rows.at(-1)!.line}`,
        found: 'no readings below the headings',
        expected: 'a line a reading',
      },
    ]);
  if (body.length > mostRows)
    throw new BadInput([{ path: '', found: `${body.length} lines`, expected: `at most ${mostRows}` }]);
  const columns = columnsOf(head, rules);
  const reader = new CellReader();
  const numbers: Record<string, number[]> = {};
  const words: Record<string, string> = {};
  for (const { line, cells } of settings) {
    const [column] = columnsOf({ line, cells: [cells[0]!] }, rules);
    const value = reader.read({ ...column!, at: 1 }, cells, line, undefined, 0);
    if (column!.rule.sort === 'word') words[column!.rule.key] = cells[1]!;
    else if (value !== undefined) numbers[column!.rule.key] = [value];
  }
  const unitAt = columns.find((column) => column.rule.key === 'unit')?.at;
  for (const column of columns) {
    const { key, sort } = column.rule;
    if (key === 'unit') continue;
    if (sort === 'word') {
      const said = body.find(({ cells }) => (cells[column.at] ?? '') !== '')?.cells[column.at];
      if (said !== undefined) words[key] = said;
      continue;
    }
    const filled = body.findLastIndex(({ cells }) => (cells[column.at] ?? '') !== '') + 1;
    numbers[key] = body.slice(0, filled).flatMap(({ line, cells }, index) => {
      const once = sort === 'place' && key.startsWith('step');
      if (once && (cells[column.at] ?? '') === '') return [];
      const unit = unitAt === undefined ? undefined : cells[unitAt];
      return [reader.read(column, cells, line, unit, index) ?? Number.NaN];
    });
  }
  if (reader.issues.length) throw new BadInput(reader.issues.slice(0, 50));
  return { numbers, words, lines: body.map(({ line }) => line), otherUnits: reader.otherUnits };
}

/** What parts the cells: a tab or a semicolon wherever there is one, since headings may hold a comma ("station, in"). */
const delimiterOf = (text: string): string => (text.includes('\t') ? '\t' : text.includes(';') ? ';' : ',');

/** A line of one name and one value, with nothing else in it. */
function isSetting(cells: readonly string[], rules: readonly ColumnRule[]): boolean {
  const [name, value, ...rest] = cells;
  if (!name || !value || rest.some((cell) => cell !== '')) return false;
  const rule = named(name, rules)?.rule;
  return (
    rule !== undefined && named(value, rules) === undefined && (rule.sort === 'word' || /\d/.test(value))
  );
}

function columnsOf(head: { line: number; cells: readonly string[] }, rules: readonly ColumnRule[]): Column[] {
  const issues: Issue[] = [];
  const columns = head.cells.flatMap((heading, at): Column[] => {
    if (heading === '') return [];
    const found = named(heading, rules);
    if (found) return [{ ...found, at, heading }];
    issues.push({
      path: `line ${head.line}`,
      found: `the heading ${quoted(heading)}`,
      expected: rules.map((rule) => `"${rule.key}"`).join(', '),
    });
    return [];
  });
  for (const { rule, heading, at } of columns)
    if (columns.some((other) => other.rule.key === rule.key && other.at < at))
      issues.push({
        path: `line ${head.line}`,
        found: `${quoted(heading)} a second time`,
        expected: 'it once',
      });
  if (issues.length) throw new BadInput(issues);
  return columns;
}

/** Which column a heading names, and the unit it gives. */
function named(heading: string, rules: readonly ColumnRule[]) {
  const plain = tidy(heading).toLowerCase();
  for (const rule of rules)
    for (const name of [rule.key.toLowerCase(), ...rule.called]) {
      if (!plain.startsWith(name)) continue;
      const rest = plain.slice(name.length);
      if (rest !== '' && !/^[\s_,:([]/.test(rest)) continue;
      const own = /_(mm|um|urad)$/.exec(name)?.[1];
      const said = rest.replace(/^[\s_,:([]+|[\])\s]+$/g, '');
      if (said === '') return { rule, unit: own };
      if (!own && rule.sort !== 'word' && knownUnit(said, rule.sort)) return { rule, unit: said };
    }
  return undefined;
}

const deviationUnits: readonly string[] = ['um', 'mm', 'thou', 'tenths', 'in'];

/** The unit of a heading as `core/quantity` spells it. */
function knownUnit(said: string, sort: ColumnSort): string | undefined {
  const unit = tidy(said).toLowerCase();
  if (sort === 'place') {
    const place = lengthWords.get(unit);
    return place === 'mm' || place === 'in' ? place : undefined;
  }
  if (sort === 'height') {
    const height = deviationWords.get(unit);
    return height !== undefined && deviationUnits.includes(height) ? height : undefined;
  }
  if (/^(urad|microrad\w*)$/.test(unit)) return 'urad';
  if (/^(arcsecs?|arc ?sec\w*|seconds?|sec)$/.test(unit)) return 'arcsec';
  const fall = /^([a-z]+)\s*(?:\/|per|in)\s*(m|ft|\d+(?:\.\d+)? (?:mm|in))$/.exec(unit);
  const first = fall && deviationWords.get(fall[1]!);
  return fall && first && deviationUnits.includes(first) ? `${first}/${fall[2]}` : undefined;
}

/** What one of a unit is, in mm, µm or µrad by sort. */
function sizeOf(unit: string, sort: ColumnSort): number {
  if (sort === 'angle') return slopeSize(unit as SlopeUnit);
  const um = size_um[unit as DeviationUnit];
  return sort === 'place' ? um / size_um.mm : um;
}

/** Reads cells and keeps what was wrong with them. */
class CellReader {
  readonly issues: Issue[] = [];
  readonly otherUnits: OtherUnit[] = [];

  read(
    column: Column,
    cells: readonly string[],
    line: number,
    rowUnit: string | undefined,
    index: number,
  ): number | undefined {
    const { rule, heading, at } = column;
    const typed = cells[at] ?? '';
    if (rule.sort === 'word') return undefined;
    if (typed === '')
      return this.refuse(line, `nothing under ${quoted(heading)}`, 'a value: one is missing here');
    const said = rowUnit && rule.sort !== 'place' ? rowUnit : column.unit;
    const unit = said === undefined ? undefined : knownUnit(said, rule.sort);
    if (said !== undefined && unit === undefined)
      return this.refuse(line, `the unit ${quoted(said)}`, expectedUnits[rule.sort]);
    const plain = tidy(typed);
    if (bare.test(plain)) {
      if (unit === undefined)
        return this.refuse(
          line,
          `${quoted(typed)} under ${quoted(heading)}, without a unit`,
          expectedUnits[rule.sort],
        );
      const value = Number(plain) * sizeOf(unit, rule.sort);
      if (Number.isFinite(value)) return value;
      return this.refuse(
        line,
        `${quoted(typed)} under ${quoted(heading)}`,
        'a number that an instrument shows',
      );
    }
    const read = spokenCell(typed, unit, rule.sort);
    if (typeof read === 'string') return this.refuse(line, `${quoted(typed)} under ${quoted(heading)}`, read);
    if (read.taken) this.otherUnits.push({ key: rule.key, index, line, typed, taken: read.taken });
    return read.value;
  }

  private refuse(line: number, found: string, expected: string): undefined {
    this.issues.push({ path: `line ${line}`, found, expected });
    return undefined;
  }
}

const expectedUnits: Readonly<Record<ColumnSort, string>> = {
  place: 'mm or in, in the heading (stations_mm) or behind the number',
  height: 'um, mm, thou, tenths or in, in the heading (heights_um) or behind the number',
  angle:
    'urad, arcsec, mm/m or another fall over a length, in the heading (angles_urad) or behind the number',
  word: 'a word',
};

/** A cell with words in it: its value, and what it was taken for; or why it cannot be read. */
function spokenCell(typed: string, unit: string | undefined, sort: ColumnSort) {
  if (sort === 'place') {
    const read = readLength(typed, (unit ?? 'mm') as 'mm' | 'in');
    return read.ok ? { value: read.mm, taken: undefined } : `a place. ${read.why}`;
  }
  if (sort === 'height') {
    const read = readDeviation(typed, (unit ?? 'um') as DeviationUnit);
    return read.ok ? { value: read.um, taken: read.echo } : `a height. ${read.why}`;
  }
  const read = readSlope(typed, (unit ?? 'urad') as SlopeUnit);
  return read.ok ? { value: read.urad, taken: read.echo } : `an angle. ${read.why}`;
}
