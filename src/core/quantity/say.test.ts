import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength, sayLength } from './length.ts';
import { doubtPlace, roundAt, say, sayDeviation } from './say.ts';
import { readSlope, saySlope } from './slope.ts';

describe('a doubt alone', () => {
  it.each([
    [4.12, '4'],
    [1.04, '1'],
    [1.24, '1.2'],
    [0.957, '1'],
    [16.7, '17'],
    [137, '140'],
    [0.0246, '0.02'],
    [0, '0'],
  ])('%d µm keeps one figure, two when it starts with 1: %s', (um, figures) => {
    expect(sayDeviation(um, 'metric', { signed: false, rough: true }).text).toBe(`${figures}\u00a0µm`);
  });
  it('beside an sd or fixed decimals it changes nothing', () => {
    expect(sayDeviation(12.34, 'metric', { sd: 0.2, rough: true }).text).toBe(
      '+12.3\u202f±\u202f0.4\u00a0µm',
    );
    expect(sayDeviation(12.34, 'metric', { decimals: 2, rough: true }).text).toBe('+12.34\u00a0µm');
  });
});

describe('a quantity in a narrow column', () => {
  it('has no space that a line may break at', () => {
    const texts = [
      sayDeviation(-15.3, 'metric', { sd: 2.15 }).text,
      sayDeviation(-53, 'inch', { sd: 4 }).text,
      saySlope(-51, 'metric', { sd: 7.2 }).text,
    ];
    // Unicode line breaking: of the spaces only U+00A0, U+2007 and U+202F hold a line together.
    for (const text of texts) expect(text.match(/[^\S\u00a0\u2007\u202f]/)).toBeNull();
  });
});

describe('the numbers of the look', () => {
  // Rounds of the invented job in the look's table, µm in 300 mm; ± is two sd.
  it.each([
    [-43.3, 5.0, '−43', '5'],
    [-21.6, 4.6, '−22', '5'],
    [-15.3, 4.3, '−15', '4'],
    [10.9, 10.0, '+11', '10'],
    [7.7, 2.7, '+8', '3'],
    [-1.3, 2.7, '−1', '3'],
    [0.1, 2.0, '0', '2'],
  ])('%d ± %d is said %s ± %s', (value, doubt, number, shownDoubt) => {
    const said = sayDeviation(value, 'metric', { sd: doubt / 2 });
    expect(said.sign + said.number).toBe(number);
    expect(said.doubt).toBe(shownDoubt);
    expect(said.text).toBe(`${number}\u202f±\u202f${shownDoubt}\u00a0µm`);
  });
  it('two figures of doubt when it starts with 1, no sign on what has only a size', () => {
    expect(sayDeviation(6.2, 'metric', { sd: 0.75, signed: false })).toMatchObject({
      sign: '',
      number: '6.2',
      doubt: '1.5',
    });
  });
  it('one decimal on a chart', () => {
    expect(sayDeviation(11.14, 'metric', { sd: 1.5, decimals: 1 })).toMatchObject({
      sign: '+',
      number: '11.1',
      doubt: '3.0',
    });
  });
  it('a thou and tenths for an inch shop, and one unit where a table needs it', () => {
    expect(sayDeviation(-12.7, 'inch').text).toBe('−5\u00a0tenths');
    expect(sayDeviation(-53, 'inch', { sd: 4 }).text).toBe('−2.1\u202f±\u202f0.3\u00a0thou');
    expect(sayDeviation(-12.7, 'inch', { unit: 'thou' }).text).toBe('−0.5\u00a0thou');
  });
  it('an angle is a fall over a length', () => {
    expect(saySlope(-51, 'metric', { sd: 7.2 }).text).toBe(
      '−15\u202f±\u202f4\u00a0µm\u00a0in\u00a0300\u00a0mm',
    );
    expect(saySlope(-175, 'inch').text).toBe('−2.1\u00a0thou\u00a0in\u00a012\u00a0in');
    expect(saySlope(-50, 'inch', { span_mm: 1000 }).text).toBe('−2\u00a0thou\u00a0in\u00a040\u00a0in');
    expect(saySlope(20, 'metric', { unit: 'mm/m' }).text).toBe('+0.02\u00a0mm/m');
  });
  it('a length has no sign, unless it is a place on the minus side', () => {
    expect(sayLength(350, 'metric').text).toBe('350\u00a0mm');
    expect(sayLength(350, 'inch').text).toBe('13.8\u00a0in');
    expect(sayLength(-12, 'metric', { signed: true }).text).toBe('−12\u00a0mm');
    expect(sayLength(339.725, 'inch', { decimals: 3 }).text).toBe('13.375\u00a0in');
  });
  it('one more figure where rounding would move it across a limit', () => {
    expect(sayDeviation(5.7, 'metric', { sd: 0.6 }).number).toBe('5.7');
    expect(sayDeviation(5.7, 'metric', { sd: 2 })).toMatchObject({ number: '6', doubt: '4' });
    expect(sayDeviation(5.7, 'metric', { sd: 2, limits: [-6, 6] })).toMatchObject({
      number: '5.7',
      doubt: '4.0',
    });
    expect(sayDeviation(6.4, 'metric', { sd: 2, limits: [-6, 6] }).number).toBe('6.4');
    expect(sayDeviation(6.6, 'metric', { sd: 2, limits: [-6, 6] }).number).toBe('7');
  });
  it('refuses what is not a number', () => {
    expect(() => say(Number.NaN, 'µm')).toThrow(RangeError);
    expect(() => say(1, 'µm', { sd: -1 })).toThrow(/sd -1/);
  });
});

describe('laws of saying', () => {
  const positive = fc.double({ min: 1e-4, max: 1e4, noNaN: true });
  it('the doubt keeps one figure, or two when it starts with 1', () => {
    fc.assert(
      fc.property(positive, (doubt) => {
        const shown = roundAt(doubt, doubtPlace(doubt));
        const figures = shown.toExponential(6).replace(/\.?0*e.*/, '');
        expect(figures).toMatch(/^([1-9]|1\.\d)$/);
        expect(Math.abs(shown - doubt)).toBeLessThanOrEqual(0.25 * doubt + 1e-12);
      }),
    );
  });
  it('turning the value turns the sign and keeps every figure', () => {
    fc.assert(
      fc.property(positive, positive, (value, sd) => {
        const there = say(value, 'µm', { sd });
        const back = say(-value, 'µm', { sd });
        expect({ ...back, sign: '', text: '' }).toEqual({ ...there, sign: '', text: '' });
        expect([there.sign, back.sign]).toEqual(Number(there.number) === 0 ? ['', ''] : ['+', '−']);
      }),
    );
  });
  it('value and doubt stand on their sides of a limit as they are, when limits are given', () => {
    const tame = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 100);
    const doubt = fc.integer({ min: 30, max: 900 }).map((n) => n / 100);
    fc.assert(
      fc.property(tame, doubt, (value, sd2) => {
        const said = sayDeviation(value, 'metric', { sd: sd2 / 2, limits: [6, 20] });
        const shown = Number(said.number) * (said.sign === '−' ? -1 : 1);
        for (const limit of [6, 20])
          for (const k of [-1, 0, 1]) {
            const is = Math.sign(Number((value + k * sd2 - limit).toFixed(6)));
            const looks = Math.sign(Number((shown + k * Number(said.doubt) - limit).toFixed(6)));
            if (is !== 0) expect(looks).toBe(is);
          }
      }),
    );
  });
  it('a slope said reads back within its rounding', () => {
    const slope = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(
        slope,
        fc.constantFrom('metric', 'inch'),
        fc.constantFrom(300, 1000),
        (urad, system, span_mm) => {
          const said = saySlope(urad, system, { span_mm });
          fc.pre(Math.abs(urad) > 0.01);
          const read = readSlope(said.text, 'urad');
          // Three figures are shown.
          expect(read.ok && Math.abs(read.urad - urad)).toBeLessThanOrEqual(0.0051 * Math.abs(urad));
          expect(read.ok && Math.sign(read.urad)).toBe(Math.sign(urad));
        },
      ),
    );
  });
  it('a length’s echo reads back as the same length', () => {
    const mm = fc.integer({ min: -9_999_999, max: 9_999_999 }).map((n) => n / 1000);
    fc.assert(
      fc.property(mm, fc.constantFrom('mm', 'in'), (value, column) => {
        const read = readLength(`${value} mm`, column);
        const back = read.ok ? readLength(read.echo, 'mm') : read;
        expect(back.ok && Math.abs(back.mm - value)).toBeLessThanOrEqual(5.1e-6 * Math.abs(value));
      }),
    );
  });
});
