import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDeviation } from './deviation.ts';
import { sayDeviation } from './say.ts';
import { type DeviationUnit, size_um } from './unit.ts';

const units: DeviationUnit[] = ['um', 'mm', 'thou', 'tenths', 'in'];
const anyUnit = fc.constantFrom(...units);

/** Micrometres of a reading that must be understood. */
function um(typed: string, column: DeviationUnit = 'um'): number {
  const read = readDeviation(typed, column);
  if (!read.ok) throw new Error(read.why);
  return read.um;
}
const why = (typed: string, column: DeviationUnit = 'thou'): string => {
  const read = readDeviation(typed, column);
  return read.ok ? `was read as ${read.echo}` : read.why;
};

describe('a reading as spoken at the bench', () => {
  it.each<[string, DeviationUnit, number]>([
    ['+7', 'um', 7],
    ['+7', 'thou', 177.8],
    ['−7', 'tenths', -17.78],
    ['- 7', 'um', -7],
    ['minus 7', 'um', -7],
    ['-.0005', 'in', -12.7],
    ['-.0005', 'thou', -12.7],
    ['-.0005', 'tenths', -12.7],
    ['.05', 'thou', 1.27],
    ['5 tenths', 'thou', 12.7],
    ['5 tenths', 'um', 12.7],
    ['3 tenths of a thou', 'mm', 7.62],
    ['half thou', 'um', 12.7],
    ['half a tenth', 'um', 1.27],
    ['a thou', 'mm', 25.4],
    ['a thou and a half', 'um', 38.1],
    ['1 1/2 thou', 'um', 38.1],
    ['1½ thou', 'tenths', 38.1],
    ['-1-1/2 thou', 'um', -38.1],
    ['two and a half tenths', 'um', 6.35],
    ['three quarters of a thou', 'um', 19.05],
    ['1 thou 2 tenths', 'um', 30.48],
    ['half', 'thou', 12.7],
    ['12um', 'thou', 12],
    ['12 µm', 'thou', 12],
    ['12 μm', 'thou', 12],
    ['1.2E-2', 'mm', 12],
    ['0.012mm', 'thou', 12],
    ['.0005"', 'um', 12.7],
    ['20 millionths', 'um', 0.508],
    ['0', 'thou', 0],
    ['nil', 'thou', 0],
  ])('%s in a column of %s is %d µm', (typed, column, expected) => {
    expect(um(typed, column)).toBeCloseTo(expected, 9);
  });

  it('says back what was understood, in the column and in the other system', () => {
    expect(readDeviation('half thou', 'thou')).toEqual({
      ok: true,
      typed: 'half thou',
      um: 12.7,
      unit: 'thou',
      echo: '+0.5 thou',
      echoOther: '+12.7 µm',
    });
    expect(readDeviation('-14', 'um')).toMatchObject({ echo: '−14 µm', echoOther: '−5.512 tenths' });
  });
});

describe('what could mean two things is refused', () => {
  it('names what it read, what it did not, and how to write it', () => {
    expect(why('7 thuo')).toBe('I can read 7, but not “thuo”. Write 7 thou, .007 in or 178 µm.');
    expect(why('7 thuo', 'um')).toBe('I can read 7, but not “thuo”. Write 7 thou, .007 in or 178 µm.');
    expect(why('thou')).toBe('I cannot read “thou”. Write 7 thou, .007 in or 178 µm.');
    expect(why('')).toMatch(/^Nothing is written\./);
  });
  it.each([
    ['0,02', /comma/],
    ['1,000', /comma/],
    ['7 mil', /inch to some and a millimetre to others/],
    ['ten thousandths', /\.010 in or \.0001 in/],
    ['.015', /0\.015 thou or 15 thou/],
    ['0005', /may be \.0005 or 5/],
    ['7 5', /not “5”/],
    ['1.2.3', /not “\.3”/],
    ['--7', /cannot read/],
    ['7-', /not “-”/],
    ['5 tenths 1 thou', /do not add up/],
    ['1/0', /not “\/0”/],
    ['7 in', /more than an indicator travels/],
    ['1e400', /too large/],
    ['1e-9 um', /less than anything/],
    ['NaN', /cannot read/],
    ['Infinity', /cannot read/],
    ['9'.repeat(80), /too long/],
  ])('%s', (typed, reason) => expect(why(typed)).toMatch(reason));
});

describe('laws of reading', () => {
  const typeable = fc.oneof(
    fc.string({ maxLength: 80 }),
    fc.string({ unit: 'grapheme', maxLength: 20 }),
    fc
      .array(
        fc.constantFrom(...'0123456789.,+-−/ '.split(''), 'thou', 'tenths', 'half', 'um', 'in', 'and', 'a'),
        {
          maxLength: 9,
        },
      )
      .map((parts) => parts.join('')),
  );
  it('anything typed is a finite number within reach or a sentence, never NaN', () => {
    fc.assert(
      fc.property(typeable, anyUnit, (typed, column) => {
        const read = readDeviation(typed, column);
        if (read.ok) {
          expect(Number.isFinite(read.um)).toBe(true);
          expect(Math.abs(read.um)).toBeLessThanOrEqual(50_800);
          expect(Object.is(read.um, -0)).toBe(false);
        } else expect(read.why).toMatch(/[.?]$/);
      }),
      { numRuns: 3000 },
    );
  });
  it('a minus in front turns the sign and nothing else', () => {
    fc.assert(
      fc.property(typeable, anyUnit, fc.constantFrom('-', '−', 'minus '), (typed, column, sign) => {
        const read = readDeviation(typed, column);
        fc.pre(read.ok && !/^\s*([+\-−]|plus|minus)/i.test(typed));
        const turned = readDeviation(sign + typed, column);
        expect(turned.ok && read.ok && turned.um + read.um).toBe(0);
      }),
      { numRuns: 3000 },
    );
  });
  it('its own echo reads back as the same reading', () => {
    const value = fc.integer({ min: -999_999, max: 999_999 }).map((n) => n / 1000);
    fc.assert(
      fc.property(value, anyUnit, (n, column) => {
        const read = readDeviation(`${n} ${column}`, column);
        fc.pre(read.ok);
        if (!read.ok) return;
        expect(um(read.echo, 'mm')).toBeCloseTo(read.um, 9);
        expect(Math.abs(um(read.echoOther, 'mm') - read.um)).toBeLessThanOrEqual(Math.abs(read.um) * 5.1e-4);
      }),
    );
  });
  it('what is said with a doubt reads back within the rounding, sign kept', () => {
    const size = fc.double({ min: -900, max: 900, noNaN: true });
    const sd = fc.double({ min: 0.05, max: 60, noNaN: true });
    fc.assert(
      fc.property(size, sd, fc.constantFrom('metric', 'inch'), (value, doubt, system) => {
        const said = sayDeviation(value, system, { sd: doubt });
        const back = um(`${said.sign}${said.number} ${said.unit}`, 'mm');
        const unit = units.find(
          (u) => ({ um: 'µm', mm: 'mm', thou: 'thou', tenths: 'tenths', in: 'in' })[u] === said.unit,
        )!;
        // Half the last figure of the doubt is at most a quarter of what is shown of it.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(0.5 * Number(said.doubt) * size_um[unit] + 1e-9);
        if (back !== 0) expect(Math.sign(back)).toBe(Math.sign(value));
      }),
    );
  });
});
