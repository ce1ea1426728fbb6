import { describe, expect, it } from 'vitest';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { sheetLayout } from './sheet-layout.ts';
import { inUnit, poured, turned } from './sheet-paste.ts';
import { leftOut, readSheet } from './sheet-reading.ts';
import type { Subject } from './subjects.ts';

const way: Subject = { key: 'vertical of flat', kind: 'vertical', of: 'flat', ways: ['flat'] };
const plate: Subject = { key: 'flatness of plate', kind: 'flatness', of: 'plate', ways: [] };
const level: SurveySheet = {
  how: 'level',
  unit: 'mm/m',
  lengths: 'mm',
  fields: { step: '200', length: '1 m', from: '300', repeat: '.01', unworn: '300 to 500, 1100 to 1300' },
  cells: { there: ['.02', '-.01', '4 arcsec', '0', '-.03'] },
};
const offsets: SurveySheet = {
  ...level,
  how: 'offsets',
  unit: 'um',
  fields: { step: '250', length: '1000', from: '300' },
  cells: { there: ['0', '-3', leftOut, '-2', '0'] },
};
const pour = (sheet: SurveySheet, text: string, column = 'there', index = 0) =>
  poured(sheet, sheetLayout(sheet), { column, index }, text);

const anglesOf = (sheet: SurveySheet): readonly number[] => {
  const { input } = readSheet(sheet, way);
  if (input?.kind !== 'angles') throw new Error('no angles');
  return input.angles_urad;
};

describe('a sheet read', () => {
  it('steps of a level become the contract’s angles; ± is two sd; stretches count from the line’s own zero', () => {
    const { input, from_mm, isWhole, missing, notices } = readSheet(level, way);
    expect(from_mm).toBe(300);
    expect([isWhole, missing]).toEqual([true, undefined]);
    expect(input).toMatchObject({
      kind: 'angles',
      step_mm: 200,
      reading_sd_urad: 5,
      unworn_mm: [
        [0, 200],
        [800, 1000],
      ],
    });
    // 4″ = 4 · π / 648 000 rad.
    expect(anglesOf(level)[2]).toBeCloseTo((4e6 * Math.PI) / 648_000, 9);
    expect(notices.map(({ at }) => at)).toEqual([{ column: 'there', index: 2 }]);
    expect(notices[0]!.text).toContain('700 to 900');
  });

  it('a straightedge’s sag goes along where the sheet says what it stands on; in inches its warmth is in °F', () => {
    const edge: SurveySheet = {
      ...offsets,
      how: 'straightedge',
      fields: {
        ...offsets.fields,
        edge_stands: 'at',
        edge_support: '300',
        edge_length: '1400',
        edge_depth: '60',
        edge_material: 'cast iron',
        edge_warmer: '.5 ± .2',
      },
    };
    const laid = { length_mm: 1400, depth_mm: 60, material: 'cast iron', support_mm: 300 };
    expect(readSheet(edge, way).input).toMatchObject({
      straightedge: { ...laid, from_mm: 100, warmer_K: 0.5, warmer_sd_K: 0.1 },
    });
    const sideways = readSheet(edge, { ...way, kind: 'horizontal' });
    expect([sideways.missing, sideways.input]).toEqual([
      undefined,
      expect.not.objectContaining({ straightedge: expect.anything() }),
    ]);
    const inch: SurveySheet = {
      ...edge,
      lengths: 'in',
      fields: {
        step: '10',
        length: '40',
        edge_stands: 'least',
        edge_length: '48',
        edge_depth: '2',
        edge_material: 'steel',
        edge_warmer: '.9 ± .36',
      },
    };
    const { input } = readSheet(inch, way);
    if (input?.kind !== 'heights') throw new Error('no heights');
    expect(input.straightedge!.warmer_K).toBeCloseTo(0.5, 12);
    expect(input.straightedge!.warmer_sd_K).toBeCloseTo(0.1, 12);
    expect(input.straightedge!.from_mm).toBeCloseTo(-4 * 25.4, 9);
  });

  it.each([
    [
      { edge_stands: 'ends', edge_length: '1400' },
      /say “Its depth, as it stands” and “Made of”; or leave its sag in/,
    ],
    [
      { edge_stands: 'at', edge_length: '1400', edge_depth: '60', edge_material: 'steel' },
      /“From each end to its support”/,
    ],
    [{ edge_warmer: '1' }, /Say what the straightedge stands on/],
    [{ edge_warmer: 'warm' }, /Its top is warmer by: I cannot read “warm”/],
    [
      { edge_stands: 'ends', edge_length: '900', edge_depth: '60', edge_material: 'steel' },
      /lies from 350 mm to 1250 mm and does not reach over the stops from 300 mm to 1300 mm/,
    ],
    [
      {
        edge_stands: 'at',
        edge_support: '800',
        edge_length: '1400',
        edge_depth: '60',
        edge_material: 'steel',
      },
      /support 800 mm from each end lies beyond/,
    ],
  ])('a sag that cannot be taken out yet keeps the readings and says why: %o', (more, why) => {
    const { input, missing } = readSheet(
      { ...offsets, how: 'straightedge', fields: { ...offsets.fields, ...more } },
      way,
    );
    expect(missing?.why.replaceAll(/\s/g, ' ')).toMatch(why);
    expect(input).toMatchObject({ kind: 'heights', heights_um: [0, -3, -2, 0] });
  });

  it('heights stand at their place from the headstock end; a stop left out is left out, and paths count over it', () => {
    const { input, from_mm, placeOf } = readSheet(offsets, way);
    expect(from_mm).toBe(0);
    expect(input).toMatchObject({
      kind: 'heights',
      stations_mm: [300, 550, 1050, 1300],
      heights_um: [0, -3, -2, 0],
    });
    expect(placeOf('heights_um[2]')).toEqual({ column: 'there', index: 3 });
  });

  it('an empty cell ends what is answered and is named; an unreadable one before it', () => {
    const hole = { ...level, cells: { there: level.cells.there!.with(3, '') } };
    expect(readSheet(hole, way)).toMatchObject({
      isWhole: false,
      input: { angles_urad: [20, -10, expect.any(Number)] },
      missing: { at: { column: 'there', index: 3 } },
    });
    const wrong = { ...level, cells: { there: level.cells.there!.with(4, 'x') } };
    expect(readSheet(wrong, way).missing?.at).toEqual({ column: 'there', index: 4 });
  });

  it('a length that is no number of steps is said with both that are', () => {
    const odd = { ...level, fields: { ...level.fields, length: '900' } };
    expect(readSheet(odd, way).missing).toEqual({
      field: 'length',
      why: '900 mm is no whole number of steps of 200 mm: 4 steps make 800 mm, 5 make 1000 mm.',
    });
  });

  it('eight lines: steps by the sides, the diagonal by Pythagoras', () => {
    const lines: SurveySheet = {
      ...level,
      how: 'eight lines',
      unit: 'arcsec',
      fields: { length_x: '800', steps_x: '4', length_y: '600', steps_y: '4', steps_diagonal: '4' },
      cells: Object.fromEntries(
        ['front', 'back', 'left', 'right', 'middle_x', 'middle_y', 'rising', 'falling'].map((key) => [
          key,
          ['1', '0', '0', '-1'],
        ]),
      ),
    };
    const { input, placeOf } = readSheet(lines, plate);
    expect(input).toMatchObject({
      kind: 'eight lines',
      step_x_mm: 200,
      step_y_mm: 150,
      step_diagonal_mm: 250,
    });
    expect(placeOf('lines_urad.rising[2]')).toEqual({ column: 'rising', index: 2 });
    const odd = { ...lines, fields: { ...lines.fields, steps_x: '3' } };
    expect(readSheet(odd, plate).missing?.why).toContain('an even number');
  });
});

describe('a paste', () => {
  it('takes a column from a cell on, or nothing of it', () => {
    const taken = pour(level, '.1\n.2', 'there', 3);
    expect(taken.ok && taken.sheet.cells.there).toEqual(['.02', '-.01', '4 arcsec', '.1', '.2']);
    expect(pour(level, '.1\n.2\n.3', 'there', 3)).toEqual({
      ok: false,
      why: '3 readings were pasted; from here there are 2 cells. Nothing was taken.',
    });
  });

  it('a heading’s unit is turned into the sheet’s', () => {
    const taken = pour(level, 'level, µrad\n20\n-10\n0\n5\n1');
    if (!taken.ok) throw new Error(taken.why);
    expect(readSheet(taken.sheet, way).input).toMatchObject({ angles_urad: [20, -10, 0, 5, 1] });
  });

  it('a table with headings: a run back stands beside the run there; a missing station is named by its line', () => {
    const both = { ...level, cells: { ...level.cells, back: [] } };
    const table =
      'station [mm]\tangle [mm/m]\treturn angle [mm/m]\n0\t.01\t.02\n200\t.03\t.04\n400\t.05\t.06\n600\t.07\t.08\n800\t.09\t.1';
    const taken = pour(both, table);
    if (!taken.ok) throw new Error(taken.why);
    expect(taken.sheet.cells).toMatchObject({
      there: ['0.01', '0.03', '0.05', '0.07', '0.09'],
      back: ['0.1', '0.08', '0.06', '0.04', '0.02'],
    });
    const gap = pour(both, table.replace('400\t.05\t.06\n', ''));
    expect(gap).toMatchObject({ ok: false, why: expect.stringMatching(/line 4.*is a station missing\?/s) });
  });

  it('another unit keeps what is written; turned signs turn the readings behind a place', () => {
    const layout = sheetLayout(level);
    const before = anglesOf(level);
    for (const [k, angle] of anglesOf(inUnit(level, layout, 'urad')).entries())
      expect(angle).toBeCloseTo(before[k]!, 6);
    expect(anglesOf(turned(level, layout, { column: 'there', index: 3 })).slice(3)).toEqual([0, 30]);
  });
});
