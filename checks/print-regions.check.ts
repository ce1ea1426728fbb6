import { fromMask, Image, Mask } from 'image-js';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../src/core/math/random.ts';
import { readPrint } from '../src/core/print/read-print.ts';
import { discRows, drawnDiscs, uprightCorners } from '../tests/fixture/drawn-discs.ts';
import { regionsOf } from '../tests/fixture/region-labels.ts';
import { expectSame } from './near.ts';

/*
 * Source: image-js, a general imaging library with nothing of ours in it, on the same pixels. Its region labels come from flooding,
 * ours from runs along rows; its thresholds (Otsu 1979, iterated means, least cross-entropy) from a histogram of one channel, ours
 * from blueness and darkness against the bare surface nearby. Seen: computed here, by both, each time.
 */

function speckled(width: number, height: number, share: number, seed: number): Uint8Array {
  const random = seededRandom(seed);
  return Uint8Array.from({ length: width * height }, () => (random.even() < share ? 1 : 0));
}

/** One to one between two labellings: the same elements lie together in both. */
function expectSameParts(ours: ArrayLike<number>, theirs: ArrayLike<number>, inside: (o: number) => boolean) {
  const there = new Map<number, number>();
  const back = new Map<number, number>();
  for (let o = 0; o < ours.length; o++) {
    if (!inside(o)) continue;
    const a = ours[o]!;
    const b = theirs[o]!;
    if (!there.has(a)) there.set(a, b);
    if (!back.has(b)) back.set(b, a);
    if (there.get(a) !== b || back.get(b) !== a) expect.fail(`element ${o}: ours ${a}, theirs ${b}`);
  }
  return there.size;
}

describe('connected regions beside image-js', () => {
  // 0.41 and 0.59 are where regions of eight and of four neighbours just begin to span the whole.
  for (const share of [0.1, 0.41, 0.5, 0.59, 0.9])
    for (const eight of [true, false])
      it(`the same parts, ${100 * share} % set, ${eight ? 'eight' : 'four'} neighbours`, () => {
        for (const [width, height] of [
          [137, 61],
          [1, 40],
          [40, 1],
          [64, 64],
        ] as const) {
          const mask = speckled(width, height, share, width + 7 * height);
          const ours = regionsOf(mask, 1, width, height, eight);
          const theirs = fromMask(new Mask(width, height, { data: mask }), { allowCorners: eight }).getMap();
          expect(ours.count).toBe(theirs.nbPositive);
          expect(expectSameParts(ours.label, theirs.data, (o) => mask[o] === 1)).toBe(ours.count);
          const holes = regionsOf(mask, 0, width, height, eight);
          expect(holes.count).toBe(theirs.nbNegative);
          expect(expectSameParts(holes.label, theirs.data, (o) => mask[o] === 0)).toBe(holes.count);
        }
      });
});

describe('contact beside thresholds of image-js', () => {
  // At the raster's own 8 pixels a mm and upright, element (i, j) is the pixel (24 + i, 24 + j).
  const size = { length_mm: 100, width_mm: 50 };
  const { picture, corners } = drawnDiscs({ size, discs: discRows(size, 5, 1.4), px_per_mm: 8, noise: 6 });
  const { at } = uprightCorners(size, 8);
  const { contact, spots } = readPrint({ picture, corners, size });
  const from = Math.round(at[0].x + 0.5);
  const red = new Image(contact.width, contact.height, {
    colorModel: 'GREY',
    data: Uint8Array.from({ length: contact.is.length }, (_, o) => {
      const i = from + (o % contact.width);
      const j = from + Math.floor(o / contact.width);
      return picture.rgb[3 * (j * picture.width_px + i)]!;
    }),
  });

  for (const algorithm of ['otsu', 'isodata', 'li'] as const)
    it(`${algorithm} on the red channel finds the same spots and area`, () => {
      const above = red.threshold({ algorithm });
      const theirs = above.invert();
      const found = fromMask(theirs, { allowCorners: true });
      expect(found.getMap().nbPositive).toBe(spots.length);
      expectSame(spots.length, 200);
      let both = 0;
      let either = 0;
      for (let o = 0; o < contact.is.length; o++) {
        const a = contact.is[o] === 1 || contact.is[o] === 2;
        const b = theirs.getBitByIndex(o) === 1;
        if (a && b) both++;
        if (a || b) either++;
      }
      // A border element more or less all round would be 0.83: the discs are 1.4 mm, eleven elements, in radius.
      expect(both / either).toBeGreaterThan(0.96);
    });
});
