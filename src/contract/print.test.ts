import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersAsk, cornersFit, maskFile, printAsk } from './print.ts';
import { BadInput } from './refusal.ts';

const corners = '569,228 1626.5,113 1767,670 572,808';
const sound = { corners, size: '160x95' };

function refusal(ask: () => unknown): string {
  try {
    ask();
  } catch (failure) {
    expect(failure).toBeInstanceOf(BadInput);
    return (failure as BadInput).message;
  }
  throw new Error('it was taken');
}

describe('what is asked of a photo', () => {
  it('corners and size as text or as places and numbers are the same', () => {
    const written = {
      corners: [
        { x: 569, y: 228 },
        { x: 1626.5, y: 113 },
        { x: 1767, y: 670 },
        { x: 572, y: 808 },
      ],
      size: { length_mm: 160, width_mm: 95 },
    };
    expect(printAsk(sound)).toEqual(written);
    expect(printAsk(written)).toEqual(written);
    expect(printAsk({ ...sound, size: ' 160 × 95 mm ' })).toEqual(written);
    expect(printAsk({ size: '160x95', cell_mm: 25.4, zones: 6 })).toEqual({
      size: written.size,
      cell_mm: 25.4,
      zones: 6,
    });
  });

  it('a mask has circles, polylines and polygons, their points as {x, y} or [x, y]', () => {
    const groove = { type: 'polyline', width: 4 };
    const points = [
      { x: 10, y: 5 },
      { x: 60, y: 5 },
    ];
    const pairs = [
      [10, 5],
      [60, 5],
    ];
    expect(maskFile({ exclusions: [{ ...groove, points: pairs }] })).toEqual([{ ...groove, points }]);
    expect(maskFile({ exclusions: [{ ...groove, points }] })).toEqual([{ ...groove, points }]);
    expect(maskFile({ exclusions: [{ type: 'circle', x: 3, y: 4, r: 5 }] })).toHaveLength(1);
  });

  it.each<[string, unknown, RegExp]>([
    ['nothing', undefined, /input: nothing; expected an object/],
    ['no size', { corners }, /size: nothing/],
    [
      'three corners',
      { ...sound, corners: '1,2 300,4 500,600' },
      /corners: 3 corners; expected four.*\(0,0\)/,
    ],
    ['no corners', { ...sound, corners: ' ' }, /corners: 0 corners/],
    ['a word for a number', { ...sound, corners: '1,2 300,left 500,600 7,800' }, /corners\[1\]: "300,left"/],
    ['a number left out', { ...sound, corners: '1,2 300, 500,600 7,800' }, /corners\[1\]: "300,"/],
    ['corners that cross', { ...sound, corners: '0,0 900,600 900,0 0,600' }, /corners: .*cross over/],
    ['a dent', { ...sound, corners: '0,0 900,0 300,200 0,600' }, /corners: .*dent/],
    ['three on a line', { ...sound, corners: '0,0 450,0 900,0 0,600' }, /corners: .*one line/],
    ['all in one place', { ...sound, corners: '5,5 5,5 5,5 5,5' }, /16 pixels apart/],
    ['no such size', { ...sound, size: '160' }, /size: "160"; expected length and width in mm, as "400x80"/],
    ['a size too small', { ...sound, size: '160x4' }, /size.width_mm: 4; expected at least 5/],
    ['a size too large', { ...sound, size: '3001x80' }, /size.length_mm: 3001; expected at most 3000/],
    ['more than a photo shows', { ...sound, size: '2000x900' }, /size: .*250000 mm²/],
    ['another square', { ...sound, cell_mm: 10 }, /cell_mm: 10; expected 25 or 25.4/],
    ['half a zone', { ...sound, zones: 2.5 }, /zones: 2.5/],
    ['an unknown key', { ...sound, sizes: 1 }, /sizes: a key that is not known/],
    ['an endless place', { ...sound, corners: [{ x: Number.NaN, y: 1 }] }, /corners\[0\].x/],
    [
      'a hole without radius',
      { ...sound, exclusions: [{ type: 'circle', x: 1, y: 2, r: 0 }] },
      /exclusions\[0\].r: 0; expected more than 0/,
    ],
    [
      'another shape',
      { ...sound, exclusions: [{ type: 'star' }] },
      /exclusions\[0\].type: .*; expected "circle" or "polyline"/,
    ],
    [
      'a polygon of two points',
      {
        ...sound,
        exclusions: [
          {
            type: 'polygon',
            points: [
              [1, 2],
              [3, 4],
            ],
          },
        ],
      },
      /exclusions\[0\].points/,
    ],
  ])('refuses %s by its field', (_, ask, words) => {
    expect(refusal(() => printAsk(ask))).toMatch(words);
  });

  it('takes every convex face and refuses it with two corners swapped', () => {
    const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    const push = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        turn,
        fc.array(push, { minLength: 8, maxLength: 8 }),
        fc.boolean(),
        (angle, d, mirrored) => {
          const face = [-1, 1, 1, -1].map((sx, k) => {
            const x = 400 * sx + d[2 * k]!;
            const y = 200 * (k < 2 ? -1 : 1) + d[2 * k + 1]!;
            return {
              x: x * Math.cos(angle) - y * Math.sin(angle),
              y: x * Math.sin(angle) + y * Math.cos(angle),
            };
          });
          const given = mirrored ? face.toReversed() : face;
          expect(printAsk({ corners: given, size: '160x95' }).corners).toEqual(given);
          const swapped = [given[0], given[2], given[1], given[3]];
          expect(refusal(() => printAsk({ corners: swapped, size: '160x95' }))).toMatch(/cross over/);
        },
      ),
    );
  });

  it('corners far outside the photo are refused with its size', () => {
    const asked = printAsk(sound).corners!;
    expect(() => cornersFit(asked, { width_px: 2592, height_px: 1944 })).not.toThrow();
    expect(refusal(() => cornersFit(asked, { width_px: 800, height_px: 600 }))).toMatch(
      /corners\[1\]: 1626.5,113; expected a place in or near the photo of 800 × 600 pixels/,
    );
  });

  it('looking for corners asks for the size alone', () => {
    expect(cornersAsk({ size: '160x95' })).toEqual({ size: { length_mm: 160, width_mm: 95 } });
    expect(refusal(() => cornersAsk(sound))).toMatch(/corners: a key that is not known/);
  });
});
