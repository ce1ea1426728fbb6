import { describe, expect, it } from 'vitest';
import { inventedPlan } from '../../../tests/fixture/invented-job.ts';
import { type SurveyRecord, surveyKey, type TakenSurvey } from '../../core/ledger/survey-record.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { bedForm } from './bed-form.ts';
import { bedReach } from './usual-work.ts';
import { misplaced, whereToPrint } from './where-to-print.ts';

// A flank with the normal (0, −0.6, 0.8) and a flat: of no V, so each is a way of its own.
const stations_mm = [0, 250, 500, 750, 1000, 1250, 1500];
const taken = (of: string, heights_um: number[], direction: 'vertical' | 'horizontal' = 'vertical') => {
  const input: LineInput = { kind: 'heights', stations_mm, heights_um, direction };
  const sheet = { how: 'offsets', unit: 'um', lengths: 'mm', fields: {}, cells: {} } as const;
  const record: SurveyRecord = { what: 'line', of, ways: [of], from_mm: 0, sheet, input };
  return [surveyKey(record), { ...record, entry: of, at: '' }] as [string, TakenSurvey];
};
const straight = [0, 0, 0, 0, 0, 0, 0];
const worn = [0, -10, -30, -10, 0, 0, 0];

describe('the bed’s form', () => {
  it('lacks what is not surveyed, by name', () => {
    expect(bedForm(inventedPlan, new Map([taken('flat', worn)]))).toEqual({
      ok: false,
      lacks: ['vertical of front'],
    });
  });

  it('is the part of both movements that lies along each pad’s normal', () => {
    const form = bedForm(
      inventedPlan,
      new Map([
        taken('flat', worn),
        taken('front', worn),
        taken('front', [0, 5, 5, 5, 0, 0, 0], 'horizontal'),
      ]),
    );
    if (!form.ok) throw new Error(form.lacks.join());
    const [front, flat] = ['front', 'flat'].map(
      (pad) => form.bed.ways.find((way) => way.pad === pad)!.height_um,
    );
    expect(flat).toEqual(worn);
    for (const [i, z] of worn.entries())
      expect(front![i]).toBeCloseTo(0.8 * z - 0.6 * [0, 5, 5, 5, 0, 0, 0][i]!, 9);
  });

  it('says what it took as straight', () => {
    const form = bedForm(inventedPlan, new Map([taken('flat', worn), taken('front', worn)]));
    expect(form.ok && form.notes[0]).toContain('Sideways is not surveyed for front');
  });
});

describe('where to print', () => {
  const work = {
    from_mm: 0,
    to_mm: 2000,
    most_mm: 500,
    weight_kg: 100,
    tool_across_mm: -60,
    tool_up_mm: 180,
    diameter_um: 10,
    facing_um: 5,
    parallel_um: 5,
    square_urad: 25,
    lean_urad: 30,
    plan_urad: 30,
  };
  it('a straight bed costs nothing anywhere; only places where the whole slide stands on surveyed bed are offered', () => {
    const form = bedForm(inventedPlan, new Map([taken('flat', straight), taken('front', straight)]));
    if (!form.ok) throw new Error(form.lacks.join());
    const answer = whereToPrint(inventedPlan, form.bed, work);
    if (!answer.ok) throw new Error(answer.text);
    const [first, last] = bedReach(inventedPlan.slide, form.bed);
    for (const one of answer.candidates) {
      for (const cost of one.cost) expect(cost).toBeCloseTo(0, 6);
      expect(one.at_mm).toBeGreaterThanOrEqual(first);
      expect(one.at_mm).toBeLessThanOrEqual(last);
    }
  });

  it('a bed shorter than the slide is said so', () => {
    const form = bedForm(inventedPlan, new Map([taken('flat', straight), taken('front', straight)]));
    if (!form.ok) throw new Error(form.lacks.join());
    const short = { ...form.bed, stations_mm: form.bed.stations_mm.map((at) => at / 10) };
    expect(whereToPrint(inventedPlan, short, work)).toMatchObject({
      ok: false,
      text: expect.stringContaining('shorter than the slide'),
    });
  });

  it('work beyond the bed, or that ends before it begins, is named with the stretch that is expected', () => {
    const form = bedForm(inventedPlan, new Map([taken('flat', straight), taken('front', straight)]));
    if (!form.ok) throw new Error(form.lacks.join());
    const [first, last] = bedReach(inventedPlan.slide, form.bed);
    const fits = { ...work, from_mm: first, to_mm: last, most_mm: (first + last) / 2 };
    expect(misplaced(inventedPlan, form.bed, fits)).toEqual({});
    expect(misplaced(inventedPlan, form.bed, { ...fits, from_mm: first - 7 })).toEqual({
      from_mm: [first, last],
    });
    expect(misplaced(inventedPlan, form.bed, { ...fits, to_mm: first - 1 })).toEqual({
      to_mm: [first, last],
    });
    expect(misplaced(inventedPlan, form.bed, { ...fits, from_mm: first + 90, most_mm: first + 20 })).toEqual({
      most_mm: [first + 90, last],
    });
  });
});
