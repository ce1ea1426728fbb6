import { readingSd, referenceSd_um } from '../../core/kit/doubt-of.ts';
import type { Instrument, Kit, Reference } from '../../core/kit/kit.ts';
import type { SurveyHow, SurveySheet } from '../../core/ledger/survey-record.ts';
import { size_um } from '../../core/quantity/unit.ts';
import { listed } from '../phrase.ts';
import { fieldUnit, readField } from './sheet-fields.ts';
import { hows } from './sheet-hows.ts';
import { figuresOf } from './sheet-paste.ts';

export type KitRole = 'instrument' | 'reference';

/** What a way of surveying takes from the kit, the usual kind first. */
interface Takes {
  readonly instrument: readonly Instrument['kind'][];
  readonly reference?: readonly Reference['kind'][];
  /** Fields that the foot's length fills. */
  readonly base?: readonly string[];
}

const levels = ['level', 'electronic level'] as const;

const takes: Readonly<Record<SurveyHow, Takes>> = {
  level: { instrument: levels, base: ['step'] },
  autocollimator: { instrument: ['autocollimator'], base: ['step'] },
  straightedge: { instrument: ['indicator'], reference: ['straightedge'] },
  offsets: { instrument: ['indicator'] },
  'bridge level': { instrument: levels },
  parallel: { instrument: ['indicator'] },
  heights: { instrument: ['indicator'] },
  'level grid': { instrument: levels, base: ['step_x', 'step_y'] },
  'eight lines': { instrument: [...levels, 'autocollimator'] },
};

/** What is asked of the kit for a way of surveying. */
export const kitRoles = (how: SurveyHow): readonly KitRole[] =>
  takes[how].reference ? ['instrument', 'reference'] : ['instrument'];

/** Kinds of thing that would do, in words: "level or electronic level". */
export const kindsFor = (how: SurveyHow, role: KitRole): string => (takes[how][role] ?? []).join(' or ');

/** The kit's things that would do. */
export function kitOffers(how: SurveyHow, role: KitRole, kit: Kit): readonly (Instrument | Reference)[] {
  const kinds: readonly string[] = takes[how][role] ?? [];
  return role === 'instrument'
    ? kit.instruments.filter((one) => kinds.includes(one.kind))
    : kit.references.filter((one) => kinds.includes(one.kind));
}

/** Three figures, in the unit it is written in. */
const short = (text: string): string =>
  text.replace(/^-?[\d.]+/, (figures) => `${Number(Number(figures).toPrecision(3))}`);

/** Fields that a thing of the kit fills, as they would be typed on this sheet. */
function filled(sheet: SurveySheet, thing: Instrument | Reference): Readonly<Record<string, string>> {
  if ('known' in thing) {
    const two = 2 * referenceSd_um(thing);
    const size = size_um[sheet.lengths === 'mm' ? 'um' : 'thou'];
    const long = (mm: number) => `${Number((sheet.lengths === 'mm' ? mm : mm / 25.4).toPrecision(6))}`;
    return {
      edge: short(`${two / size}`),
      edge_length: long(thing.length_mm),
      ...(thing.depth_mm === undefined ? {} : { edge_depth: long(thing.depth_mm) }),
      ...(thing.material === undefined ? {} : { edge_material: thing.material }),
    };
  }
  const isLength = thing.kind === 'indicator';
  const sd = isLength
    ? readingSd(thing.graduation_um, thing.repeatability_um)
    : readingSd(thing.graduation_urad, thing.repeatability_urad);
  const repeat = short(figuresOf(2 * sd, sheet));
  if (isLength) return { repeat };
  const base = Number((sheet.lengths === 'mm' ? thing.base_mm : thing.base_mm / 25.4).toPrecision(6));
  return { repeat, ...Object.fromEntries((takes[sheet.how].base ?? []).map((name) => [name, `${base}`])) };
}

/**
 * The sheet with a thing of the kit: doubt and step are written from it, and can be typed over.
 * @param name  left out or not in the kit: what was written stays and counts as typed by hand
 */
export function withKit(sheet: SurveySheet, role: KitRole, name: string | undefined, kit: Kit): SurveySheet {
  const { [role]: _, ...others } = sheet.kit ?? {};
  const thing = kitOffers(sheet.how, role, kit).find((one) => one.name === name);
  const picked = thing ? { ...others, [role]: thing.name } : others;
  const { kit: __, ...bare } = sheet;
  return {
    ...bare,
    ...(Object.keys(picked).length ? { kit: picked } : {}),
    fields: thing ? { ...sheet.fields, ...filled(sheet, thing) } : sheet.fields,
  };
}

const fieldNouns: Readonly<Record<string, string>> = {
  repeat: 'the doubt of a reading',
  edge: 'how true the straightedge is',
  edge_length: 'its length',
  edge_depth: 'its depth',
  edge_material: 'what it is made of',
  step: 'the step',
  step_x: 'the step along',
  step_y: 'the step across',
};

/** What of the sheet came from the kit and what was typed over it, in sentences; nothing when nothing was picked. */
export function kitWords(sheet: SurveySheet, kit: Kit | undefined): readonly string[] {
  return kitRoles(sheet.how).flatMap((role) => {
    const name = sheet.kit?.[role];
    if (name === undefined) return [];
    const thing = kit && kitOffers(sheet.how, role, kit).find((one) => one.name === name);
    if (!thing)
      return [kit ? `“${name}” is no longer in the kit; what it said stands here.` : `Taken with “${name}”.`];
    const wants = Object.entries(filled(sheet, thing)).filter(([field]) =>
      hows[sheet.how].fields.includes(field),
    );
    const same = wants.filter(([field, text]) => isSame(sheet, field, text));
    const other = wants.filter(([field, text]) => !isSame(sheet, field, text));
    const list = (fields: typeof wants) => listed(fields.map(([field]) => fieldNouns[field] ?? field));
    return [
      ...(same.length ? [`From “${name}” of the kit: ${list(same)}.`] : []),
      ...other.map(([field, text]) => {
        const size = `${isSize(field) ? '' : '± '}${/[a-z]$/.test(text) ? text : `${text} ${fieldUnit(sheet, field)}`}`;
        return `Typed over what “${name}” of the kit says (${size}): ${fieldNouns[field] ?? field}.`;
      }),
    ];
  });
}

/** A length or a choice, and no doubt. */
const isSize = (field: string): boolean => /^(step|edge_)/.test(field);

/** Whether a field holds what the text would give. */
function isSame(sheet: SurveySheet, field: string, text: string): boolean {
  const has = readField(sheet, field);
  const wants = readField({ ...sheet, fields: { ...sheet.fields, [field]: text } }, field);
  return (
    has.is === 'read' &&
    wants.is === 'read' &&
    Math.abs(has.value - wants.value) <= 1e-6 * Math.abs(wants.value)
  );
}
