import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applied, composed, fitted, inverted, pxPerMm, surfaceToPhoto } from './homography.ts';
import type { Corners } from './picture.ts';

const size = { length_mm: 200, width_mm: 90 };
const mm = [
  { x: 0, y: 0 },
  { x: 200, y: 0 },
  { x: 200, y: 90 },
  { x: 0, y: 90 },
];
const near = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true });
const corners = fc
  .tuple(near(150), near(150), near(150), near(150), near(150), near(150), near(150), near(150))
  .map(
    (d): Corners => [
      { x: 100 + d[0], y: 300 + d[1] },
      { x: 2100 + d[2], y: 320 + d[3] },
      { x: 2200 + d[4], y: 1250 + d[5] },
      { x: 90 + d[6], y: 1290 + d[7] },
    ],
  );

describe('the projection from the surface to the photo', () => {
  it('takes every corner to its place, either way round', () => {
    fc.assert(
      fc.property(corners, fc.boolean(), (given, mirrored) => {
        const seen: Corners = mirrored ? [given[3], given[2], given[1], given[0]] : given;
        const h = surfaceToPhoto(seen, size);
        mm.forEach((p, k) => {
          const q = applied(h, p);
          expect(Math.hypot(q.x - seen[k]!.x, q.y - seen[k]!.y)).toBeLessThan(1e-6);
        });
      }),
    );
  });

  it('leads back through its inverse, and composes', () => {
    fc.assert(
      fc.property(corners, (given) => {
        const h = surfaceToPhoto(given, size);
        const back = composed(inverted(h), h);
        const p = applied(back, { x: 63, y: 41 });
        expect(Math.hypot(p.x - 63, p.y - 41)).toBeLessThan(1e-8);
      }),
    );
  });

  it('is a plain scale for an upright rectangle: Heckbert 1989, the affine case', () => {
    const h = surfaceToPhoto(
      [
        { x: 10, y: 20 },
        { x: 2010, y: 20 },
        { x: 2010, y: 920 },
        { x: 10, y: 920 },
      ],
      size,
    );
    expect(h.map((one) => one + 0)).toEqual([10, 0, 10, 0, 10, 20, 0, 0, 1]);
    expect(pxPerMm(h, { x: 50, y: 50 })).toBeCloseTo(10, 12);
  });

  it('refuses three corners on a line', () => {
    const line: Corners = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 20, y: 0 },
      { x: 30, y: 0 },
    ];
    expect(() => surfaceToPhoto(line, size)).toThrow('on a line');
  });
});

describe('the projection fitted to many places', () => {
  it('finds the one that made them, and spreads noise', () => {
    fc.assert(
      fc.property(corners, fc.array(near(0.5), { minLength: 40, maxLength: 40 }), (given, noise) => {
        const h = surfaceToPhoto(given, size);
        const from = Array.from({ length: 20 }, (_, k) => ({ x: (k % 5) * 50, y: Math.floor(k / 5) * 30 }));
        const exact = fitted(
          from,
          from.map((p) => applied(h, p)),
        );
        const noisy = fitted(
          from,
          from.map((p, k) => {
            const q = applied(h, p);
            return { x: q.x + noise[2 * k]!, y: q.y + noise[2 * k + 1]! };
          }),
        );
        mm.forEach((p, k) => {
          const a = applied(exact, p);
          const b = applied(noisy, p);
          expect(Math.hypot(a.x - given[k]!.x, a.y - given[k]!.y)).toBeLessThan(1e-5);
          expect(Math.hypot(b.x - given[k]!.x, b.y - given[k]!.y)).toBeLessThan(2.5);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('asks for five pairs', () => {
    expect(() => fitted(mm, mm)).toThrow('five pairs');
  });
});
