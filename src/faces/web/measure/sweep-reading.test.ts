import { describe, expect, it } from 'vitest';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { poured, type SweepDraft, withUnit } from './sweep-reading.ts';

const draft = (typed: readonly string[], unit: SweepDraft['unit'] = 'thou'): SweepDraft => ({ unit, typed });
const meaning = (one: SweepDraft) =>
  one.typed.map((text) => {
    const read = readDeviation(text, one.unit);
    return read.ok ? read.um : undefined;
  });

describe('a card of readings', () => {
  it('another unit for bare numbers changes no reading that is written already', () => {
    const before = draft(['half thou', '-1.2', '7 thuo', '', '12um']);
    const after = withUnit(before, 'tenths');
    expect(meaning(after)).toEqual(meaning(before));
    expect(after.typed[2]).toBe('7 thuo');
    expect(after.typed[3]).toBe('');
  });
  it('a pasted column fills the cells from where it lands, and no others', () => {
    const result = poured(draft(['0', '', '', '', '9']), 1, '-1.5\n-2.5\r\n-3');
    expect(result).toMatchObject({ ok: true, next: 4 });
    if (result.ok) expect(result.draft.typed).toEqual(['0', '-1.5', '-2.5', '-3', '9']);
  });
  it('a heading names the unit, and each reading keeps it', () => {
    const result = poured(draft(['', '', '']), 0, 'Reading, µm\n-14\n3\n2.5');
    expect(result.ok && meaning(result.draft)).toEqual([-14, 3, 2.5]);
  });
  it('takes nothing of a column that is too long, has a gap, or cannot be read', () => {
    for (const text of ['1\n2\n3\n4', '1\n\n3', '1\n7 thuo']) {
      const result = poured(draft(['', '8', '']), 0, text);
      expect(result.ok).toBe(false);
      if (!result.ok) expect(result.why.length).toBeGreaterThan(10);
    }
  });
});
