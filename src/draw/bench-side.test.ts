import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pad } from '../core/body/pad.ts';
import type { Slide } from '../core/body/slide.ts';
import type { Vector } from '../core/body/vector.ts';
import type { PlaceWords } from '../core/ledger/setup.ts';
import { benchWords, onBench } from './bench-side.ts';

const pad = (name: string, centre_mm: Vector, normal: Vector): Pad => ({
  name,
  centre_mm,
  normal,
  length_mm: 470,
  width_mm: 31,
  zones: 6,
  material: 'liner',
});
const saddle: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [pad('front flank', [3, -11, 2], [0, -0.7, 0.6]), pad('flat', [5, 310, -4], [0, 0, 1])],
};
const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: 'operator’s side',
  plus_side: 'back of the machine',
  travel: 'x',
};

/** A solid turned by an angle about an axis, by Rodrigues' formula: nothing of bench-side.ts is in it. */
function turned(p: Vector, axis: Vector, angle: number): Vector {
  const [ux, uy, uz] = axis;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const along = (ux * p[0] + uy * p[1] + uz * p[2]) * (1 - c);
  return [
    p[0] * c + (uy * p[2] - uz * p[1]) * s + ux * along,
    p[1] * c + (uz * p[0] - ux * p[2]) * s + uy * along,
    p[2] * c + (ux * p[1] - uy * p[0]) * s + uz * along,
  ];
}
const place = fc.tuple(
  fc.double({ min: -400, max: 400, noNaN: true }),
  fc.double({ min: -400, max: 400, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
);

describe('a part lies on the bench as a solid half turned, seen from above', () => {
  it.each([
    ['end over end', [0, 1, 0]],
    ['front to back', [1, 0, 0]],
  ] as const)('turned %s is half a turn about %j', (how, axis) => {
    fc.assert(
      fc.property(place, (p) => {
        const seen = onBench(saddle, how).place(p);
        const [x, y, z] = turned(p, axis, Math.PI);
        expect(seen.right_mm).toBeCloseTo(x, 6);
        expect(seen.away_mm).toBeCloseTo(y, 6);
        expect(seen.up_mm).toBeCloseTo(z, 6);
      }),
    );
  });

  it('is never mirrored: right × away = up, whatever the travel and whichever way the pads look', () => {
    for (const [free, normal] of [
      ['x', [0, 0.2, 1]],
      ['x', [0, -1, 0.1]],
      ['y', [0.3, 0, 1]],
      ['y', [0.1, 0, -1]],
      ['z', [0.2, -1, 0]],
    ] as const) {
      const slide: Slide = { name: 'part', free, pads: [pad('face', [12, 34, 56], normal)] };
      for (const how of ['end over end', 'front to back'] as const) {
        const { right, away, up } = onBench(slide, how);
        const cross = [
          right[1] * away[2] - right[2] * away[1],
          right[2] * away[0] - right[0] * away[2],
          right[0] * away[1] - right[1] * away[0],
        ];
        cross.forEach((part, i) => {
          expect(part).toBeCloseTo(up[i]!, 12);
        });
      }
    }
  });

  it('brings the faces up', () => {
    // The face of the flat looks down on its way, against the pad's normal.
    const seen = onBench(saddle, 'front to back').place([0, 0, -1]);
    expect(seen.up_mm).toBe(1);
  });
});

describe('the corner to find first', () => {
  it('lies near right when the part was turned end over end', () => {
    expect(benchWords(onBench(saddle, 'end over end'), places)).toEqual({
      left: 'tailstock end',
      right: 'headstock end',
      far: 'back of the machine',
      near: 'operator’s side',
      corner: { end: 'headstock end', side: 'operator’s side', at: 'right', edge: 'near' },
    });
  });
  it('lies far left when it was turned front to back', () => {
    expect(benchWords(onBench(saddle, 'front to back'), places)).toEqual({
      left: 'headstock end',
      right: 'tailstock end',
      far: 'operator’s side',
      near: 'back of the machine',
      corner: { end: 'headstock end', side: 'operator’s side', at: 'left', edge: 'far' },
    });
  });
});
