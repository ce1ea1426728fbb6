import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPastedColumn } from './column.ts';
import type { DeviationUnit } from './unit.ts';

function values(text: string, column: DeviationUnit = 'um'): number[] {
  const read = readPastedColumn(text, column);
  if (!read.ok) throw new Error(read.why);
  return read.readings.map((reading) => reading.um);
}
const refusal = (text: string): [number, string] => {
  const read = readPastedColumn(text, 'um');
  return read.ok ? [0, 'was read'] : [read.line, read.why];
};

describe('a pasted column', () => {
  it('one a line, or one row parted by tabs', () => {
    expect(values('0\n-1.5\r\n−2.5\n\n')).toEqual([0, -1.5, -2.5]);
    expect(values('0\t-1.5\t-2.5')).toEqual([0, -1.5, -2.5]);
  });
  it('takes the unit of its heading', () => {
    expect(values('Reading, thou\n2\n.5', 'um')).toEqual([50.8, 12.7]);
    expect(values('R1 [µm]\n2\n3', 'thou')).toEqual([2, 3]);
    expect(values('mm\t0.002\t0.003', 'thou')).toEqual([2, 3]);
    expect(values('cross sweep\n2\n3', 'um')).toEqual([2, 3]);
  });
  it('a unit behind a value goes before the column’s', () => {
    expect(values('2\n5 tenths\nhalf thou', 'um')).toEqual([2, 12.7, 12.7]);
  });
  it('a small decimal among others stays in its column’s unit', () => {
    expect(values('1.2345\n0.0312\n0.0004', 'thou').map((v) => v / 25.4)).toEqual([
      expect.closeTo(1.2345, 9),
      expect.closeTo(0.0312, 9),
      expect.closeTo(0.0004, 9),
    ]);
  });
  it.each<[string, number, RegExp]>([
    ['0\n7 thuo\n8', 2, /^Line 2: I can read 7, but not “thuo”/],
    ['0\n\n8', 2, /^Line 2 is empty: a reading is missing/],
    ['0\n1\t2', 2, /holds 2 values/],
    ['0\t\t2', 1, /value 2 is empty/],
    ['0\t1,5', 1, /^Line 1, value 2: A comma/],
    ['Readings', 1, /no readings follow/],
    ['  \n', 1, /Nothing was pasted/],
    ['O\n1', 1, /^Line 1: I cannot read “O”/],
  ])('%j is refused by its line', (text, line, reason) => {
    const [at, why] = refusal(text);
    expect(at).toBe(line);
    expect(why).toMatch(reason);
  });
  it('takes every reading or none, in order', () => {
    const cell = fc.oneof(fc.integer({ min: -90, max: 90 }).map(String), fc.string({ maxLength: 6 }));
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 12 }), (cells) => {
        fc.pre(cells.every((text) => !/[\r\n\t]/.test(text) && text.trim() !== ''));
        const read = readPastedColumn(cells.join('\n'), 'um');
        if (!read.ok) {
          expect(read.line).toBeLessThanOrEqual(cells.length);
          return;
        }
        expect(read.readings.map((r) => r.typed)).toEqual(
          cells.slice(read.heading === undefined ? 0 : 1).map((text) => text.trim()),
        );
      }),
    );
  });
});
