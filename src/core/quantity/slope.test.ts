import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAngle } from './angle.ts';
import { readLength } from './length.ts';
import { readSlope, type SlopeUnit } from './slope.ts';

function urad(typed: string, column: SlopeUnit = 'urad'): number {
  const read = readSlope(typed, column);
  if (!read.ok) throw new Error(read.why);
  return read.urad;
}

describe('a slope as spoken at the bench', () => {
  it.each<[string, SlopeUnit, number]>([
    ['0.02 mm/m', 'urad', 20],
    ['−0.02mm/m', 'urad', -20],
    ['12 um/300 mm', 'urad', 40],
    ['12 µm in 300', 'urad', 40],
    ['0.02 mm per 1000 mm', 'urad', 20],
    ['half a thou per foot', 'urad', 500 / 12],
    ['.0005 in in 12 in', 'urad', 500 / 12],
    ['.0005 in/ft', 'urad', 500 / 12],
    ['5 tenths in 12', 'urad', 500 / 12],
    ['1 thou 2 tenths per foot', 'urad', 100],
    ['2 thou a foot', 'urad', 2000 / 12],
    ['-20 urad', 'mm/m', -20],
    ['0.03', 'mm/m', 30],
    ['6', 'um/300 mm', 20],
    ['7', 'thou/12 in', 7000 / 12],
    ['1/2', 'thou/ft', 500 / 12],
    ['-4 arcsec', 'urad', -19.392547],
    ['3', 'arcsec', 14.54441],
    ['0.01 deg', 'urad', 174.532925],
  ])('%s in a column of %s is %d µrad', (typed, column, expected) => {
    expect(urad(typed, column)).toBeCloseTo(expected, 5);
  });
  it('says back both ways', () => {
    expect(readSlope('0.02 mm/m', 'um/300 mm')).toMatchObject({
      echo: '+6 µm in 300 mm',
      echoOther: '+0.24 thou in 12 in',
    });
    expect(readSlope('2', 'thou/12 in')).toMatchObject({
      echo: '+2 thou in 12 in',
      echoOther: '+50 µm in 300 mm',
    });
  });
  it.each([
    ['0.02 mm', /over what length/],
    ['4"', /inches to one and seconds of arc/],
    ['0.02/300', /not “\/300”/],
    ['1/300', /fraction or a fall/],
    ['0.02 mm/m/m', /not “\/m\/m”/],
    ['12 um in 0', /not “in 0”/],
    ['0.5 in 12 in', /over what length/],
    ['1 in in 1 in', /steeper than 1 in 10/],
    ['0,02 mm/m', /comma/],
    ['3 divs', /not “divs”/],
    ['1e-12', /less than anything/],
    ['', /Nothing is written/],
  ])('%s is refused', (typed, reason) => {
    const read = readSlope(typed, 'mm/m');
    expect(read.ok ? read.echo : read.why).toMatch(reason);
  });
  it('anything typed is a finite slope or a sentence; its echo reads back', () => {
    const part = fc.constantFrom(
      ...'0123456789.-/" '.split(''),
      'mm',
      'm',
      'thou',
      'in',
      'ft',
      'per',
      'arcsec',
      '300',
    );
    const typeable = fc.oneof(
      fc.string({ maxLength: 40 }),
      fc.array(part, { maxLength: 9 }).map((p) => p.join('')),
    );
    const columns = fc.constantFrom<SlopeUnit>('urad', 'mm/m', 'um/300 mm', 'thou/12 in', 'arcsec');
    fc.assert(
      fc.property(typeable, columns, (typed, column) => {
        const read = readSlope(typed, column);
        if (!read.ok) {
          expect(read.why).toMatch(/[.?]$/);
          return;
        }
        expect(Number.isFinite(read.urad)).toBe(true);
        expect(Math.abs(urad(read.echo) - read.urad)).toBeLessThanOrEqual(6e-6 * Math.abs(read.urad));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('lengths and angles', () => {
  it.each<[string, 'mm' | 'in', number]>([
    ['350', 'mm', 350],
    ['13 3/8', 'in', 339.725],
    ['13-3/8"', 'mm', 339.725],
    ['1 ft 6 in', 'mm', 457.2],
    [`1' 6"`, 'mm', 457.2],
    ['0.4 m', 'in', 400],
    ['-12', 'mm', -12],
  ])('%s in a column of %s is %d mm', (typed, column, expected) => {
    expect(readLength(typed, column)).toMatchObject({ ok: true, mm: expected });
  });
  it('a size must be above 0, a place may be on either side', () => {
    expect(readLength('-12', 'mm', { sort: 'size' })).toMatchObject({ ok: false });
    expect(readLength('0', 'mm', { sort: 'size' })).toMatchObject({ ok: false });
    expect(readLength('1e9', 'mm')).toMatchObject({ ok: false, why: expect.stringContaining('100 m') });
  });
  it.each([
    ['90', 90],
    ['55.5°', 55.5],
    [`60° 30'`, 60.5],
    ['60 deg 30 min', 60.5],
    [`60° 30' 36"`, 60.51],
  ])('%s is %d°', (typed, deg) => expect(readAngle(typed)).toMatchObject({ ok: true, deg }));
  it.each(['0', '-5', '180', '190', 'abc', `30' 60°`])('the angle %s is refused', (typed) =>
    expect(readAngle(typed).ok).toBe(false),
  );
});
