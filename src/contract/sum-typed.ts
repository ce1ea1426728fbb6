import { type MaterialName, materials } from '../core/kit/material.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import type { SumAsk } from '../core/sums/answer.ts';
import type { Sum, SumInput } from '../core/sums/sum.ts';
import { sumNamed, sums } from '../core/sums/sums.ts';
import { readSumInput } from '../core/sums/typed.ts';
import { BadInput, type Issue, quoted } from './refusal.ts';

/** The key of an input or result in JSON: its name and its unit, as `roll_mm`. */
export const sumKey = (key: string, unit: string): string => `${key}_${unit}`;

/** @throws BadInput  naming the sums there are */
export function knownSum(name: string): Sum {
  const sum = sumNamed(name);
  if (sum) return sum;
  throw new BadInput([
    { path: 'sum', found: quoted(name), expected: sums.map((one) => one.name).join(', ') },
  ]);
}

/** What was given of a sum, and what is wrong with it so far. */
export interface FoundInputs {
  readonly values: Map<string, number>;
  readonly sds: Map<string, number>;
  readonly issues: Issue[];
}

/** What is expected of an input, in words. */
function expectedOf(input: SumInput): string {
  const unit = input.unit;
  const parts = [
    input.above === undefined ? '' : `above ${input.above}`,
    input.least === undefined ? '' : `at least ${input.least}`,
    input.below === undefined ? '' : `below ${input.below}`,
    input.most === undefined ? '' : `at most ${input.most}`,
  ].filter((part) => part !== '');
  return `${input.label}, ${unit}${parts.length ? `, ${parts.join(' and ')}` : ''}`;
}

/** Whether a value lies outside the limits of its input. */
export const isOutside = (value: number, input: SumInput): boolean =>
  (input.above !== undefined && !(value > input.above)) ||
  (input.least !== undefined && !(value >= input.least)) ||
  (input.below !== undefined && !(value < input.below)) ||
  (input.most !== undefined && !(value <= input.most));

/** Fills in what was left out, and refuses what is missing, outside its limits or at odds with another. */
export function filled(sum: Sum, found: FoundInputs, material: MaterialName | undefined): SumAsk {
  const { issues } = found;
  const values: Record<string, number> = {};
  const sds: Record<string, number> = {};
  const taken: string[] = [];
  const usual: string[] = [];
  const stuff = material === undefined ? undefined : materials[material];
  for (const [key, input] of Object.entries(sum.inputs)) {
    const path = sumKey(key, input.unit);
    const ofMaterial = input.material && stuff ? stuff[input.material] : undefined;
    const value = found.values.get(key) ?? ofMaterial ?? input.preset;
    if (value === undefined) {
      if (!issues.some((issue) => issue.path === path || issue.path === key))
        issues.push({ path, found: 'nothing', expected: expectedOf(input) });
      continue;
    }
    if (isOutside(value, input)) issues.push({ path, found: String(value), expected: expectedOf(input) });
    values[key] = value;
    const isTaken = !found.values.has(key);
    if (isTaken) taken.push(key);
    // What is left out because there is none of it (no bore, no twist) has no doubt either.
    const sd = found.sds.get(key) ?? (isTaken && value === 0 ? 0 : usualSd(input, stuff));
    if (!found.sds.has(key) && sd > 0) usual.push(key);
    sds[key] = sd;
  }
  if (issues.length === 0) {
    const odd = sum.fits?.(values);
    if (odd)
      issues.push({
        path: sumKey(odd.key, sum.inputs[odd.key]!.unit),
        found: String(values[odd.key]),
        expected: odd.expected,
      });
    else issues.push(...doubtsTooLarge(sum, values, sds));
  }
  if (issues.length > 0) throw new BadInput(issues);
  return { name: sum.name, values, sds, taken, usual };
}

/** Doubts that reach past where the formula has a value: a stack as long as its sine bar. */
function doubtsTooLarge(
  sum: Sum,
  values: Readonly<Record<string, number>>,
  sds: Readonly<Record<string, number>>,
): Issue[] {
  const works = (key: string, by: number): boolean =>
    Object.values(sum.of({ ...values, [key]: values[key]! + by * sds[key]! })).every(Number.isFinite);
  return Object.entries(sum.inputs)
    .filter(([key]) => ![-0.5, 0, 0.5].every((by) => works(key, by)))
    .map(([key, input]) => ({
      path: sumKey(`${key}_sd`, input.unit),
      found: String(sds[key]),
      expected: 'a doubt within which the formula has a value',
    }));
}

function usualSd(input: SumInput, stuff: (typeof materials)[MaterialName] | undefined): number {
  if (stuff && input.material === 'modulus_GPa') return stuff.modulus_sd_GPa;
  if (stuff && input.material === 'expansion_um_mK') return stuff.expansion_sd_um_mK;
  return input.sd;
}

/**
 * A sum asked in typed words: `roll` → "10 mm ± 1 um", `angle` → "60° 30'", `material` → "granite". `roll_mm` is taken as well, as a
 * bare number of its unit, and `roll_sd` as one standard deviation of it.
 * @throws BadInput  with every word that could not be taken
 */
export function typedSum(
  name: string,
  typed: readonly (readonly [key: string, text: string])[],
  system: UnitSystem,
): SumAsk {
  const sum = knownSum(name);
  const found: FoundInputs = { values: new Map(), sds: new Map(), issues: [] };
  let material: MaterialName | undefined;
  const seen = new Set<string>();
  for (const [path, text] of typed) {
    const key = inputOf(sum, path);
    if (seen.has(path) || (key !== undefined && path !== `${key}_sd` && seen.has(key)))
      found.issues.push({ path, found: 'given more than once', expected: 'it once' });
    seen.add(path);
    if (path === 'material' && Object.values(sum.inputs).some((input) => input.material)) {
      if (Object.hasOwn(materials, text)) material = text as MaterialName;
      else found.issues.push({ path, found: quoted(text), expected: Object.keys(materials).join(', ') });
    } else if (key === undefined) {
      found.issues.push({
        path,
        found: 'a key that is not known here',
        expected: Object.keys(sum.inputs).join(', '),
      });
    } else {
      seen.add(key);
      takeTyped(found, sum.inputs[key]!, key, path, text, system);
    }
  }
  return filled(sum, found, material);
}

/** Which input a typed key means: `roll`, `roll_mm`, `roll_sd`. */
const inputOf = (sum: Sum, path: string): string | undefined =>
  Object.entries(sum.inputs).find(
    ([key, input]) => path === key || path === sumKey(key, input.unit) || path === `${key}_sd`,
  )?.[0];

function takeTyped(
  found: FoundInputs,
  input: SumInput,
  key: string,
  path: string,
  text: string,
  system: UnitSystem,
): void {
  const isBare = path === sumKey(key, input.unit);
  const number = Number(text);
  if (isBare) {
    if (text.trim() !== '' && Number.isFinite(number)) found.values.set(key, number);
    else found.issues.push({ path, found: quoted(text), expected: `a number of ${input.unit}` });
    return;
  }
  const read = readSumInput(text, input.unit, system);
  if (!read.ok) found.issues.push({ path, found: quoted(text), expected: `${input.label}. ${read.why}` });
  else if (path === key) {
    found.values.set(key, read.value);
    if (read.sd !== undefined) found.sds.set(key, read.sd);
  } else if (read.value < 0)
    found.issues.push({ path, found: quoted(text), expected: 'one standard deviation, 0 or above' });
  else found.sds.set(key, read.value);
}
