import type { Doubted } from '../../../core/parts/spindle.ts';
import { saySum } from '../../../core/sums/said.ts';
import type { SumUnit } from '../../../core/sums/sum.ts';
import { readSumInput } from '../../../core/sums/typed.ts';
import type { RateTime } from '../../../shop/parts/lasting-sentence.ts';
import { sameMeaning } from '../frame/same-meaning.ts';
import type { Units } from '../keep/settings.ts';

/** The screen as it is being typed: texts by cell, with the system that bare numbers are read in. */
export interface PartsDraft {
  readonly system: Units;
  readonly typed: Readonly<Record<string, string>>;
  readonly per: RateTime;
}

/** One thing that is asked. */
export interface PartsCell {
  readonly key: string;
  readonly label: string;
  readonly unit: SumUnit;
  /** It has two directions: what plus is stands in the label. */
  readonly signed: boolean;
  /** What is taken when nothing is typed. */
  readonly taken?: number;
  /** Words for the empty cell instead of the value taken. */
  readonly empty?: string;
  readonly least?: number;
  readonly most?: number;
}

/** A cell as it was understood. */
export type PartsRead =
  | { readonly state: 'empty'; readonly text: string; readonly found?: Doubted }
  | { readonly state: 'read'; readonly text: string; readonly found: Doubted }
  | { readonly state: 'wrong'; readonly why: string };

/** Reads one cell by itself. */
export function readPartsCell(cell: PartsCell, draft: PartsDraft): PartsRead {
  const { key, unit, signed, taken, empty, least, most } = cell;
  const { system } = draft;
  const text = draft.typed[key] ?? '';
  const said = ({ value, sd = 0 }: Doubted, rough = false) =>
    saySum(value, unit, system, { sd, signed, rough });
  if (text.trim() === '') {
    if (taken === undefined) return { state: 'empty', text: empty ?? 'to be typed' };
    return {
      state: 'empty',
      text: empty ?? `taken as ${said({ value: taken }, true)} when left empty`,
      found: { value: taken },
    };
  }
  const read = readSumInput(text, unit, system);
  if (!read.ok) return { state: 'wrong', why: read.why };
  const found: Doubted = { value: read.value, ...(read.sd === undefined ? {} : { sd: read.sd }) };
  const isLow = least !== undefined && found.value < least - 1e-9;
  const isHigh = most !== undefined && found.value > most + 1e-9;
  if (isLow || isHigh) {
    const bounds = [
      least === undefined ? '' : `at least ${said({ value: least }, true)}`,
      most === undefined ? '' : `at most ${said({ value: most }, true)}`,
    ].filter((part) => part !== '');
    return { state: 'wrong', why: `Read as ${said(found)}; expected ${bounds.join(' and ')}.` };
  }
  return { state: 'read', text: `Read as ${said(found)}.`, found };
}

/** What a cell comes to; undefined where it is wrong or there is nothing to take. */
export const foundIn = (read: PartsRead): Doubted | undefined =>
  read.state === 'wrong' ? undefined : read.found;

/** The draft for another system: every text keeps its meaning. */
export function partsInSystem(
  draft: PartsDraft,
  unitOf: (key: string) => SumUnit | undefined,
  system: Units,
): PartsDraft {
  if (system === draft.system) return draft;
  const typed = Object.fromEntries(
    Object.entries(draft.typed).map(([key, text]) => {
      const unit = unitOf(key);
      return [key, unit ? sameMeaning(text, unit, draft.system, system) : text];
    }),
  );
  return { ...draft, system, typed };
}
