import { describe, expect, it } from 'vitest';
import { boxCorners, hatch } from './hatch.ts';

const strokes = (data: string): number[][] =>
  [...data.matchAll(/M(\S+) (\S+?)L(\S+) ([^M]+)/g)].map((m) => m.slice(1, 5).map(Number));
const length = (lines: number[][]): number =>
  lines.reduce((sum, [a, b, c, d]) => sum + Math.hypot(c! - a!, d! - b!), 0);

describe('strokes that fill a polygon', () => {
  it('have the length of area over step, whichever way they run', () => {
    for (const angle of [45, -45, 20])
      expect(length(strokes(hatch(boxCorners(13, 7, 310, 170), angle, 1.7)))).toBeCloseTo(
        (310 * 170) / 1.7,
        -3,
      );
  });
  it('climb to the right at 45 and fall to the right at −45', () => {
    const slope = (angle: number): number => {
      const [x1, y1, x2, y2] = strokes(hatch(boxCorners(0, 0, 50, 40), angle, 9))[2]!;
      return (y2! - y1!) / (x2! - x1!);
    };
    // Down the page is plus, so what climbs to the right has a negative slope.
    expect(slope(45)).toBeCloseTo(-1, 2);
    expect(slope(-45)).toBeCloseTo(1, 2);
  });
  it('leave a notch of the polygon empty', () => {
    const notched = [
      [0, 0],
      [100, 0],
      [100, 60],
      [60, 60],
      [60, 20],
      [40, 20],
      [40, 60],
      [0, 60],
    ] as const;
    const inNotch = strokes(hatch(notched, 45, 3)).filter(([x1, y1, x2, y2]) => {
      const x = (x1! + x2!) / 2;
      const y = (y1! + y2!) / 2;
      return x > 41 && x < 59 && y > 21;
    });
    expect(inNotch).toEqual([]);
    expect(length(strokes(hatch(notched, 45, 0.5)))).toBeCloseTo((100 * 60 - 20 * 40) / 0.5, -3);
  });
});
