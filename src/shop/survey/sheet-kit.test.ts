import { describe, expect, it } from 'vitest';
import type { Kit } from '../../core/kit/kit.ts';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { inPlaces } from './places.ts';
import { kitOffers, kitWords, withKit } from './sheet-kit.ts';

const kit: Kit = {
  instruments: [
    { kind: 'level', name: 'shop level', graduation_urad: 20, repeatability_urad: 3, base_mm: 200 },
    { kind: 'indicator', name: 'lever', graduation_um: 1, repeatability_um: 0.4 },
  ],
  references: [
    { kind: 'straightedge', name: 'long edge', length_mm: 1500, known: { by: 'limit', limit_um: 6 } },
  ],
};
const sheet = (how: SurveySheet['how'], unit: string, lengths: 'mm' | 'in' = 'mm'): SurveySheet => ({
  how,
  unit,
  lengths,
  fields: {},
  cells: {},
});

describe('a sheet filled from the kit', () => {
  it('offers only what the way of surveying is read with', () => {
    expect(kitOffers('level', 'instrument', kit).map(({ name }) => name)).toEqual(['shop level']);
    expect(kitOffers('straightedge', 'reference', kit).map(({ name }) => name)).toEqual(['long edge']);
    expect(kitOffers('level', 'reference', kit)).toEqual([]);
  });
  it('writes two sd of a reading and the foot’s length in the sheet’s own units', () => {
    // JCGM 100, 4.3.7: half a division to either side is 20/√12 µrad; with 3 of repeating 6.51, twice that 13.0 µrad or 2.68″.
    expect(withKit(sheet('level', 'mm/m'), 'instrument', 'shop level', kit)).toMatchObject({
      kit: { instrument: 'shop level' },
      fields: { repeat: '0.013', step: '200' },
    });
    expect(withKit(sheet('level', 'arcsec', 'in'), 'instrument', 'shop level', kit).fields).toEqual({
      repeat: '2.68',
      step: '7.87402',
    });
  });
  it('writes how true a straightedge is: within 6 µm and no more is known is ± 2 · 6/√3', () => {
    expect(withKit(sheet('straightedge', 'um'), 'reference', 'long edge', kit).fields).toEqual({
      edge: '6.93',
      edge_length: '1500',
    });
    const known = { ...kit.references[0]!, depth_mm: 63.5, material: 'steel' } as const;
    const owned = { ...kit, references: [known] };
    expect(withKit(sheet('straightedge', 'tenths', 'in'), 'reference', 'long edge', owned).fields).toEqual({
      edge: '0.273',
      edge_length: '59.0551',
      edge_depth: '2.5',
      edge_material: 'steel',
    });
  });
  it('says what came from where, and what was typed over it', () => {
    const picked = withKit(sheet('level', 'mm/m'), 'instrument', 'shop level', kit);
    expect(kitWords(picked, kit)).toEqual([
      'From “shop level” of the kit: the doubt of a reading and the step.',
    ]);
    const over = { ...picked, fields: { ...picked.fields, step: '250' } };
    expect(kitWords(over, kit)).toEqual([
      'From “shop level” of the kit: the doubt of a reading.',
      'Typed over what “shop level” of the kit says (200 mm): the step.',
    ]);
    expect(kitWords(picked, { instruments: [], references: [] })).toEqual([
      '“shop level” is no longer in the kit; what it said stands here.',
    ]);
    expect(kitWords(sheet('level', 'mm/m'), kit)).toEqual([]);
  });
  it('dropping the pick leaves what was written', () => {
    const picked = withKit(sheet('level', 'mm/m'), 'instrument', 'shop level', kit);
    const dropped = withKit(picked, 'instrument', undefined, kit);
    expect(dropped.kit).toBeUndefined();
    expect(dropped.fields).toEqual(picked.fields);
  });
});

it('words made for a lathe take another machine’s names for its ends and sides', () => {
  const places = {
    minus_end: 'lower end',
    plus_end: 'upper end',
    minus_side: 'right, facing the column',
    plus_side: 'left, facing the column',
    travel: 'x',
  } as const;
  expect(
    inPlaces('Step it from the headstock end: the end ahead, toward the tailstock, is high.', places),
  ).toBe('Step it from the lower end: the end ahead, toward the upper end, is high.');
  expect(inPlaces('Plus: the back is high; the way comes to you.', places)).toBe(
    'Plus: the left, facing the column is high; the way comes to the right, facing the column.',
  );
  const lathe = { ...places, minus_end: 'headstock end', plus_end: 'tailstock end' };
  expect(inPlaces('toward the tailstock', lathe)).toBe('toward the tailstock');
});
