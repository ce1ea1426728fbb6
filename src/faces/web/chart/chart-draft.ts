import type { Result } from '../../../core/chart/result.ts';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readLength, sayLength } from '../../../core/quantity/length.ts';
import { inUnit } from '../../../core/quantity/show.ts';
import { clean, size_um, type UnitSystem } from '../../../core/quantity/unit.ts';
import type { ListOffered } from '../../../shop/chart/chart-answer.ts';
import type { LineShown } from '../../../shop/chart/line-shown.ts';

/** A result as it is typed. It keeps the unit it was begun in, whatever the screen shows later. */
export interface ResultTyped {
  readonly system: UnitSystem;
  /** "µm in 300 mm". */
  readonly unit_text: string;
  /** How many µm one of that unit is, over the length the line is stated for. */
  readonly unit_um: number;
  readonly value: string;
  readonly doubt: string;
}

export type When = 'first' | 'final';

/** What is half typed on the chart of a job; on this device until it is kept in the ledger. */
export interface ChartDraft {
  /** Sizes of the machine as typed, by the list's key, each in the system it was typed in. */
  readonly sizes: Readonly<Record<string, { readonly text: string; readonly system: UnitSystem }>>;
  readonly results: Readonly<Record<string, Readonly<Partial<Record<When, ResultTyped>>>>>;
  readonly instruments: Readonly<Record<string, string>>;
  /** Absent: letter where inches are used, else A4. */
  readonly paper?: 'a4' | 'letter';
}

export const emptyDraft: ChartDraft = { sizes: {}, results: {}, instruments: {} };

export const noResult = (line: LineShown, system: UnitSystem): ResultTyped => ({
  system,
  unit_text: line.unit_text,
  unit_um: line.unit_um,
  value: '',
  doubt: '',
});

type Read<T> =
  | { readonly is: 'empty' }
  | ({ readonly is: 'read'; readonly echo: string } & T)
  | { readonly is: 'wrong'; readonly why: string };

/** A cell of a result, µm over the line's own length. */
type MicronsRead = Read<{ readonly um: number }>;

function readMicrons(text: string, typed: ResultTyped): MicronsRead {
  if (text.trim() === '') return { is: 'empty' };
  const unit = typed.system === 'metric' ? 'um' : 'thou';
  const read = readDeviation(text, unit);
  if (!read.ok) return { is: 'wrong', why: read.why };
  // An inch shop's slope is typed over 12 in and stated over 300 mm: the line's own unit knows both.
  return { is: 'read', um: clean((read.um * typed.unit_um) / size_um[unit]), echo: inUnit(read.um, unit) };
}

/** The value of a result. What has only a size has no minus. */
export function readValue(typed: ResultTyped, isSize: boolean): MicronsRead {
  const read = readMicrons(typed.value, typed);
  if (read.is === 'read' && isSize && read.um < 0)
    return { is: 'wrong', why: `I read ${read.echo}; this line has only a size. Write it without a minus.` };
  return read;
}

/** The doubt of a result: ± and half its width, as it stands on a certificate. */
export function readDoubt(typed: ResultTyped): MicronsRead {
  const read = readMicrons(typed.doubt.replace(/^\s*(±|\+\/-|\+-)\s*/, ''), typed);
  if (read.is === 'read' && read.um < 0)
    return { is: 'wrong', why: `I read ${read.echo}; a doubt is 0 or above. Write ± 3 or 3.` };
  return read;
}

/** A size of the machine, mm. */
export function readSize(
  draft: ChartDraft,
  { key, low, high }: ListOffered['dimensions'][number],
): Read<{ readonly mm: number }> {
  const typed = draft.sizes[key];
  if (!typed || typed.text.trim() === '') return { is: 'empty' };
  const read = readLength(typed.text, typed.system === 'metric' ? 'mm' : 'in', { sort: 'size' });
  if (!read.ok) return { is: 'wrong', why: read.why };
  if (read.mm < low || read.mm > high) {
    const text = (mm: number): string => sayLength(mm, typed.system).text;
    return { is: 'wrong', why: `I read ${read.echo}; expected ${text(low)} to ${text(high)}.` };
  }
  return { is: 'read', mm: read.mm, echo: read.echo };
}

/** A result that a line has, for the shop; undefined while it cannot be read. */
export function resultOf(typed: ResultTyped | undefined, instrument: string | undefined): Result | undefined {
  const value = typed && readValue(typed, false);
  if (value?.is !== 'read') return undefined;
  const doubt = readDoubt(typed!);
  return {
    value_um: value.um,
    ...(doubt.is === 'read' ? { doubt_um: doubt.um } : {}),
    ...(instrument?.trim() ? { instrument: instrument.trim() } : {}),
  };
}

/**
 * Results as typed so far, to stand over the kept ones. What cannot be read is left out and stays in its cell. Results of lines
 * that the chosen list has not are left out too: they come back with their list.
 */
export function typedOf(draft: ChartDraft, list: string | undefined) {
  const prefix = resultKey(list, '');
  return Object.entries(draft.results)
    .filter(([key]) => key.startsWith(prefix))
    .flatMap(([key, both]) => {
      const first = resultOf(both.first, draft.instruments[key]);
      const final = resultOf(both.final, draft.instruments[key]);
      if (!first && !final) return [];
      return [{ test: key.slice(prefix.length), ...(first ? { first } : {}), ...(final ? { final } : {}) }];
    });
}

/** The draft without what was typed on a line. */
export function withoutLine(draft: ChartDraft, key: string): ChartDraft {
  const { [key]: _result, ...results } = draft.results;
  const { [key]: _with, ...instruments } = draft.instruments;
  return { ...draft, results, instruments };
}

/** A line's key in the draft: two lists may name a test alike. */
export const resultKey = (list: string | undefined, line: string): string => `${list ?? ''}/${line}`;
