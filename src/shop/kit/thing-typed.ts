import type { Instrument, Known, Reference } from '../../core/kit/kit.ts';
import type { MaterialName } from '../../core/kit/material.ts';
import { isReference, type KitThing } from '../../core/ledger/kit-ledger.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { exampleText, saySum } from '../../core/sums/said.ts';
import { readSumInput } from '../../core/sums/typed.ts';
import { fieldsOf, isReferenceKind, type ThingField, type ThingKind, textOf } from './thing-fields.ts';

/** One field as it was understood. */
export type FieldRead =
  | { readonly state: 'empty' }
  | { readonly state: 'read'; readonly text: string; readonly value: number }
  | { readonly state: 'word'; readonly word: string }
  | { readonly state: 'wrong'; readonly why: string };

/** A thing as it was typed: every field read, and the thing when all of them can be taken. */
export interface ThingRead {
  readonly fields: Readonly<Record<string, FieldRead>>;
  readonly thing?: KitThing;
}

type Typed = Readonly<Record<string, string>>;
type Words = Readonly<Record<string, string | undefined>>;
type Sizes = Readonly<Record<string, number | undefined>>;

/**
 * Reads what was typed of a thing. A bare number takes the unit of its field, as in a sum; a doubt is typed as ± two sd.
 * @param used  names that other things of the kit have
 */
export function readThing(
  kind: ThingKind,
  typed: Typed,
  system: UnitSystem,
  used: readonly string[],
): ThingRead {
  const asked = fieldsOf(kind, typed);
  const fields: Record<string, FieldRead> = Object.fromEntries(
    asked.map((field) => [field.key, readField(field, textOf(field, typed), system, used)]),
  );
  const bore = fields.bore;
  const depth = fields.depth;
  if (bore?.state === 'read' && !(depth?.state === 'read' && bore.value < depth.value))
    fields.bore = { state: 'wrong', why: 'A bore is smaller than the diameter. Write the diameter too.' };
  const all = Object.values(fields);
  const lacks = asked.some((field) => field.needed && fields[field.key]!.state === 'empty');
  if (lacks || all.some((one) => one.state === 'wrong')) return { fields };
  const words = Object.fromEntries(
    Object.entries(fields).flatMap(([key, one]) => (one.state === 'word' ? [[key, one.word]] : [])),
  );
  const sizes = Object.fromEntries(
    Object.entries(fields).flatMap(([key, one]) => (one.state === 'read' ? [[key, one.value]] : [])),
  );
  return {
    fields,
    thing: isReferenceKind(kind) ? referenceOf(kind, words, sizes) : instrumentOf(kind, words, sizes),
  };
}

function readField(field: ThingField, text: string, system: UnitSystem, used: readonly string[]): FieldRead {
  const plain = text.trim();
  if (plain === '') return { state: 'empty' };
  if (field.sort === 'name') {
    if (plain.length > 80) return { state: 'wrong', why: 'A name has at most 80 letters.' };
    if (used.includes(plain))
      return { state: 'wrong', why: `“${plain}” is in the kit already. Give this one a name of its own.` };
    return { state: 'word', word: plain };
  }
  if (field.sort === 'date')
    return isDay(plain)
      ? { state: 'word', word: plain }
      : { state: 'wrong', why: `I cannot read “${plain.slice(0, 24)}” as a day. Write 2031-11-25.` };
  if (field.unit === undefined) return { state: 'word', word: plain };
  const read = readSumInput(plain, field.unit, system);
  if (!read.ok) return { state: 'wrong', why: read.why };
  if (read.sd !== undefined)
    return { state: 'wrong', why: 'One number is wanted here, without a doubt behind it.' };
  const said = saySum(read.value, field.unit, system);
  if (read.value < 0 || (read.value === 0 && !field.zero))
    return {
      state: 'wrong',
      why: `Read as ${said}; expected ${field.zero ? 'nothing below 0' : 'more than 0'}.`,
    };
  return { state: 'read', text: said, value: read.value };
}

/** A day of the calendar, ISO 8601. */
function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1]!;
}

/** Two sd as typed, one as kept. */
const half = (two_sd: number | undefined): number | undefined =>
  two_sd === undefined ? undefined : two_sd / 2;

/** The same without what is not known. */
const known = <T extends object>(given: T): T =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as T;

function instrumentOf(kind: ThingKind, words: Words, sizes: Sizes): Instrument {
  const owned = { name: words.name!, checked: words.checked };
  if (kind === 'indicator')
    return known({
      kind,
      ...owned,
      graduation_um: sizes.graduation!,
      repeatability_um: half(sizes.repeat)!,
    }) as Instrument;
  return known({
    kind,
    ...owned,
    graduation_urad: sizes.graduation!,
    repeatability_urad: half(sizes.repeat)!,
    base_mm: sizes.base!,
    class: words.class,
    zero_urad: half(sizes.zero),
  }) as Instrument;
}

function referenceOf(kind: ThingKind, words: Words, sizes: Sizes): Reference {
  const by: Known =
    words.by === 'certificate'
      ? { by: 'certificate', doubt_um: sizes.doubt! }
      : words.by === 'limit'
        ? { by: 'limit', limit_um: sizes.limit! }
        : { by: 'grade', standard: words.standard!, grade: words.grade! };
  return known({
    kind,
    name: words.name!,
    checked: words.checked,
    length_mm: sizes.length!,
    width_mm: sizes.width,
    known: by,
    reseat_um: half(sizes.reseat),
    depth_mm: sizes.depth,
    bore_mm: sizes.bore,
    material: words.material as MaterialName | undefined,
  }) as Reference;
}

/** A thing as it would be typed: reading it back gives the same thing. */
export function thingTexts(thing: KitThing, system: UnitSystem): Record<string, string> {
  const size = (value: number | undefined, unit: 'mm' | 'um' | 'urad', times = 1): string => {
    if (value === undefined) return '';
    const typed = exampleText(times * value, unit, system);
    const back = readSumInput(typed, unit, system);
    // Inches are rounded where they are shown; what is kept must not move because it was looked at.
    return back.ok && back.value === times * value ? typed : exampleText(times * value, unit, 'metric');
  };
  const owned = { name: thing.name, checked: thing.checked ?? '' };
  if (isReference(thing)) {
    const by = thing.known;
    return {
      ...owned,
      length: size(thing.length_mm, 'mm'),
      width: size(thing.width_mm, 'mm'),
      by: by.by,
      ...(by.by === 'grade' ? { standard: by.standard, grade: by.grade } : {}),
      ...(by.by === 'certificate' ? { doubt: size(by.doubt_um, 'um') } : {}),
      ...(by.by === 'limit' ? { limit: size(by.limit_um, 'um') } : {}),
      reseat: size(thing.reseat_um, 'um', 2),
      depth: size(thing.depth_mm, 'mm'),
      bore: size(thing.bore_mm, 'mm'),
      material: thing.material ?? '',
    };
  }
  if (thing.kind === 'indicator')
    return {
      ...owned,
      graduation: size(thing.graduation_um, 'um'),
      repeat: size(thing.repeatability_um, 'um', 2),
    };
  return {
    ...owned,
    graduation: size(thing.graduation_urad, 'urad'),
    repeat: size(thing.repeatability_urad, 'urad', 2),
    base: size(thing.base_mm, 'mm'),
    class: thing.class ?? '',
    zero: size(thing.zero_urad, 'urad', 2),
  };
}
