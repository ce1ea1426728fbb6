import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regionsOf } from '../../../tests/fixture/region-labels.ts';

const masks = fc
  .tuple(fc.integer({ min: 1, max: 14 }), fc.integer({ min: 1, max: 14 }))
  .chain(([width, height]) =>
    fc.record({
      width: fc.constant(width),
      height: fc.constant(height),
      mask: fc.uint8Array({ min: 0, max: 1, minLength: width * height, maxLength: width * height }),
    }),
  );

/** Areas of the regions, in rising order. */
function areas(mask: Uint8Array, width: number, height: number, eight: boolean): number[] {
  const { count, label } = regionsOf(mask, 1, width, height, eight);
  const area = Array<number>(count).fill(0);
  for (const one of label) if (one > 0) area[one - 1]!++;
  return area.toSorted((a, b) => a - b);
}

describe('connected regions', () => {
  it('are the same when the mask is mirrored, turned or laid on its side', () => {
    fc.assert(
      fc.property(masks, fc.boolean(), ({ mask, width, height }, eight) => {
        const found = areas(mask, width, height, eight);
        const turned = mask.slice().reverse();
        const mirrored = mask.map((_, o) => mask[o - (o % width) + (width - 1 - (o % width))]!);
        const onSide = mask.map((_, o) => mask[(o % height) * width + Math.floor(o / height)]!);
        expect(areas(turned, width, height, eight)).toEqual(found);
        expect(areas(mirrored, width, height, eight)).toEqual(found);
        expect(areas(onSide, height, width, eight)).toEqual(found);
      }),
    );
  });

  it('cover the mask and nothing else; touching elements share a label, no label is empty', () => {
    fc.assert(
      fc.property(masks, fc.boolean(), ({ mask, width, height }, eight) => {
        const { count, label } = regionsOf(mask, 1, width, height, eight);
        expect(new Set(label.filter((one) => one > 0)).size).toBe(count);
        for (let o = 0; o < mask.length; o++) {
          expect(label[o] !== 0).toBe(mask[o] === 1);
          if (mask[o] === 0) continue;
          const i = o % width;
          if (i > 0 && mask[o - 1]) expect(label[o - 1]).toBe(label[o]);
          if (o >= width && mask[o - width]) expect(label[o - width]).toBe(label[o]);
          if (eight && o >= width && i > 0 && mask[o - width - 1])
            expect(label[o - width - 1]).toBe(label[o]);
        }
      }),
    );
  });

  it('of a chequer are one by corners and one an element by sides', () => {
    const chequer = Uint8Array.from({ length: 36 }, (_, o) => ((o % 6) + Math.floor(o / 6)) % 2);
    expect(regionsOf(chequer, 1, 6, 6, true).count).toBe(1);
    expect(regionsOf(chequer, 1, 6, 6, false).count).toBe(18);
    expect(regionsOf(chequer, 0, 6, 6, false).count).toBe(18);
  });
});
