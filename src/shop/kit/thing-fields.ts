import { type GradedKind, standards, standardsFor } from '../../core/kit/grade.ts';
import { materials } from '../../core/kit/material.ts';
import type { KitThing } from '../../core/ledger/kit-ledger.ts';

export type ThingKind = KitThing['kind'];

/** Kinds of thing a kit is made of, as they are offered. */
export const thingKinds: readonly {
  readonly kind: ThingKind;
  readonly words: string;
  readonly does: string;
}[] = [
  { kind: 'indicator', words: 'Indicator', does: 'reads lengths: dial, lever, comparator' },
  { kind: 'level', words: 'Spirit level', does: 'reads tilts by a bubble' },
  { kind: 'electronic level', words: 'Electronic level', does: 'reads tilts by a number' },
  { kind: 'autocollimator', words: 'Autocollimator', does: 'reads the tilt of a mirror’s foot' },
  { kind: 'square', words: 'Square', does: 'what squareness is held against' },
  { kind: 'straightedge', words: 'Straightedge', does: 'what straightness is held against' },
  { kind: 'plate', words: 'Surface plate', does: 'what flatness is spotted on' },
  { kind: 'test bar', words: 'Test bar', does: 'shows where a spindle points' },
  { kind: 'parallels', words: 'Parallels', does: 'carry one face over to another' },
  { kind: 'gauge blocks', words: 'Gauge blocks', does: 'what heights are held against' },
];

export const isReferenceKind = (kind: ThingKind): boolean =>
  ['square', 'straightedge', 'plate', 'test bar', 'parallels', 'gauge blocks'].includes(kind);

/** One thing that is asked of an instrument or a reference. */
export interface ThingField {
  readonly key: string;
  readonly label: string;
  readonly hint: string;
  /** A size in this unit; `doubt` is typed as ± two sd. */
  readonly sort: 'name' | 'size' | 'doubt' | 'date' | 'choice';
  readonly unit?: 'mm' | 'um' | 'urad';
  /** What is offered; the first is taken when nothing was chosen. */
  readonly choices?: readonly { readonly value: string; readonly words: string }[];
  readonly needed: boolean;
  /** Whether 0 is a size too. */
  readonly zero?: boolean;
}

const name: ThingField = {
  key: 'name',
  label: 'Name',
  hint: 'as it is called in the shop, so that nobody takes the other one',
  sort: 'name',
  needed: true,
};
const checked: ThingField = {
  key: 'checked',
  label: 'Last checked on',
  hint: 'told, never reckoned with',
  sort: 'date',
  needed: false,
};

function instrumentFields(kind: ThingKind): ThingField[] {
  const unit = kind === 'indicator' ? 'um' : 'urad';
  const both: ThingField[] = [
    {
      key: 'graduation',
      label: 'One division is',
      hint:
        kind === 'indicator' ? 'what stands on its dial' : 'what stands on its vial or face, as 0.02 mm/m',
      sort: 'size',
      unit,
      needed: true,
    },
    {
      key: 'repeat',
      label: 'Repeats within ±',
      hint: 'set down on the same place again, 19 times in 20',
      sort: 'doubt',
      unit,
      needed: true,
      zero: true,
    },
  ];
  if (kind === 'indicator') return both;
  const none = { value: '', words: 'not known' };
  return [
    ...both,
    {
      key: 'base',
      label: kind === 'autocollimator' ? 'Length of the mirror’s foot' : 'Length of the base',
      hint: 'between its feet',
      sort: 'size',
      unit: 'mm',
      needed: true,
    },
    ...(kind === 'level'
      ? [
          {
            key: 'class',
            label: 'Class',
            hint: 'of JIS B 7510; A within half a division, B within seven tenths',
            sort: 'choice',
            choices: [none, { value: 'A', words: 'A' }, { value: 'B', words: 'B' }],
            needed: false,
          } as const,
        ]
      : []),
    {
      key: 'zero',
      label: 'Zero known within ±',
      hint: 'when it is not turned end for end; left empty: two divisions',
      sort: 'doubt',
      unit: 'urad',
      needed: false,
      zero: true,
    },
  ];
}

/** How its own error is known: by a grade where grades of its kind are published. */
function knownFields(kind: ThingKind, typed: Readonly<Record<string, string>>): ThingField[] {
  const graded = standardsFor(kind as GradedKind);
  const ways = [
    ...(graded.length > 0 ? [{ value: 'grade', words: 'by its grade' }] : []),
    { value: 'certificate', words: 'by a certificate' },
    { value: 'limit', words: 'by somebody’s word' },
  ];
  const by = chosen(ways, typed.by);
  const how: ThingField = {
    key: 'by',
    label: 'Its own error is known',
    hint: 'what is known of it, not what is hoped',
    sort: 'choice',
    choices: ways,
    needed: true,
  };
  if (by === 'certificate')
    return [
      how,
      {
        key: 'doubt',
        label: 'What the certificate leaves, ±',
        hint: 'its doubt, 19 times in 20, once the measured error is taken out',
        sort: 'doubt',
        unit: 'um',
        needed: true,
      },
    ];
  if (by === 'limit')
    return [
      how,
      {
        key: 'limit',
        label: 'Out by no more than',
        hint: 'over its whole length',
        sort: 'size',
        unit: 'um',
        needed: true,
      },
    ];
  const standard = chosen(
    graded.map((value) => ({ value })),
    typed.standard,
  );
  return [
    how,
    {
      key: 'standard',
      label: 'Grade by',
      hint: 'which table the grade is from',
      sort: 'choice',
      choices: graded.map((value) => ({ value, words: value })),
      needed: true,
    },
    {
      key: 'grade',
      label: 'Grade',
      hint:
        standards[standard]!.came === 'from memory'
          ? 'its numbers here are from memory: hold them against the standard'
          : standards[standard]!.source,
      sort: 'choice',
      choices: standards[standard]!.grades.map((value) => ({ value, words: value })),
      needed: true,
    },
  ];
}

/** What was chosen, or the first there is. */
const chosen = (choices: readonly { readonly value: string }[], text: string | undefined): string =>
  choices.some((one) => one.value === text) ? text! : choices[0]!.value;

function referenceFields(kind: ThingKind, typed: Readonly<Record<string, string>>): ThingField[] {
  const size = (key: string, label: string, hint: string, needed: boolean, zero = false): ThingField => ({
    key,
    label,
    hint,
    sort: 'size',
    unit: 'mm',
    needed,
    zero,
  });
  const long =
    kind === 'square' ? 'Length of its blade' : kind === 'gauge blocks' ? 'Stacks up to' : 'Length';
  const bends = kind === 'straightedge' || kind === 'test bar';
  return [
    size(
      'length',
      long,
      kind === 'plate'
        ? 'its longer side'
        : kind === 'gauge blocks'
          ? 'the highest stack that the set makes'
          : 'what can be measured along',
      true,
    ),
    ...(kind === 'plate' ? [size('width', 'Width', 'its shorter side', true)] : []),
    ...knownFields(kind, typed),
    {
      key: 'reseat',
      label: 'Set down again within ±',
      hint: 'over its length; left empty: 2 µm, common practice',
      sort: 'doubt',
      unit: 'um',
      needed: false,
      zero: true,
    },
    ...(bends
      ? [
          size(
            'depth',
            kind === 'test bar' ? 'Diameter' : 'Depth',
            'with this and what it is made of, sag is worked out',
            false,
          ),
          ...(kind === 'test bar' ? [size('bore', 'Bore', 'left empty: none', false, true)] : []),
          {
            key: 'material',
            label: 'Made of',
            hint: 'for sag and warmth',
            sort: 'choice',
            choices: [
              { value: '', words: 'not said' },
              ...Object.keys(materials).map((value) => ({ value, words: value })),
            ],
            needed: false,
          } as const,
        ]
      : []),
  ];
}

/** What is asked of a thing of this kind; which fields there are follows what was chosen so far. */
export const fieldsOf = (kind: ThingKind, typed: Readonly<Record<string, string>>): readonly ThingField[] => [
  name,
  ...(isReferenceKind(kind) ? referenceFields(kind, typed) : instrumentFields(kind)),
  checked,
];

/** What stands in a field: what was typed, or of choices the first. */
export const textOf = (field: ThingField, typed: Readonly<Record<string, string>>): string =>
  field.choices ? chosen(field.choices, typed[field.key]) : (typed[field.key] ?? '');
