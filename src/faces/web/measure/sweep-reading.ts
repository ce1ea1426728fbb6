import type { JobPlan, SetupRecord } from '../../../core/ledger/entry.ts';
import type { SweepSetup } from '../../../core/ledger/setup.ts';
import { type ColumnUnread, readPastedColumn } from '../../../core/quantity/column.ts';
import { type DeviationRead, readDeviation } from '../../../core/quantity/deviation.ts';
import type { Unreadable } from '../../../core/quantity/refusal.ts';
import type { DeviationUnit } from '../../../core/quantity/unit.ts';
import { likelierDeviation, type UnitAsked } from '../../../shop/measure/likelier-unit.ts';
import { lookAtSweep, type OffTheLine, type SweepLook } from '../../../shop/measure/look-at-sweep.ts';
import { sweepSoFar } from '../../../shop/measure/sweep-so-far.ts';
import { type CardDraft, recordOf, temperatureOf, unitIsKept } from './draft.ts';

/** A sweep's card read: each cell understood or not, the sweep as far as it goes, and what still stands in the way. */
export interface SweepReading {
  /** One a stop; undefined where the cell is empty. */
  readonly cells: readonly (DeviationRead | Unreadable | undefined)[];
  /** As the instrument shows, µm. */
  readonly values_um: readonly (number | undefined)[];
  readonly record: SetupRecord;
  readonly look: SweepLook | undefined;
  /** Readings off the line that the person has not answered for yet, with the stop they are at. */
  readonly off: readonly (OffTheLine & { readonly stop: number })[];
  readonly filled: number;
  /** All stops read, and hardly in this unit: asked before they are kept. */
  readonly unit_asked?: UnitAsked<DeviationUnit>;
}

export type SweepDraft = CardDraft<DeviationUnit>;

export const emptySweep = (setup: SweepSetup, unit: DeviationUnit): SweepDraft => ({
  unit,
  typed: Array<string>(setup.points).fill(''),
});

export function readSweep(draft: SweepDraft, setup: SweepSetup, plan: JobPlan): SweepReading {
  const cells = draft.typed.map((text) => (text.trim() === '' ? undefined : readDeviation(text, draft.unit)));
  const values_um = cells.map((cell) => (cell?.ok ? cell.um : undefined));
  const record = recordOf(draft);
  const feature = plan.features.find((one) => one.name === setup.tells[0]);
  const look = lookAtSweep(sweepSoFar(setup, record, values_um), feature);
  const stops = values_um.flatMap((value, stop) => (value === undefined ? [] : [stop]));
  const off = (look?.off ?? [])
    .map((one) => ({ ...one, stop: stops[one.point]! }))
    .filter(({ stop }) => draft.kept_off?.[stop] !== draft.typed[stop]);
  const unit_asked =
    stops.length === setup.points && !unitIsKept(draft)
      ? likelierDeviation(draft.typed, draft.unit)
      : undefined;
  return {
    cells,
    values_um,
    record,
    look,
    off,
    filled: stops.length,
    ...(unit_asked ? { unit_asked } : {}),
  };
}

/** Why the sweep cannot be kept yet, and which stop is to be looked at; undefined when it can. */
export function missingFrom(
  reading: SweepReading,
  draft: SweepDraft,
  places: readonly string[],
): { readonly why: string; readonly stop?: number } | undefined {
  if (draft.push === undefined) return { why: 'Say first what the number did when you pushed.' };
  const bad = reading.cells.findIndex((cell) => cell !== undefined && !cell.ok);
  if (bad >= 0) return { why: `The reading at ${places[bad]} cannot be read yet.`, stop: bad };
  const empty = reading.cells.indexOf(undefined);
  if (empty >= 0) return { why: `The reading at ${places[empty]} is missing.`, stop: empty };
  if (reading.unit_asked) return { why: 'Say first which unit these readings are in.' };
  const off = reading.off[0];
  if (off) return { why: `Answer the question about ${places[off.stop]}.`, stop: off.stop };
  const temperature = temperatureOf(draft.temperature);
  return typeof temperature === 'string' ? { why: temperature } : undefined;
}

/** A column pasted at a stop: the draft with it, or why none of it was taken. */
export function poured(
  draft: SweepDraft,
  stop: number,
  text: string,
): { readonly ok: true; readonly draft: SweepDraft; readonly next: number } | ColumnUnread {
  const column = readPastedColumn(text, draft.unit);
  if (!column.ok) return column;
  const room = draft.typed.length - stop;
  if (column.readings.length > room)
    return {
      ok: false,
      line: room + 1,
      why: `${column.readings.length} readings were pasted; from here there are ${room} stops. Nothing was taken.`,
    };
  const typed = draft.typed.map((old, i) => {
    const read = column.readings[i - stop];
    return read ? writtenFor(read, draft.unit) : old;
  });
  const next = Math.min(draft.typed.length - 1, stop + column.readings.length);
  return { ok: true, draft: { ...draft, typed }, next };
}

/** A reading as written in a column of this unit: as it was typed if it is then read the same, else with its unit behind it. */
function writtenFor(read: DeviationRead, unit: DeviationUnit): string {
  const again = readDeviation(read.typed, unit);
  return again.ok && again.um === read.um ? read.typed : read.echo;
}

/** The draft with another unit for bare numbers: what is written already keeps its meaning. */
export const withUnit = (draft: SweepDraft, unit: DeviationUnit): SweepDraft => ({
  ...draft,
  unit,
  typed: draft.typed.map((text) => {
    const read = text.trim() === '' ? undefined : readDeviation(text, draft.unit);
    return read?.ok ? writtenFor(read, unit) : text;
  }),
});
