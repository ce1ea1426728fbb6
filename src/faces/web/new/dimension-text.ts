import type { Dimension, Template, TemplateAnswers } from '../../../core/ledger/template.ts';
import { surfaceKey } from '../../../core/ledger/template.ts';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readLength } from '../../../core/quantity/length.ts';
import { plain } from '../../../core/quantity/show.ts';
import { clean, size_um, type UnitSystem } from '../../../core/quantity/unit.ts';

/** A dimension as typed: understood, left empty where it may stay unknown, or why not. */
export type DimensionRead =
  | { readonly ok: true; readonly value: number | undefined; readonly echo?: string }
  | { readonly ok: false; readonly why: string };

/** A dimension of a slide, or of a whole machine, which may be weighed too. */
export type Asked = Omit<Dimension, 'unit'> & { readonly unit: Dimension['unit'] | 'kg' };

/** The unit a dimension is typed in. */
export const dimensionUnit = (dimension: Asked, system: UnitSystem): string => {
  if (dimension.unit === 'deg') return '°';
  if (dimension.unit === 'kg') return 'kg';
  if (dimension.unit === 'um') return system === 'metric' ? 'µm' : 'thou';
  return system === 'metric' ? 'mm' : 'in';
};

const shown = (dimension: Asked, value: number, system: UnitSystem): string => {
  if (dimension.unit === 'deg' || dimension.unit === 'kg' || system === 'metric') return plain(value);
  const size = dimension.unit === 'um' ? size_um.thou : size_um.in / size_um.mm;
  return plain(clean(value / size), 5);
};

/** What stands in a field until the person says otherwise. */
export const dimensionStart = (dimension: Asked, system: UnitSystem): string =>
  dimension.value === undefined ? '' : shown(dimension, dimension.value, system);

/** Reads one dimension as typed; a bare number is in the unit of the field. */
export function readDimension(typed: string, dimension: Asked, system: UnitSystem): DimensionRead {
  if (typed.trim() === '')
    return dimension.value === undefined
      ? { ok: true, value: undefined }
      : { ok: false, why: `This one is needed. ${dimension.where}` };
  const read = readValue(typed, dimension, system);
  if (!read.ok) return read;
  const { low, high } = dimension;
  if (read.value < low || read.value > high) {
    const unit = dimensionUnit(dimension, system);
    const from = `${shown(dimension, low, system)} to ${shown(dimension, high, system)} ${unit}`;
    return { ok: false, why: `${read.echo} does not fit this machine; expected ${from}.` };
  }
  return read;
}

function readValue(typed: string, dimension: Asked, system: UnitSystem) {
  if (dimension.unit === 'kg') {
    const value = Number(typed.replace(/kg/i, '').trim());
    return Number.isFinite(value)
      ? ({ ok: true, value, echo: `${plain(value)} kg` } as const)
      : ({ ok: false, why: `I cannot read “${typed.trim()}” as a weight. Write 85.` } as const);
  }
  if (dimension.unit === 'deg') {
    const value = Number(
      typed
        .replace(/°|deg(rees)?/i, '')
        .replace('−', '-')
        .trim(),
    );
    return Number.isFinite(value)
      ? ({ ok: true, value, echo: `${plain(value)}°` } as const)
      : ({ ok: false, why: `I cannot read “${typed.trim()}” as an angle. Write 45.` } as const);
  }
  if (dimension.unit === 'um') {
    const read = readDeviation(typed, system === 'metric' ? 'um' : 'thou');
    return read.ok ? ({ ok: true, value: read.um, echo: `${read.echo}, ${read.echoOther}` } as const) : read;
  }
  const read = readLength(typed, system === 'metric' ? 'mm' : 'in');
  return read.ok ? ({ ok: true, value: read.mm, echo: `${read.echo}, ${read.echoOther}` } as const) : read;
}

/** A new job as it is being written. Texts are kept with the unit system they were typed in. */
export interface NewJobDraft {
  readonly template?: string;
  readonly title: string;
  readonly surface?: string;
  readonly system: UnitSystem;
  readonly typed: Readonly<Record<string, string>>;
}

/** All dimensions read: the answers for the template, or which fields stand in the way. */
export function readAll(template: Template, draft: NewJobDraft) {
  const reads = Object.fromEntries(
    template.dimensions.map((dimension) => [
      dimension.key,
      readDimension(
        draft.typed[dimension.key] ?? dimensionStart(dimension, draft.system),
        dimension,
        draft.system,
      ),
    ]),
  );
  const answers: Record<string, number | string> = { [surfaceKey]: draft.surface ?? template.surface.value };
  for (const [key, read] of Object.entries(reads))
    if (read.ok && read.value !== undefined) answers[key] = read.value;
  const wrong = Object.entries(reads).flatMap(([key, read]) => (read.ok ? [] : [key]));
  return { reads, answers: answers as TemplateAnswers, wrong };
}

/** The draft in the other unit system: what was typed keeps its meaning, to five figures. */
export function inSystem(draft: NewJobDraft, template: Template, system: UnitSystem): NewJobDraft {
  if (system === draft.system) return draft;
  const typed = Object.fromEntries(
    Object.entries(draft.typed).map(([key, text]) => {
      const dimension = template.dimensions.find((one) => one.key === key);
      const read = dimension && readDimension(text, dimension, draft.system);
      return [
        key,
        dimension && read?.ok && read.value !== undefined ? shown(dimension, read.value, system) : text,
      ];
    }),
  );
  return { ...draft, typed, system };
}
