import { getPerspectiveWarp } from 'image-js';
import { describe, it } from 'vitest';
import { applied, surfaceToPhoto } from '../src/core/print/homography.ts';
import type { Corners } from '../src/core/print/picture.ts';
import { expectWithin } from './near.ts';

/*
 * Sources: the closed form of four points (Heckbert 1989, section 2.2.3, from memory), worked by hand below; laws of the projective plane
 * (the middle of a face lies where its diagonals cross; cross-ratios stay); and image-js, which solves the eight equations by
 * singular values instead. No worked example with numbers was found in print.
 */

/** A keystone: a square face of 100 mm seen from its near edge, half as wide at the far one. */
const keystone: Corners = [
  { x: 0, y: 0 },
  { x: 200, y: 0 },
  { x: 150, y: 100 },
  { x: 50, y: 100 },
];
const square = { length_mm: 100, width_mm: 100 };

const photo: Corners = [
  { x: 311.783, y: 549.315 },
  { x: 2272.225, y: 637.962 },
  { x: 2389.011, y: 1372.516 },
  { x: 108.051, y: 1235.772 },
];
const face = { length_mm: 300, width_mm: 110 };

describe('the projection from four corners', () => {
  it('by hand: g = 0, h = 1, so (u, v) goes to ((200 u + 100 v) / (1 + v), 200 v / (1 + v))', () => {
    /*
     * Δ1 = b − c = (50, −100), Δ2 = d − c = (−100, 0), Σ = a − b + c − d = (−100, 0); det = 50·0 − (−100)(−100) = −10 000
     * g = (−100·0 − (−100)·0) / det = 0;  h = (50·0 − (−100)(−100)) / det = 1
     * rows: b − a + g b = (200, 0), d − a + h d = (100, 200), a = (0, 0); u and v are mm over 100.
     */
    const found = surfaceToPhoto(keystone, square);
    [2, 1, 0, 0, 2, 0, 0, 0.01, 1].forEach((wanted, k) => {
      expectWithin(found[k]! - wanted, 0, 5e-15);
    });
    const far = applied(found, { x: 25, y: 60 });
    expectWithin(far.x, (200 * 0.25 + 100 * 0.6) / 1.6, 5e-13);
    expectWithin(far.y, (200 * 0.6) / 1.6, 5e-13);
  });

  it('puts the middle of the face where the diagonals cross', () => {
    const found = applied(surfaceToPhoto(photo, face), { x: 150, y: 55 });
    const [a, b, c, d] = photo;
    const across = (p: { x: number; y: number }, q: { x: number; y: number }) =>
      (q.x - p.x) * (found.y - p.y) - (q.y - p.y) * (found.x - p.x);
    expectWithin(across(a, c) / Math.hypot(c.x - a.x, c.y - a.y), 0, 5e-10);
    expectWithin(across(b, d) / Math.hypot(d.x - b.x, d.y - b.y), 0, 5e-10);
  });

  it('keeps the cross-ratio of four places on a line: 0, 100, 150, 300 mm', () => {
    const h = surfaceToPhoto(photo, face);
    const far = [0, 100, 150, 300].map((x) => applied(h, { x, y: 37 }));
    const gap = (i: number, j: number) => Math.hypot(far[i]!.x - far[j]!.x, far[i]!.y - far[j]!.y);
    // (AC · BD) / (BC · AD) = (150 · 200) / (50 · 300) = 2; (AB · CD) / (BC · AD) = (100 · 150) / (50 · 300) = 1.
    expectWithin((gap(0, 2) * gap(1, 3)) / (gap(1, 2) * gap(0, 3)), 2, 5e-11);
    expectWithin((gap(0, 1) * gap(2, 3)) / (gap(1, 2) * gap(0, 3)), 1, 5e-11);
  });

  it('is the one that image-js solves for', () => {
    // Theirs takes pixel 0 to pixel width − 1 to the corners: one more than the face's length.
    const { matrix } = getPerspectiveWarp(
      photo.map(({ x, y }) => ({ column: x, row: y })),
      { width: face.length_mm + 1, height: face.width_mm + 1 },
    );
    const theirs = matrix.flat();
    const ours = surfaceToPhoto(photo, face);
    for (const place of [
      { x: 0, y: 0 },
      { x: 77, y: 91 },
      { x: 213.5, y: 12.25 },
      { x: 300, y: 110 },
    ]) {
      const a = applied(ours, place);
      const w = theirs[6]! * place.x + theirs[7]! * place.y + theirs[8]!;
      expectWithin(a.x, (theirs[0]! * place.x + theirs[1]! * place.y + theirs[2]!) / w, 5e-7);
      expectWithin(a.y, (theirs[3]! * place.x + theirs[4]! * place.y + theirs[5]!) / w, 5e-7);
    }
  });
});
