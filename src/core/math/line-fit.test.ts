import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLine, lineAt, mean, sampleSd } from './line-fit.ts';
import { huberLine, median, theilSen, theilSenInterval } from './robust-line.ts';

const x = [3, 17, 26, 48, 59, 73];
const y = [2.1, 5.7, 7.2, 13.9, 15.8, 21.3];

/** Six places, apart from each other, and values of moderate size. */
const points = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.double({ min: -90, max: 90, noNaN: true })), {
    minLength: 4,
    maxLength: 14,
  })
  .map((list) => {
    let at = -7;
    return { x: list.map(([step]) => (at += step)), y: list.map(([, value]) => value) };
  });
const shift = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('a line through points', () => {
  it('finds a line that is there, exactly', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -50, max: 50 }), shift, (p, slope, start) => {
        const fit = fitLine(
          p.x,
          p.x.map((v) => start + slope * v),
        );
        expect(fit.slope).toBeCloseTo(slope, 8);
        expect(fit.start).toBeCloseTo(start, 6);
        expect(fit.residual_sd).toBeCloseTo(0, 6);
      }),
    );
  });
  it('moving the points moves the line and changes no slope, residual or sd of the slope', () => {
    fc.assert(
      fc.property(points, shift, shift, (p, dx, dy) => {
        const here = fitLine(p.x, p.y);
        const there = fitLine(
          p.x.map((v) => v + dx),
          p.y.map((v) => v + dy),
        );
        expect(there.slope).toBeCloseTo(here.slope, 7);
        expect(there.slope_sd).toBeCloseTo(here.slope_sd, 7);
        for (const [i, r] of there.residuals.entries()) expect(r).toBeCloseTo(here.residuals[i]!, 6);
        expect(lineAt(there, 30 + dx).value - dy).toBeCloseTo(lineAt(here, 30).value, 5);
      }),
    );
  });
  it('equal sds weigh nothing; doubling them doubles the doubts and quarters chi-square', () => {
    const plain = fitLine(x, y);
    const one = fitLine(
      x,
      y,
      x.map(() => 0.5),
    );
    const two = fitLine(
      x,
      y,
      x.map(() => 1),
    );
    expect(one.slope).toBeCloseTo(plain.slope, 13);
    expect(two.slope_sd / one.slope_sd).toBeCloseTo(2, 12);
    expect(one.square / two.square).toBeCloseTo(4, 12);
  });
  it('a point repeated counts as a point with half the variance', () => {
    const twice = fitLine([...x, 73], [...y, 21.3], Array(7).fill(0.4));
    const sds = [0.4, 0.4, 0.4, 0.4, 0.4, 0.4 / Math.SQRT2];
    const heavy = fitLine(x, y, sds);
    expect(twice.slope).toBeCloseTo(heavy.slope, 12);
    expect(twice.slope_sd).toBeCloseTo(heavy.slope_sd, 12);
  });
  it('the sd at x = 0 is the sd of the start, and least at the middle', () => {
    const fit = fitLine(x, y);
    expect(lineAt(fit, 0).sd).toBeCloseTo(fit.start_sd, 12);
    expect(lineAt(fit, fit.middle[0]).sd).toBeLessThan(lineAt(fit, fit.middle[0] + 1).sd);
  });
  it('two points give a line whose doubt cannot be told from their scatter, but can from their sds', () => {
    expect(fitLine([2, 5], [3, 9])).toMatchObject({ slope: 2, start: -1, slope_sd: Infinity, degrees: 0 });
    expect(fitLine([2, 5], [3, 9], [0.3, 0.4]).slope_sd).toBeCloseTo(0.5 / 3, 12);
  });
  it.each<[number[], number[], number[] | undefined, RegExp]>([
    [[1, 2], [3], undefined, /2 places and 1 values/],
    [[4, 4], [3, 5], undefined, /fewer than two places/],
    [[1, Number.NaN], [3, 5], undefined, /NaN/],
    [[1, 2], [3, 5], [1, 0], /sd is 0/],
    [[1, 2], [3, 5], [1], /1 sds/],
  ])('refuses %j, %j, %j', (xs, ys, sds, reason) => expect(() => fitLine(xs, ys, sds)).toThrow(reason));
  it('means and sds refuse too few values', () => {
    expect(() => mean([])).toThrow(RangeError);
    expect(() => sampleSd([7])).toThrow(/1 values/);
  });
});

describe('lines that a wild point does not move', () => {
  const wild = y.map((v, i) => (i === 4 ? v + 400 : v));
  it('least squares is pulled; Theil–Sen and Huber are not', () => {
    expect(Math.abs(fitLine(x, wild).slope - fitLine(x, y).slope)).toBeGreaterThan(1);
    expect(Math.abs(theilSen(x, wild).slope - theilSen(x, y).slope)).toBeLessThan(0.02);
    expect(Math.abs(huberLine(x, wild).slope - fitLine(x, y).slope)).toBeLessThan(0.05);
  });
  it('both follow the points when they are moved, tilted or turned upside down', () => {
    fc.assert(
      fc.property(
        points,
        fc.integer({ min: -9, max: 9 }),
        fc.integer({ min: -90, max: 90 }),
        (p, tilt, lift) => {
          for (const line of [theilSen, huberLine]) {
            const here = line(p.x, p.y);
            const there = line(
              p.x,
              p.y.map((v, i) => -v + tilt * p.x[i]! + lift),
            );
            expect(there.slope).toBeCloseTo(tilt - here.slope, 5);
            expect(there.start).toBeCloseTo(lift - here.start, 3);
          }
        },
      ),
    );
  });
  it('Huber keeps a line that half the points lie on', () => {
    const line = [1, 3, 5, 7, 9, 11, 13].map((v, i) => (i === 2 ? v + 40 : v));
    expect(huberLine([0, 1, 2, 3, 4, 5, 6], line).slope).toBeCloseTo(2, 9);
  });
  it('a wider interval holds the narrower one, and both the median', () => {
    fc.assert(
      fc.property(points, (p) => {
        const narrow = theilSenInterval(p.x, p.y, 0.7);
        const wide = theilSenInterval(p.x, p.y, 0.95);
        const { slope } = theilSen(p.x, p.y);
        expect(wide.low).toBeLessThanOrEqual(narrow.low);
        expect(wide.high).toBeGreaterThanOrEqual(narrow.high);
        expect(narrow.low).toBeLessThanOrEqual(slope);
        expect(narrow.high).toBeGreaterThanOrEqual(slope);
      }),
    );
  });
  it('the median of none is refused', () => expect(() => median([])).toThrow(RangeError));
});
