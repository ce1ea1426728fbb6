import { expect, it } from 'vitest';
import { readSlopeColumn, slopeWrittenFor } from './slope-column.ts';

const urads = (text: string, unit: Parameters<typeof readSlopeColumn>[1]) => {
  const read = readSlopeColumn(text, unit);
  return read.ok ? read.readings.map((one) => one.urad) : read.why;
};

it('a column in its own unit, in its heading’s, and cell by cell', () => {
  expect(urads('.02\n-.01\n0', 'mm/m')).toEqual([20, -10, 0]);
  expect(urads('angle [µrad]\n20\n-10', 'mm/m')).toEqual([20, -10]);
  expect(urads('20\n.02 mm/m', 'urad')).toEqual([20, 20]);
  // 1″ = π / 648 000 rad.
  expect((urads('arcsec\n1', 'mm/m') as number[])[0]).toBeCloseTo((Math.PI / 648_000) * 1e6, 9);
});

it('all or none: the line of a hole or of what cannot be read is named', () => {
  expect(urads('.02\n\n.01', 'mm/m')).toContain('Line 2 is empty');
  expect(urads('.02\nabc', 'mm/m')).toContain('Line 2');
  expect(urads('level, mm/m', 'mm/m')).toContain('no readings follow');
  expect(urads('', 'mm/m')).toContain('Nothing was pasted');
});

it('is written in another unit with the same value', () => {
  const read = readSlopeColumn('arcsec\n10', 'mm/m');
  if (!read.ok) throw new Error(read.why);
  const again = readSlopeColumn(slopeWrittenFor(read.readings[0]!, 'mm/m'), 'mm/m');
  expect(again.ok && again.readings[0]!.urad).toBeCloseTo(read.readings[0]!.urad, 6);
});
