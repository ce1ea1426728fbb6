import { describe, expect, it } from 'vitest';
import { lineInput } from '../../contract/line.ts';
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
  it('a survey without a limit asks nothing of the kit', () => {
    expect(surveyKit([survey({})], kit, 'metric')).toEqual([]);
  });
});
