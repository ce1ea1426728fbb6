import { materials } from '../../core/kit/material.ts';
import type { SurveyHow, SurveySheet } from '../../core/ledger/survey-record.ts';
import type { SlopeUnit } from '../../core/quantity/slope.ts';
import type { DeviationUnit, UnitSystem } from '../../core/quantity/unit.ts';
import type { Subject } from './subjects.ts';

/** A reading's unit: of a height, or of an angle. */
export type ReadingUnit = DeviationUnit | SlopeUnit;

/** A way of taking a survey, as a sheet asks for it. */
export interface How {
  readonly how: SurveyHow;
  readonly words: string;
  /** One line each: what to do with hands, and what plus is. */
  readonly does: string;
  readonly plus: string;
  readonly reads: 'angle' | 'height';
  readonly units: Readonly<Record<UnitSystem, readonly [ReadingUnit, ...ReadingUnit[]]>>;
  /** Names of its fields, in order; see `fieldWords`. */
  readonly fields: readonly string[];
}

const angles: How['units'] = {
  metric: ['mm/m', 'arcsec', 'urad', 'um/300 mm'],
  inch: ['thou/12 in', 'arcsec'],
};
const heights: How['units'] = { metric: ['um', 'mm'], inch: ['tenths', 'thou'] };
const along = ['step', 'length', 'from'];
/** What a straightedge's own sag and bow are worked out from; they bend an upright survey only. */
const edgeFields = [
  'edge_stands',
  'edge_support',
  'edge_length',
  'edge_depth',
  'edge_material',
  'edge_from',
  'edge_warmer',
] as const;
const sides = ['step_x', 'length_x', 'step_y', 'length_y'];

export const hows: Readonly<Record<SurveyHow, How>> = {
  level: {
    how: 'level',
    words: 'level, stepped',
    does: 'Step the level foot to foot from the headstock end, each foot where the other stood.',
    plus: 'Plus: the end ahead, toward the tailstock, is high.',
    reads: 'angle',
    units: angles,
    fields: [...along, 'repeat', 'limit', 'unworn'],
  },
  autocollimator: {
    how: 'autocollimator',
    words: 'autocollimator',
    does: 'Step the mirror foot to foot from the headstock end, each foot where the other stood.',
    plus: 'Plus: the end ahead, toward the tailstock, is high; sideways: toward the back.',
    reads: 'angle',
    units: { metric: ['arcsec', 'urad'], inch: ['arcsec', 'urad'] },
    fields: [...along, 'repeat', 'limit', 'unworn'],
  },
  straightedge: {
    how: 'straightedge',
    words: 'indicator over a straightedge',
    does: 'Carry the indicator along the way and the straightedge, stop by stop from the headstock end.',
    plus: 'Plus: the way stands proud; sideways: toward the back.',
    reads: 'height',
    units: heights,
    fields: [...along, 'repeat', 'edge', 'limit', 'unworn', ...edgeFields],
  },
  offsets: {
    how: 'offsets',
    words: 'offsets from a wire or laser',
    does: 'Read the offset from the wire or the beam, stop by stop from the headstock end.',
    plus: 'Plus: the way stands proud; sideways: toward the back.',
    reads: 'height',
    units: heights,
    fields: [...along, 'repeat', 'limit', 'unworn'],
  },
  'bridge level': {
    how: 'bridge level',
    words: 'level across, on a bridge',
    does: 'Lay the level across both ways on a bridge and move it along, stop by stop from the headstock end.',
    plus: 'Plus: the back is high.',
    reads: 'angle',
    units: angles,
    fields: [...along, 'bridge', 'repeat', 'limit'],
  },
  parallel: {
    how: 'parallel',
    words: 'indicator from one way to the other',
    does: 'Carry the indicator along the way that guides, its plunger on the other way, stop by stop from the headstock end.',
    plus: 'Plus: the plunger goes in, the touched way comes nearer.',
    reads: 'height',
    units: heights,
    fields: [...along, 'repeat', 'limit'],
  },
  heights: {
    how: 'heights',
    words: 'grid of heights',
    does: 'Read the height at each crossing of the grid, row by row, the row nearest you first, from the left.',
    plus: 'Plus: it stands proud.',
    reads: 'height',
    units: heights,
    fields: [...sides, 'repeat', 'limit', 'pass'],
  },
  'level grid': {
    how: 'level grid',
    words: 'level along a grid',
    does: 'Step the level along every row from the left, then along every column away from you.',
    plus: 'Plus: the end ahead is high.',
    reads: 'angle',
    units: angles,
    fields: [...sides, 'repeat', 'limit', 'pass'],
  },
  'eight lines': {
    how: 'eight lines',
    words: 'eight lines',
    does: 'Sides, middle lines and diagonals, each stepped foot to foot: from the left, or away from you.',
    plus: 'Plus: the end ahead is high.',
    reads: 'angle',
    units: angles,
    fields: ['length_x', 'steps_x', 'length_y', 'steps_y', 'steps_diagonal', 'repeat', 'limit', 'pass'],
  },
};

/** How each sort of subject can be surveyed, the usual way first. */
export const howsFor: Readonly<Record<Subject['kind'], readonly [SurveyHow, ...SurveyHow[]]>> = {
  vertical: ['level', 'autocollimator', 'straightedge', 'offsets'],
  horizontal: ['straightedge', 'autocollimator', 'offsets'],
  twist: ['bridge level'],
  parallel: ['parallel'],
  flatness: ['heights', 'level grid', 'eight lines'],
};

/** What a field asks for: its label, what it holds, and whether the cells wait for it. */
export interface FieldRule {
  readonly label: string;
  readonly holds: 'size' | 'place' | 'count' | 'reading' | 'deviation' | 'stretches' | 'choice' | 'warmth';
  readonly choices?: readonly { readonly value: string; readonly words: string }[];
  readonly needed?: true;
}

export const fieldWords: Readonly<Record<string, FieldRule>> = {
  step: { label: 'Step', holds: 'size', needed: true },
  length: { label: 'Length surveyed', holds: 'size', needed: true },
  from: { label: 'Begins, from the headstock end', holds: 'place' },
  bridge: { label: 'Between the ways, under the bridge', holds: 'size' },
  step_x: { label: 'Step along', holds: 'size', needed: true },
  length_x: { label: 'Length', holds: 'size', needed: true },
  step_y: { label: 'Step across', holds: 'size', needed: true },
  length_y: { label: 'Breadth', holds: 'size', needed: true },
  steps_x: { label: 'Steps along', holds: 'count', needed: true },
  steps_y: { label: 'Steps across', holds: 'count', needed: true },
  steps_diagonal: { label: 'Steps along a diagonal', holds: 'count', needed: true },
  repeat: { label: 'One reading repeats within ±', holds: 'reading' },
  edge: { label: 'The straightedge is true within ±', holds: 'deviation' },
  edge_stands: {
    label: 'The straightedge stands on',
    holds: 'choice',
    choices: [
      { value: '', words: 'not said: its sag is left in' },
      { value: 'least', words: 'its points of least sag' },
      { value: 'ends', words: 'its ends' },
      { value: 'at', words: 'supports at another place' },
    ],
  },
  edge_support: { label: 'From each end to its support', holds: 'size' },
  edge_length: { label: 'Length of the straightedge', holds: 'size' },
  edge_depth: { label: 'Its depth, as it stands', holds: 'size' },
  edge_material: {
    label: 'Made of',
    holds: 'choice',
    choices: [
      { value: '', words: 'not said' },
      ...Object.keys(materials).map((value) => ({ value, words: value })),
    ],
  },
  edge_from: { label: 'Its near end, from the headstock end', holds: 'place' },
  edge_warmer: { label: 'Its top is warmer by', holds: 'warmth' },
  limit: { label: 'Limit', holds: 'reading' },
  pass: { label: 'A pass takes off', holds: 'deviation' },
  unworn: { label: 'Stretches not run on', holds: 'stretches' },
};

const isEdgeField = (name: string): boolean => (edgeFields as readonly string[]).includes(name);
/** A sheet's fields without those of a straightedge's own sag. */
export const plainFields = (names: readonly string[]): readonly string[] =>
  names.filter((name) => !isEdgeField(name));
/** Those of its sag that the sheet asks for: a support's place where it has one of its own. */
export const askedOfEdge = (sheet: SurveySheet): readonly string[] =>
  edgeFields.filter((name) => name !== 'edge_support' || sheet.fields.edge_stands === 'at');

/** An empty sheet for a subject, in the units of the house. */
export function newSheet(kind: Subject['kind'], system: UnitSystem): SurveySheet {
  const [how] = howsFor[kind];
  return {
    how,
    unit: hows[how].units[system][0],
    lengths: system === 'metric' ? 'mm' : 'in',
    fields: {},
    cells: {},
  };
}
