import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { excluded } from './excluded.ts';
import type { Exclusion } from './exclusion.ts';
import { rasterPxPerMm } from './rectified.ts';

const [width, height] = [100 * rasterPxPerMm, 50 * rasterPxPerMm];
const area_mm2 = (...shapes: Exclusion[]) =>
  excluded(shapes, width, height).reduce((sum, one) => sum + one, 0) / rasterPxPerMm ** 2;
const at = (x: number, y: number) => ({ x, y });

describe('what is excluded', () => {
  it('has the area of its shape', () => {
    expect(area_mm2()).toBe(0);
    expect(area_mm2({ type: 'circle', x: 40, y: 25, r: 10 }) / (Math.PI * 100)).toBeCloseTo(1, 2);
    const triangle: Exclusion = { type: 'polygon', points: [at(10, 10), at(60, 12), at(20, 45)] };
    // Half the cross product of two sides: (50·35 − 2·10) / 2.
    expect(area_mm2(triangle) / 865).toBeCloseTo(1, 2);
    // A groove has round ends: 60 × 4 and a disc of 2 mm.
    const groove: Exclusion = { type: 'polyline', width: 4, points: [at(20, 10), at(56, 30), at(20, 30)] };
    const legs = 4 * (Math.hypot(36, 20) + 36);
    expect(area_mm2(groove)).toBeGreaterThan(legs - 16);
    expect(area_mm2(groove)).toBeLessThan(legs + Math.PI * 4 + 1);
    const straight: Exclusion = { type: 'polyline', width: 4, points: [at(20, 25), at(80, 25)] };
    expect(area_mm2(straight) / (240 + Math.PI * 4)).toBeCloseTo(1, 2);
  });

  it('counts once where shapes overlap, and not beyond the surface', () => {
    const hole: Exclusion = { type: 'circle', x: 40, y: 25, r: 10 };
    expect(area_mm2(hole, hole)).toBe(area_mm2(hole));
    expect(area_mm2({ type: 'circle', x: 0, y: 0, r: 10 }) / ((Math.PI * 100) / 4)).toBeCloseTo(1, 2);
    expect(area_mm2({ type: 'circle', x: -50, y: 900, r: 10 })).toBe(0);
    expect(area_mm2({ type: 'polygon', points: [at(-9, -9), at(200, -9), at(200, 99), at(-9, 99)] })).toBe(
      5000,
    );
  });

  it('of a shape with a line or a point in it is nothing', () => {
    expect(area_mm2({ type: 'polygon', points: [at(10, 10), at(30, 30)] })).toBe(0);
    expect(area_mm2({ type: 'polygon', points: [] })).toBe(0);
    expect(area_mm2({ type: 'polyline', width: 3, points: [] })).toBe(0);
    expect(area_mm2({ type: 'polyline', width: 4, points: [at(30, 30)] }) / (Math.PI * 4)).toBeCloseTo(1, 1);
  });

  it('is the same polygon from whichever corner and way round it is drawn', () => {
    const points = [at(5, 5), at(70, 9), at(50, 25), at(80, 44), at(12, 40)];
    fc.assert(
      fc.property(fc.nat(4), fc.boolean(), (from, back) => {
        const turned = [...points.slice(from), ...points.slice(0, from)];
        const drawn = back ? turned.toReversed() : turned;
        expect(area_mm2({ type: 'polygon', points: drawn })).toBeCloseTo(
          area_mm2({ type: 'polygon', points }),
          0,
        );
      }),
      { numRuns: 10 },
    );
  });
});
