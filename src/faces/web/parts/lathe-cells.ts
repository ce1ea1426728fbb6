import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { TakenSurvey } from '../../../core/ledger/survey-record.ts';
import type { Spindle } from '../../../core/parts/spindle.ts';
import type { Turned } from '../../../core/parts/turned.ts';
import type { NoRest } from '../../../core/site/site.ts';
import { heightDoubt } from '../../../shop/parts/height-doubt.ts';
import { turnedBySpindle, turnedOnBed } from '../../../shop/parts/lathe-parts.ts';
import type { BedForm } from '../../../shop/survey/bed-form.ts';
import { bedReach, usualWork } from '../../../shop/survey/usual-work.ts';
import { foundIn, type PartsCell, type PartsRead } from './cells.ts';

/** Where nothing is typed, mm: middling parts on a mid-size lathe; shop's own. */
const usual = { rim_mm: 100, diameter_mm: 50, length_mm: 300 } as const;
/** Steeper than this, µrad, an axis is a taper attachment. */
const steepest_urad = 5000;

export const faceCells: readonly PartsCell[] = [
  {
    key: 'rim',
    label: 'Radius you face, rim to centre',
    unit: 'mm',
    signed: false,
    taken: usual.rim_mm,
    least: 0.5,
    most: 5000,
  },
];

const slope = { unit: 'urad', signed: true, least: -steepest_urad, most: steepest_urad, taken: 0 } as const;

export const spindleCells: readonly PartsCell[] = [
  {
    ...slope,
    key: 'spindle across',
    label: 'Spindle’s slope, plus: free end away from you',
    empty: 'taken as true to the bed when left empty',
  },
  {
    ...slope,
    key: 'spindle up',
    label: 'Spindle’s slope, plus: free end high',
    empty: 'taken as true to the bed when left empty',
  },
];

const diameterCell: PartsCell = {
  key: 'diameter',
  label: 'Diameter you turn',
  unit: 'mm',
  signed: false,
  taken: usual.diameter_mm,
  least: 0.5,
  most: 5000,
};

const plainCells: readonly PartsCell[] = [
  diameterCell,
  {
    key: 'length',
    label: 'Length you turn',
    unit: 'mm',
    signed: false,
    taken: usual.length_mm,
    least: 1,
    most: 20000,
  },
];

/** What a turned length is worked out on: the surveyed bed, or a straight one and why. */
export type LengthOn =
  | {
      readonly ok: true;
      readonly plan: JobPlan;
      readonly form: BedForm & { ok: true };
      readonly cells: readonly PartsCell[];
      readonly plainCells: readonly PartsCell[];
      readonly everyCell: readonly PartsCell[];
      readonly notes: readonly string[];
    }
  | {
      readonly ok: false;
      readonly why: string;
      readonly plainCells: readonly PartsCell[];
      readonly everyCell: readonly PartsCell[];
    };

const bedKeys = [
  ['printed', 'Printed at, from the headstock end', false],
  ['from', 'Saddle works from', false],
  ['to', 'Saddle works to', false],
  ['tool across', 'Tool from the saddle’s middle, plus: to the back', true],
  ['tool up', 'Tool above the ways', true],
] as const;

/** The cells of a bed, and what stands in this. */
export function lengthOnBed(
  plan: JobPlan,
  form: BedForm | undefined,
  surveys: ReadonlyMap<string, TakenSurvey>,
): LengthOn {
  const every = [
    ...plainCells,
    ...bedKeys.map(([key, label]): PartsCell => ({ key, label, unit: 'mm', signed: false })),
    { key: 'height', label: '', unit: 'um', signed: false } as PartsCell,
  ];
  const not = (why: string): LengthOn => ({ ok: false, why, plainCells, everyCell: every });
  if (!form) return not('No way is surveyed yet.');
  if (!form.ok) return not(`To survey yet: ${form.lacks.join('; ')}.`);
  const [first, last] = bedReach(plan.slide, form.bed);
  if (last - first < 1) return not('The surveyed bed is shorter than the saddle: survey further along.');
  const doubt_um = heightDoubt(surveys.values());
  const taken = {
    printed: (first + last) / 2,
    from: first,
    to: last,
    'tool across': usualWork.tool_across_mm,
    'tool up': usualWork.tool_up_mm,
  } as const;
  const cells: readonly PartsCell[] = [
    diameterCell,
    ...bedKeys.map(([key, label, signed]): PartsCell => {
      const isTool = key === 'tool across' || key === 'tool up';
      return {
        key,
        label,
        unit: 'mm',
        signed,
        taken: taken[key],
        least: isTool ? -5000 : first,
        most: isTool ? 5000 : last,
      };
    }),
    {
      key: 'height',
      label: 'One surveyed height is known within ±',
      unit: 'um',
      signed: false,
      least: 0,
      most: 1000,
      ...(doubt_um === undefined
        ? { empty: 'the surveys say nothing of it, so no ± is shown for the bed' }
        : { taken: 2 * doubt_um }),
    },
  ];
  return {
    ok: true,
    plan,
    form,
    cells,
    plainCells,
    everyCell: every,
    notes: [
      ...form.notes,
      `The Survey screen tells where printing serves best; the middle is taken where nothing is typed. A weight of ${usualWork.weight_kg} kg over the middle of the pads is assumed.`,
    ],
  };
}

/** The spindle as typed; undefined where a slope cannot be read. */
export function spindleFrom(reads: Readonly<Record<string, PartsRead>>): Spindle | undefined {
  const across_urad = foundIn(reads['spindle across']!);
  const up_urad = foundIn(reads['spindle up']!);
  return across_urad && up_urad ? { across_urad, up_urad } : undefined;
}

/** Shorter than this, mm, there is nothing to follow. */
const shortest_mm = 1;

/** The cells beside each other: a stretch that ends before it begins is wrong at its end. */
export function fittingReads(
  reads: Readonly<Record<string, PartsRead>>,
): Readonly<Record<string, PartsRead>> {
  const { from, to } = reads;
  const [first, last] = [from && foundIn(from), to && foundIn(to)];
  if (!first || !last || last.value - first.value >= shortest_mm) return reads;
  return {
    ...reads,
    to: {
      state: 'wrong',
      why: `${to!.state === 'read' ? to!.text : ''} Here is expected more than where the saddle’s work begins.`.trim(),
    },
  };
}

/** What is asked of a turned length: plain numbers, and how it is made of them. */
export interface TurnedAsked {
  readonly radius_mm: number;
  readonly numbers: readonly (number | undefined)[];
  readonly make: (spindle: Spindle | undefined) => Turned | NoRest | undefined;
}

export function turnedAsked(bed: LengthOn, reads: Readonly<Record<string, PartsRead>>): TurnedAsked {
  const value = (key: string): number | undefined => {
    const read = reads[key];
    return read && foundIn(read)?.value;
  };
  const radius_mm = (value('diameter') ?? 0) / 2;
  if (!bed.ok) {
    const to_mm = value('length');
    return {
      radius_mm,
      numbers: [radius_mm, to_mm],
      make: (spindle) =>
        spindle && radius_mm > 0 && to_mm !== undefined
          ? turnedBySpindle({ radius_mm, from_mm: 0, to_mm }, spindle)
          : undefined,
    };
  }
  const [printed_mm, from_mm, to_mm, across, up] = bedKeys.map(([key]) => value(key));
  const height = value('height');
  const isWrong = reads.height?.state === 'wrong';
  return {
    radius_mm,
    numbers: [radius_mm, printed_mm, from_mm, to_mm, across, up, height],
    make: (spindle) => {
      if (!spindle || !(radius_mm > 0) || isWrong) return undefined;
      if (printed_mm === undefined || from_mm === undefined || to_mm === undefined) return undefined;
      if (across === undefined || up === undefined || to_mm - from_mm < shortest_mm) return undefined;
      return turnedOnBed(
        bed.plan,
        bed.form.bed,
        {
          radius_mm,
          from_mm,
          to_mm,
          printed_mm,
          tool_across_mm: across,
          tool_up_mm: up,
          // ± is two sd.
          ...(height === undefined ? {} : { height_sd_um: height / 2 }),
        },
        spindle,
      );
    },
  };
}
