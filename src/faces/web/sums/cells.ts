import { BadInput } from '../../../contract/refusal.ts';
import { isOutside, sumKey, typedSum } from '../../../contract/sum-typed.ts';
import { type MaterialName, materials } from '../../../core/kit/material.ts';
import type { SumAsk } from '../../../core/sums/answer.ts';
import { saySum } from '../../../core/sums/said.ts';
import type { Sum, SumInput } from '../../../core/sums/sum.ts';
import { readSumInput } from '../../../core/sums/typed.ts';
import { listedSum } from '../../../shop/sums/sum-answer.ts';
import { sameMeaning } from '../frame/same-meaning.ts';
import type { Units } from '../keep/settings.ts';

/** A sum as it is being typed: texts by input, with the system that bare numbers are read in. */
export interface SumDraft {
  readonly system: Units;
  readonly typed: Readonly<Record<string, string>>;
  readonly material?: MaterialName;
}

/** One cell as it was understood. */
export type CellRead =
  /** Nothing typed: `text` is what is taken instead, if anything is. */
  | { readonly state: 'empty'; readonly text?: string }
  | { readonly state: 'read'; readonly text: string }
  | { readonly state: 'wrong'; readonly why: string };

/** All cells read: what is asked, once every cell allows it. */
export interface CellsRead {
  readonly cells: Readonly<Record<string, CellRead>>;
  /** Inputs that must be typed and are not yet. */
  readonly missing: readonly SumInput[];
  readonly ask?: SumAsk;
}

/** Whether a material can be named for this sum. */
export const takesMaterial = (sum: Sum): boolean =>
  Object.values(sum.inputs).some((input) => input.material !== undefined);

const filled = (draft: SumDraft): [string, string][] =>
  Object.entries(draft.typed).filter(([, text]) => text.trim() !== '');

/** The limits of an input in words: "above 0 mm and at most 90 mm". */
function limits(input: SumInput, system: Units): string {
  const said = (value: number): string => saySum(value, input.unit, system, { rough: true });
  return [
    input.above === undefined ? '' : `above ${said(input.above)}`,
    input.least === undefined ? '' : `at least ${said(input.least)}`,
    input.below === undefined ? '' : `below ${said(input.below)}`,
    input.most === undefined ? '' : `at most ${said(input.most)}`,
  ]
    .filter((part) => part !== '')
    .join(' and ');
}

function readCell(input: SumInput, text: string, draft: SumDraft): CellRead {
  const { system, material } = draft;
  const said = (value: number, sd = 0): string => saySum(value, input.unit, system, { sd });
  if (text.trim() === '') {
    const value =
      input.material !== undefined && material !== undefined
        ? materials[material][input.material]
        : input.preset;
    return value === undefined ? { state: 'empty' } : { state: 'empty', text: said(value) };
  }
  const read = readSumInput(text, input.unit, system);
  if (!read.ok) return { state: 'wrong', why: read.why };
  if (isOutside(read.value, input))
    return { state: 'wrong', why: `Read as ${said(read.value)}; expected ${limits(input, system)}.` };
  return { state: 'read', text: said(read.value, read.sd) };
}

/** Reads every cell by itself; what is asked only when all of them can be taken together. */
export function readCells(sum: Sum, draft: SumDraft): CellsRead {
  const cells: Record<string, CellRead> = {};
  const missing: SumInput[] = [];
  for (const [key, input] of Object.entries(sum.inputs)) {
    const read = readCell(input, draft.typed[key] ?? '', draft);
    cells[key] = read;
    if (read.state === 'empty' && read.text === undefined) missing.push(input);
  }
  if (missing.length > 0 || Object.values(cells).some((one) => one.state === 'wrong'))
    return { cells, missing };
  const typed: [string, string][] = filled(draft).filter(([key]) => key in sum.inputs);
  if (takesMaterial(sum) && draft.material !== undefined) typed.push(['material', draft.material]);
  try {
    return { cells, missing, ask: typedSum(sum.name, typed, draft.system) };
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    // Each cell can be taken by itself, so what is left is a cell at odds with another.
    for (const [key, input] of Object.entries(sum.inputs)) {
      const issue = failure.issues.find((one) => one.path === sumKey(key, input.unit) || one.path === key);
      const read = cells[key]!;
      if (issue && read.state !== 'wrong')
        cells[key] = {
          state: 'wrong',
          why: `Read as ${read.text ?? 'nothing'}; expected ${issue.expected}.`,
        };
    }
    return { cells, missing };
  }
}

/** The example's numbers in every cell that is empty. */
export function withExample(sum: Sum, draft: SumDraft): SumDraft {
  const example = Object.fromEntries(
    listedSum(sum, draft.system).example.map((one) => {
      const at = one.indexOf('=');
      return [one.slice(0, at), one.slice(at + 1)];
    }),
  );
  const typed = Object.fromEntries(filled(draft));
  return { ...draft, typed: { ...example, ...typed } };
}

/** The draft for another system: every text keeps its meaning. */
export function inSystem(sum: Sum, draft: SumDraft, system: Units): SumDraft {
  if (system === draft.system) return draft;
  const typed = Object.fromEntries(
    Object.entries(draft.typed).map(([key, text]) => {
      const input = sum.inputs[key];
      return [key, input ? sameMeaning(text, input.unit, draft.system, system) : text];
    }),
  );
  return { ...draft, system, typed };
}

/** The draft that an address holds, if it holds any of this sum's inputs. */
export function draftFrom(
  sum: Sum,
  query: Readonly<Record<string, string>>,
  usual: Units,
): SumDraft | undefined {
  const typed = Object.fromEntries(Object.entries(query).filter(([key]) => key in sum.inputs));
  const system = query.units === 'inch' || query.units === 'metric' ? query.units : usual;
  const { material } = query;
  const known = material !== undefined && Object.hasOwn(materials, material) && takesMaterial(sum);
  if (Object.keys(typed).length === 0 && !known) return undefined;
  return { system, typed, ...(known ? { material: material as MaterialName } : {}) };
}

/** What stands behind the address for a draft. */
export const addressOf = (draft: SumDraft): Record<string, string> => {
  const typed = Object.fromEntries(filled(draft));
  const { material, system } = draft;
  if (Object.keys(typed).length === 0 && material === undefined) return {};
  return { ...typed, ...(material === undefined ? {} : { material }), units: system };
};
