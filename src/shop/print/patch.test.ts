import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { excluded } from '../../core/print/excluded.ts';
import type { PlaceMm } from '../../core/print/picture.ts';
import { rasterPxPerMm } from '../../core/print/rectified.ts';
import { areaWithin } from './mark-area.ts';
import { outlineRefusal } from './mark-fit.ts';
import { dragged, moved, pointCanGo, withoutPoint, withPointAfter } from './mark-moves.ts';
import { undone } from './mark-undo.ts';
import { leftOutWords, markingAsk, markSize } from './mark-words.ts';
import {
  beginMark,
  leaveOff,
  lengthen,
  type MarkedFace,
  type Marking,
  pick,
  putInMiddle,
  tapped,
} from './marking.ts';

const face: MarkedFace = { length_mm: 180, width_mm: 80, units: 'metric' };
const none: Marking = { marks: [] };
const taps = (start: Marking, ...places: [number, number][]): Marking =>
  places.reduce((so, [x, y]) => tapped(so, { x, y }, face), start);
const patch = () => taps(beginMark(none, 'patch'), [20, 10], [70, 12], [60, 50], [25, 60]);
const words = (one: Marking) => one.said?.words ?? '';
const corners = (one: Marking, at = 0): readonly PlaceMm[] => {
  const mark = one.marks[at];
  if (mark?.type !== 'polygon') throw new Error('no patch');
  return mark.points;
};

describe('a patch, an area of any outline', () => {
  it('is its corners, tapped round it; with two it is half made, kept as such, and marks nothing', () => {
    const half = taps(beginMark(none, 'patch'), [20, 10], [70, 12]);
    expect(half).toMatchObject({
      marks: [],
      doing: 'patch',
      ends: [
        { x: 20, y: 10 },
        { x: 70, y: 12 },
      ],
    });
    expect(JSON.parse(JSON.stringify(half))).toEqual(half);
    expect(words(leaveOff(half))).toBe('The patch had fewer than three corners; nothing was marked.');
    expect(corners(patch())).toEqual([
      { x: 20, y: 10 },
      { x: 70, y: 12 },
      { x: 60, y: 50 },
      { x: 25, y: 60 },
    ]);
  });
  it('a tap on its first corner closes it, and the next tap makes nothing', () => {
    const closed = taps(patch(), [20.3, 10.2]);
    expect(closed.doing).toBeUndefined();
    expect(corners(closed)).toHaveLength(4);
    expect(corners(taps(closed, [100, 70]))).toHaveLength(4);
    expect(corners(taps(lengthen(pick(closed, 0)), [10, 40]))).toHaveLength(5);
  });
  it('says what to do at every step', () => {
    const asks = [0, 1, 2, 3].map((many) => {
      const so = taps(
        beginMark(none, 'patch'),
        ...(
          [
            [20, 10],
            [70, 12],
            [60, 50],
          ] as [number, number][]
        ).slice(0, many),
      );
      return markingAsk(
        so.doing,
        so.ends?.length ?? 0,
        so.marks.length,
        so.chosen === undefined ? undefined : 'patch',
      );
    });
    expect(asks).toEqual([
      'Tap one corner of the patch.',
      'Tap the patch’s second corner, going round it.',
      'Tap the patch’s third corner, going round it.',
      'Tap the patch’s next corner, or its first one to close it.',
    ]);
    expect(markSize(patch().marks[0]!, 'metric')).toBe('4 corners, 1\u00a0860\u00a0mm²');
    expect(leftOutWords(patch().marks)).toBe('1 patch is left out.');
  });
  it('by who cannot tap it is a square about the middle, to be moved from there', () => {
    const put = putInMiddle(beginMark(none, 'patch'), face);
    expect(corners(put)).toEqual([
      { x: 70, y: 20 },
      { x: 110, y: 20 },
      { x: 110, y: 60 },
      { x: 70, y: 60 },
    ]);
    expect(corners(moved(pick(put, 0, 2), { x: 5, y: 0 }, face))[2]).toEqual({ x: 115, y: 60 });
  });
  it('sides that cross, corners on one line and one corner twice are refused; nothing changes', () => {
    const wrong = (was: Marking, now: Marking, why: RegExp) => {
      expect(now.said?.refused).toBe(true);
      expect(words(now)).toMatch(why);
      expect(now.marks).toEqual(was.marks);
    };
    const three = taps(beginMark(none, 'patch'), [20, 10], [70, 12], [60, 50]);
    wrong(three, taps(three, [30, 5]), /sides would cross/);
    wrong(patch(), dragged(pick(patch(), 0), 3, { x: 90, y: 20 }, face), /sides would cross/);
    const two = taps(beginMark(none, 'patch'), [20, 10], [40, 10]);
    wrong(two, taps(two, [60, 10]), /on one line/);
    wrong(two, taps(two, [40.2, 10.1]), /a corner there already/);
    wrong(two, taps(two, [40, 95]), /off the face/);
  });
  it('one that a mask file crossed over may be moved as it is', () => {
    const points = [
      { x: 20, y: 10 },
      { x: 60, y: 50 },
      { x: 60, y: 10 },
      { x: 20, y: 50 },
    ];
    const crossed: Marking = { marks: [{ type: 'polygon', points }], chosen: 0 };
    expect(outlineRefusal(crossed.marks[0]!)).toMatch(/cross/);
    expect(corners(moved(crossed, { x: 5, y: 0 }, face))[0]).toEqual({ x: 25, y: 10 });
  });
  it('a corner is put in half way and taken out; three stay', () => {
    const more = withPointAfter(pick(patch(), 0, 3), face);
    expect(corners(more)[4]).toEqual({ x: 22.5, y: 35 });
    expect(more.point).toBe(4);
    const less = withoutPoint(withoutPoint(pick(more, 0, 4), face), face);
    expect(corners(less)).toHaveLength(4);
    const three = withoutPoint(pick(less, 0, 0), face);
    expect(corners(three)).toHaveLength(3);
    expect(pointCanGo(pick(three, 0, 1))).toBe(false);
    expect(withoutPoint(pick(three, 0, 1), face).marks).toEqual(three.marks);
  });
});

describe('the way back', () => {
  it('undoes each tap of a patch, half made too, and a whole drag at once', () => {
    const whole = patch();
    const dragging = [1, 2, 3].reduce((so, k) => dragged(so, 2, { x: 60 + k, y: 50 }, face), leaveOff(whole));
    expect(corners(dragging)[2]).toEqual({ x: 63, y: 50 });
    const before = undone(dragging);
    expect(corners(before)).toEqual(corners(whole));
    expect(words(before)).toBe('Undone.');
    const three = undone(before);
    expect(corners(three)).toHaveLength(3);
    expect(words(three)).toBe('Undone: corner 4 added.');
    const two = undone(three);
    expect(two).toMatchObject({ marks: [], ends: { length: 2 }, doing: 'patch' });
    expect(corners(taps(two, [60, 50]))).toEqual(corners(three));
    const nothing = undone(undone(two));
    expect(nothing.ends).toBeUndefined();
    expect(undone(nothing)).toBe(nothing);
  });
  it('a refused deed is no step', () => {
    const once = patch();
    expect(taps(once, [300, 300]).past).toEqual(once.past);
  });
});

it('its area by the shoelace formula is what the reading leaves out, wherever its corners are', () => {
  // Round a place within it, so that no sides cross.
  const ray = fc.record({
    angle: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
    far: fc.double({ min: 8, max: 39, noNaN: true }),
  });
  const outline = fc
    .array(ray, { minLength: 3, maxLength: 7 })
    .map((rays): PlaceMm[] =>
      rays
        .sort((a, b) => a.angle - b.angle)
        .map(({ angle, far }) => ({ x: 90 + far * Math.cos(angle), y: 40 + far * Math.sin(angle) })),
    );
  fc.assert(
    fc.property(outline, (points) => {
      const out = excluded([{ type: 'polygon', points }], 180 * rasterPxPerMm, 80 * rasterPxPerMm);
      const read_mm2 = out.reduce((sum, is) => sum + is, 0) / rasterPxPerMm ** 2;
      // An element too many or too few along each side.
      const round_mm = points.reduce((sum, p, k) => {
        const q = points[(k + 1) % points.length]!;
        return sum + Math.hypot(p.x - q.x, p.y - q.y);
      }, 0);
      expect(Math.abs(read_mm2 - areaWithin(points))).toBeLessThan((round_mm * 0.5) / rasterPxPerMm + 0.1);
    }),
    { numRuns: 100, seed: 20311126 },
  );
});
