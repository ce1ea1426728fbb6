import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applied, surfaceToPhoto } from '../core/print/homography.ts';
import type { Corners } from '../core/print/picture.ts';
import { contactPicture } from './print-contact.ts';
import { stageFit, stageGrips } from './print-overlay-corners.ts';
import { squareOverlay } from './print-overlay-squares.ts';
import { overlayView } from './print-overlay-view.ts';
import { zoneOverlay } from './print-overlay-zones.ts';
import { nodesOf, type Shape } from './shape.ts';

const size = { length_mm: 480, width_mm: 60 };
/** A long pad lying a little askew in a photo of 4000 × 3000. */
const corners: Corners = [
  { x: 3757, y: 1802 },
  { x: 240, y: 1622 },
  { x: 283, y: 1197 },
  { x: 3760, y: 1371 },
];
const ends = { minus: 'headstock end', plus: 'tailstock end' };
const phone = overlayView({ corners, size, width: 358, most_height: 520 });
const plates = (drawn: Shape) => nodesOf(drawn).filter(({ tag }) => tag === 'rect');
const texts = (drawn: Shape) =>
  nodesOf(drawn)
    .filter(({ tag }) => tag === 'text')
    .map(({ children }) => String(children[0]));

describe('the part of a photo that is shown', () => {
  it('takes the surface where the photo’s own pixels come to lie', () => {
    const toPhoto = surfaceToPhoto(corners, size);
    for (const place of [
      { x: 0, y: 0 },
      { x: 480, y: 60 },
      { x: 111, y: 22 },
    ]) {
      const pixel = applied(toPhoto, place);
      const at = applied(phone.onScreen, place);
      expect(at.x).toBeCloseTo(phone.left + (pixel.x + 0.5) * phone.scale, 6);
      expect(at.y).toBeCloseTo(phone.top + (pixel.y + 0.5) * phone.scale, 6);
    }
  });
  it('is as wide as the room, and wider where squares need it', () => {
    expect(phone.width).toBe(358);
    const near = overlayView({ corners, size, width: 358, most_height: 520, squares: { px: 40, mm: 25 } });
    expect(near.width).toBeGreaterThan(700);
    const [a, b] = [0, 25].map((x) => applied(near.onScreen, { x: 200 + x, y: 30 }));
    expect(Math.hypot(b!.x - a!.x, b!.y - a!.y)).toBeGreaterThan(39);
  });
});

describe('zones over a photo', () => {
  const drawn = (
    zones: readonly { first: string; other?: string; short?: string }[],
    at: Corners = corners,
  ) =>
    zoneOverlay({
      title: 't',
      view: overlayView({ corners: at, size, width: 358, most_height: 520 }),
      size,
      zones,
      ends,
    });
  const six = [38, 33, 27, 27, 23, 18].map((share) => ({
    first: `${share} %`,
    other: `${share} passes`,
    short: `${share}×`,
  }));
  it('says every share from the minus end, with the short word where zones are narrow', () => {
    const said = texts(drawn(six));
    expect(said.filter((text) => text.endsWith('%'))).toEqual(six.map(({ first }) => first));
    expect(said.filter((text) => text.endsWith('×'))).toHaveLength(6);
    expect(said).toEqual(expect.arrayContaining(['headstock end', 'tailstock end']));
  });
  it('keeps its words inside the drawing and apart from each other, whichever way the pad lies', () => {
    for (const turn_deg of [0, 90, 180, 270, 20]) {
      const turn = (turn_deg * Math.PI) / 180;
      const turned = corners.map(({ x, y }) => ({
        x: 2000 + (x - 2000) * Math.cos(turn) - (y - 1500) * Math.sin(turn),
        y: 1500 + (x - 2000) * Math.sin(turn) + (y - 1500) * Math.cos(turn),
      })) as unknown as Corners;
      const shape = drawn(six, turned);
      const boxes = plates(shape).map(({ attributes: a }) => [a.x, a.y, a.width, a.height].map(Number));
      for (const [x, y, width, height] of boxes as [number, number, number, number][]) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(x + width).toBeLessThanOrEqual(Number(shape.attributes.width));
        expect(y + height).toBeLessThanOrEqual(Number(shape.attributes.height));
      }
      const zones = boxes.slice(0, 12) as [number, number, number, number][];
      zones.forEach(([x, y, width, height], i) => {
        for (const [x2, y2, width2, height2] of zones.slice(i + 1)) {
          const apart =
            x + width <= x2 + 0.5 ||
            x2 + width2 <= x + 0.5 ||
            y + height <= y2 + 0.5 ||
            y2 + height2 <= y + 0.5;
          expect(apart, `turned ${turn_deg}`).toBe(true);
        }
      });
    }
  });
});

describe('squares over a photo', () => {
  const cell = { bearing_pct: 20, net_mm2: 625, unreadable_pct: 0, partial: false };
  it('count in the middle; cut ones in brackets, unreadable ones a dash, slivers none', () => {
    const drawn = squareOverlay({
      title: 't',
      view: phone,
      size,
      cell_mm: 25,
      cells: [
        { ...cell, col: 0, row: 0, count: 17 },
        { ...cell, col: 1, row: 0, count: 12, unreadable_pct: 9 },
        { ...cell, col: 3, row: 2, count: 3, partial: true },
        { ...cell, col: 19, row: 1, count: 2, partial: true },
      ],
      spots: [{ x_mm: 10, y_mm: 20 }],
      ends,
    });
    expect(texts(drawn).slice(0, 3)).toEqual(['17', '–', '(3)']);
    expect(texts(drawn)).not.toContain('(2)');
    const [count] = nodesOf(drawn).filter(({ tag }) => tag === 'text');
    const middle = applied(phone.onScreen, { x: 12.5, y: 12.5 });
    expect(count!.attributes.x).toBeCloseTo(middle.x, 6);
  });
});

describe('grips of corners', () => {
  it('stay on the stage and never cover each other, however narrow the figure', () => {
    const coordinate = fc.integer({ min: 0, max: 3999 });
    fc.assert(
      fc.property(
        fc.record({
          x: coordinate,
          y: fc.integer({ min: 0, max: 2999 }),
          long: fc.integer({ min: 800, max: 3900 }),
          wide: fc.integer({ min: 20, max: 2000 }),
          turn: fc.double({ min: 0, max: 6.3, noNaN: true }),
        }),
        ({ x, y, long, wide, turn }) => {
          const at = (u: number, v: number) => ({
            x: Math.min(3999, Math.max(0, x + u * long * Math.cos(turn) - v * wide * Math.sin(turn))),
            y: Math.min(2999, Math.max(0, y + u * long * Math.sin(turn) + v * wide * Math.cos(turn))),
          });
          const fit = stageFit({ width_px: 4000, height_px: 3000 }, 358, 420);
          const grips = stageGrips([at(0, 0), at(1, 0), at(1, 1), at(0, 1)], fit);
          grips.forEach((p, i) => {
            expect(p.x).toBeGreaterThanOrEqual(24);
            expect(p.x).toBeLessThanOrEqual(fit.width - 24);
            expect(p.y).toBeGreaterThanOrEqual(24);
            expect(p.y).toBeLessThanOrEqual(fit.height - 24);
            for (const q of grips.slice(i + 1))
              expect(Math.max(Math.abs(p.x - q.x), Math.abs(p.y - q.y))).toBeGreaterThanOrEqual(48);
          });
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the map of contact as a picture', () => {
  it('blue where it bears, hatched where burnished, clear where bare: told apart without colour', () => {
    const row = (kind: number) => contactPicture(new Uint8Array(36).fill(kind), 36, 1, 2);
    const pixels = (kind: number) =>
      Array.from({ length: 36 }, (_, k) => [...row(kind).slice(4 * k, 4 * k + 4)].join(' '));
    expect(new Set(pixels(0))).toEqual(new Set(['0 0 0 0']));
    expect(new Set(pixels(1)).size).toBe(1);
    const [r, , b, a] = row(1);
    expect(b! - r!).toBeGreaterThan(100);
    expect(a).toBeGreaterThan(128);
    for (const kind of [2, 3]) expect(new Set(pixels(kind)).size).toBe(2);
    expect(new Set(pixels(4)).size).toBe(2);
  });
});
