import { describe, expect, it } from 'vitest';
import { alongInput } from '../../contract/along.ts';
import { lineInput } from '../../contract/line.ts';
import { plateInput } from '../../contract/plate.ts';
import type { Kit } from '../../core/kit/kit.ts';
import type { TakenSurvey } from '../../core/ledger/survey-record.ts';
import { surveyKit } from './survey-kit.ts';

const survey = (more: object): TakenSurvey => ({
  what: 'line',
  of: 'flat',
  ways: ['flat'],
  from_mm: 0,
  sheet: { how: 'level', unit: 'mm/m', lengths: 'mm', fields: {}, cells: {} },
  entry: 'a',
  at: '2031-11-25T14:00:00Z',
  input: lineInput({ kind: 'angles', step_mm: 200, angles_urad: [1, 2, 3, 4, 5, 6, 7, 8], ...more }),
});
const kit: Kit = {
  instruments: [
    { kind: 'level', name: 'level', graduation_urad: 20, repeatability_urad: 4, base_mm: 200 },
    { kind: 'indicator', name: 'lever', graduation_um: 1, repeatability_um: 0.3 },
  ],
  references: [
    { kind: 'straightedge', name: 'short', length_mm: 1000, known: { by: 'certificate', doubt_um: 1 } },
  ],
};

describe('limits of kept surveys against the kit', () => {
  it('a stepped level: reading sd √(20²/12 + 4²) over 200 mm, √8/2 of it in the middle of eight steps', () => {
    const [told] = surveyKit([survey({ limit_um: 20 })], kit, 'metric');
    if (!told || told.can === 'not told') throw new Error('not told');
    expect(told).toMatchObject({ feature: 'flat, straight up and down', by: ['level'] });
    expect(told.proof.doubt).toBeCloseTo((2 * Math.hypot(20 / Math.sqrt(12), 4) * 0.2 * Math.sqrt(8)) / 2, 9);
    expect(told.proof.room).toBe(20);
  });
  it('a straightedge counts only where it is as long as the way, and a level not sideways', () => {
    const sideways = survey({ limit_um: 20, direction: 'horizontal' });
    expect(surveyKit([sideways], kit, 'metric')).toEqual([
      {
        can: 'not told',
        feature: 'flat, straight sideways',
        why: expect.stringMatching(
          /^To survey it you need an autocollimator, or .* straightedge of 1600\smm\.$/,
        ),
      },
    ]);
    const long = { ...kit, references: [{ ...kit.references[0]!, name: 'long', length_mm: 1600 }] };
    expect(surveyKit([sideways], long, 'metric')[0]).toMatchObject({ by: ['lever', 'long'] });
  });
  it('twist: one tilt less another, √2 of a reading; the zero drops out, so a level of any zero does', () => {
    const twist = alongInput({
      kind: 'twist',
      stations_mm: [0, 400, 800],
      tilts_urad: [0, 9, 15],
      limit_urad: 60,
    });
    const [told] = surveyKit([{ ...survey({}), of: 'the ways', input: twist } as TakenSurvey], kit, 'metric');
    if (!told || told.can === 'not told') throw new Error('not told');
    expect(told).toMatchObject({ feature: 'the ways, twist', by: ['level'] });
    expect(told.proof.doubt).toBeCloseTo(2 * Math.SQRT2 * Math.hypot(20 / Math.sqrt(12), 4), 9);
    expect(told.proof.room).toBe(60);
  });
  it('parallelism: an indicator carried along, √2 of a reading', () => {
    const input = alongInput({
      kind: 'parallel',
      stations_mm: [0, 400, 800],
      heights_um: [0, 3, 5],
      limit_um: 10,
    });
    const [told] = surveyKit([{ ...survey({}), input } as TakenSurvey], kit, 'metric');
    if (!told || told.can === 'not told') throw new Error('not told');
    expect(told.proof.doubt).toBeCloseTo(2 * Math.SQRT2 * Math.hypot(1 / Math.sqrt(12), 0.3), 9);
  });
  it('flatness: a plate that is large enough, an indicator over it or a print; else a level over the diagonal', () => {
    const points = [0, 300].flatMap((x_mm) => [0, 400].map((y_mm) => ({ x_mm, y_mm, z_um: 0 })));
    const face = {
      what: 'plate',
      of: 'table',
      sheet: survey({}).sheet,
      entry: 'b',
      at: '2031-11-25T14:00:00Z',
      input: plateInput({
        kind: 'points',
        points: [...points, { x_mm: 150, y_mm: 200, z_um: 1 }],
        limit_um: 12,
      }),
    } as TakenSurvey;
    const [stepped] = surveyKit([face], kit, 'metric');
    // The diagonal is 500 mm: two and a half steps of 200 mm, √2.5/2 of one step’s height in its middle.
    if (!stepped || stepped.can === 'not told') throw new Error('not told');
    expect(stepped.proof.doubt).toBeCloseTo(
      (2 * Math.hypot(20 / Math.sqrt(12), 4) * 0.2 * Math.sqrt(2.5)) / 2,
      9,
    );
    const plate = {
      kind: 'plate',
      name: 'plate',
      length_mm: 630,
      width_mm: 400,
      known: { by: 'certificate', doubt_um: 2 },
    } as const;
    const [over] = surveyKit([face], { instruments: [kit.instruments[1]!], references: [plate] }, 'metric');
    expect(over).toMatchObject({ can: 'yes', by: ['lever', 'plate'] });
    const [small] = surveyKit(
      [face],
      { instruments: [], references: [{ ...plate, length_mm: 350, width_mm: 250 }] },
      'metric',
    );
    expect(small).toMatchObject({
      can: 'not told',
      why: expect.stringMatching(/a surface plate of 400\smm by 300\smm\.$/),
    });
  });
  it('a survey without a limit asks nothing of the kit', () => {
    expect(surveyKit([survey({})], kit, 'metric')).toEqual([]);
  });
});
