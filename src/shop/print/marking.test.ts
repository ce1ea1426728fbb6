import { describe, expect, it } from 'vitest';
import type { Entry } from '../../core/ledger/entry.ts';
import type { Exclusion } from '../../core/print/exclusion.ts';
import { applied, surfaceToPhoto } from '../../core/print/homography.ts';
import type { Corners, PlaceMm } from '../../core/print/picture.ts';
import { markRefusal, marksBefore } from './mark-fit.ts';
import { dragged, moved, resized } from './mark-moves.ts';
import { type Arrow, arrowStep, distance, placeUnder } from './mark-places.ts';
import { sizeWords, steppedSize } from './mark-sizes.ts';
import { undone } from './mark-undo.ts';
import { areaWords, leftOutWords, netAreaWords, placeWords } from './mark-words.ts';
import {
  beginMark,
  leaveOff,
  lengthen,
  type MarkedFace,
  type Marking,
  pick,
  putInMiddle,
  removed,
  tapped,
} from './marking.ts';

const face: MarkedFace = { length_mm: 180, width_mm: 80, units: 'metric' };
const none: Marking = { marks: [] };
const taps = (start: Marking, ...places: [number, number][]): Marking =>
  places.reduce((so, [x, y]) => tapped(so, { x, y }, face), start);
const groove = () => taps(beginMark(none, 'groove'), [14, 66], [52, 14], [90, 66]);
const both = () => taps(beginMark(leaveOff(groove()), 'hole'), [20.4, 22]);
const words = (one: Marking) => one.said?.words ?? '';

describe('marking by taps', () => {
  it('a groove is its ends and bends, a hole its middle; the last made is the one to work on', () => {
    const { marks, chosen } = both();
    expect(marks).toEqual([
      {
        type: 'polyline',
        width: 5,
        points: [
          { x: 14, y: 66 },
          { x: 52, y: 14 },
          { x: 90, y: 66 },
        ],
      },
      { type: 'circle', x: 20.4, y: 22, r: 5 },
    ]);
    expect(chosen).toBe(1);
  });
  it('a groove with one end is half made: kept as such, and marks nothing when it is left', () => {
    const half = taps(beginMark(none, 'groove'), [14, 66]);
    expect(half).toMatchObject({ marks: [], ends: [{ x: 14, y: 66 }], doing: 'groove' });
    expect(JSON.parse(JSON.stringify(half))).toEqual(half);
    const left = leaveOff(half);
    expect(left.marks).toEqual([]);
    expect(left.ends).toBeUndefined();
    expect(words(left)).toContain('nothing was marked');
  });
  it('the next of its kind begins as large as the last', () => {
    const large = resized(both(), 6, face);
    const more = taps(beginMark(large, 'hole'), [120, 40]);
    expect(more.marks.at(-1)).toEqual({ type: 'circle', x: 120, y: 40, r: 6.5 });
  });
  it('a tap without a tool picks what is near, and makes nothing', () => {
    const near = tapped(leaveOff(both()), { x: 60, y: 26 }, face, 4);
    expect(near.chosen).toBe(0);
    expect(tapped(leaveOff(both()), { x: 160, y: 70 }, face, 4).marks).toHaveLength(2);
    expect(tapped({ marks: both().marks }, { x: 160, y: 70 }, face, 4).chosen).toBeUndefined();
  });
  it('without a pointer they begin in the middle of the face', () => {
    expect(putInMiddle(beginMark(none, 'hole'), face).marks[0]).toMatchObject({ x: 90, y: 40 });
    expect(putInMiddle(beginMark(none, 'groove'), face).marks[0]).toMatchObject({
      points: [
        { x: 70, y: 40 },
        { x: 110, y: 40 },
      ],
    });
  });
});

describe('what is wrong is refused in words, and nothing changes', () => {
  const wrong = (was: Marking, now: Marking, why: RegExp) => {
    expect(now.said?.refused).toBe(true);
    expect(words(now)).toMatch(why);
    expect(now.marks).toEqual(was.marks);
  };
  it('a tap off the face; a miss of its edge by a millimetre is the edge', () => {
    const begun = beginMark(none, 'hole');
    wrong(begun, tapped(begun, { x: 190, y: 30 }, face), /off the face/);
    expect(tapped(begun, { x: 181, y: 30 }, face).marks[0]).toMatchObject({ x: 180, y: 30 });
  });
  it('two ends in one place', () => {
    const begun = taps(beginMark(none, 'groove'), [14, 66]);
    wrong(begun, taps(begun, [14.2, 66.1]), /two ends lie in two places/);
    wrong(groove(), taps(groove(), [90.3, 66]), /a point there already/);
  });
  it('no width, and more than the face has', () => {
    wrong(both(), resized(both(), -20, face), /diameter is above 0.*It stays 10\u00a0mm/);
    wrong(both(), resized(both(), 400, face), /no wider than the face, 180\u00a0mm.*It stays/);
    const flat: Exclusion = {
      type: 'polyline',
      width: 0,
      points: [
        { x: 1, y: 2 },
        { x: 30, y: 2 },
      ],
    };
    expect(markRefusal(flat, face, 'metric')).toMatch(/width is above 0/);
  });
  it('off the face by a step or a drag', () => {
    const edge = taps(beginMark(none, 'hole'), [179.8, 30]);
    wrong(edge, moved(edge, { x: 0.5, y: 0 }, face), /off the face; it stays/);
    const pulled = dragged(edge, 0, { x: 230, y: 31 }, face);
    expect(pulled.marks[0]).toMatchObject({ x: 180, y: 31 });
    expect(words(pulled)).toBe('It stays on the face.');
  });
  it('a hole that has gone off a face, and corners of a patch in one place', () => {
    expect(markRefusal({ type: 'circle', x: 200, y: 30, r: 6 }, face, 'metric')).toMatch(
      /off the face.*180\u00a0mm by 80\u00a0mm/,
    );
    expect(markRefusal({ type: 'circle', x: 184, y: 30, r: 6 }, face, 'metric')).toBeUndefined();
    const dot = { x: 4, y: 5 };
    expect(markRefusal({ type: 'polygon', points: [dot, dot, dot] }, face, 'metric')).toMatch(
      /corners lie apart/,
    );
  });
});

describe('moving, sizing, taking away', () => {
  it('moves one point, or all of it', () => {
    const one = moved(pick(groove(), 0, 1), { x: 0.5, y: -5 }, face);
    expect(one.marks[0]).toMatchObject({
      points: [
        { x: 14, y: 66 },
        { x: 52.5, y: 9 },
        { x: 90, y: 66 },
      ],
    });
    const all = moved(pick(groove(), 0), { x: 0.5, y: 5 }, face);
    expect(all.marks[0]).toMatchObject({
      points: [
        { x: 14.5, y: 71 },
        { x: 52.5, y: 19 },
        { x: 90.5, y: 71 },
      ],
    });
  });
  it('points a file put off the face may come back', () => {
    const out: Marking = {
      marks: [
        {
          type: 'polyline',
          width: 4,
          points: [
            { x: -6, y: 20 },
            { x: 60, y: 20 },
          ],
        },
      ],
      chosen: 0,
    };
    expect(moved(out, { x: 5, y: 0 }, face).marks[0]).toMatchObject({
      points: [
        { x: -1, y: 20 },
        { x: 65, y: 20 },
      ],
    });
  });
  it('a groove is lengthened after its last end', () => {
    const longer = taps(lengthen(pick(leaveOff(groove()), 0)), [128, 14]);
    expect(longer.marks[0]).toMatchObject({ points: { length: 4, 3: { x: 128, y: 14 } } });
  });
  it('what is taken away comes back where it was, the last first', () => {
    const start = both();
    const gone = removed(removed(start, 0), 0);
    expect(gone.marks).toEqual([]);
    expect(words(gone)).toBe('Hole 1 taken away.');
    const back = undone(undone(gone));
    expect(back.marks).toEqual(start.marks);
    expect(words(back)).toBe('Undone: groove 1 taken away.');
  });
});

describe('sizes in the units in use', () => {
  it('half a millimetre or 1/32 in a press, on whole steps', () => {
    expect(steppedSize(4.76, 1, 'metric')).toBe(5);
    expect(steppedSize(4.76, -1, 'metric')).toBe(4.5);
    expect(steppedSize(5, 1, 'metric')).toBe(5.5);
    expect(steppedSize(25.4 * (3 / 16), 1, 'inch')).toBeCloseTo(25.4 * (7 / 32), 3);
    expect(steppedSize(5, -1, 'inch')).toBeCloseTo(25.4 * (3 / 16), 3);
  });
  it('says fractions as drills and cutters have them, and decimals else', () => {
    expect(sizeWords(6.5, 'metric')).toBe('6.5\u00a0mm');
    expect(sizeWords(4.7625, 'inch')).toBe('3/16\u00a0in');
    expect(sizeWords(31.75, 'inch')).toBe('1 1/4\u00a0in');
    expect(sizeWords(50.8, 'inch')).toBe('2\u00a0in');
    expect(sizeWords(5, 'inch')).toBe('0.197\u00a0in');
  });
  it('areas and places', () => {
    expect(areaWords(13402.6, 'metric')).toBe('13\u00a0403\u00a0mm²');
    expect(areaWords(645.16, 'inch')).toBe('1.00\u00a0in²');
    expect(netAreaWords(13402.6, face, 'metric')).toBe(
      'Net area 13\u00a0403\u00a0mm² of 14\u00a0400\u00a0mm².',
    );
    const places = { minus_end: 'headstock end', minus_side: 'operator’s side' };
    expect(placeWords({ x: 88, y: 20.5 }, places, 'metric')).toBe(
      '88\u00a0mm from the headstock end, 20.5\u00a0mm from the operator’s side',
    );
    expect(leftOutWords(both().marks)).toBe('1 groove and 1 hole are left out.');
    expect(leftOutWords([both().marks[1]!])).toBe('1 hole is left out.');
    expect(leftOutWords([])).toBe('');
  });
});

describe('places on the surface and on the screen', () => {
  const corners: Corners = [
    { x: 571, y: 228 },
    { x: 1626, y: 113 },
    { x: 1767, y: 670 },
    { x: 552, y: 808 },
  ];
  const h = surfaceToPhoto(corners, face);
  it('a tap comes back to the place it was meant for', () => {
    const at = { x: 52.3, y: 14.7 };
    expect(placeUnder(h, applied(h, at))).toEqual(at);
  });
  it('an arrow moves by its step the way it points on the screen, however the part lies', () => {
    const turned = (k: number) => [0, 1, 2, 3].map((j) => corners[(j + k) % 4]!) as unknown as Corners;
    const mirrored = [corners[3], corners[2], corners[1], corners[0]] as const;
    for (const laid of [turned(0), turned(1), turned(2), turned(3), mirrored])
      for (const [arrow, x, y] of [
        ['left', -1, 0],
        ['right', 1, 0],
        ['up', 0, -1],
        ['down', 0, 1],
      ] as [Arrow, number, number][]) {
        const to = surfaceToPhoto(laid, face);
        const at: PlaceMm = { x: 70, y: 33 };
        const step = arrowStep(to, at, arrow, 5);
        expect(Math.hypot(step.x, step.y)).toBe(5);
        const [a, b] = [applied(to, at), applied(to, { x: at.x + step.x, y: at.y + step.y })];
        const way = (b.x - a.x) * x + (b.y - a.y) * y;
        expect(way / Math.hypot(b.x - a.x, b.y - a.y)).toBeGreaterThan(0.9);
      }
  });
  it('how far a mark is from a place: nothing within it', () => {
    const line: Exclusion = {
      type: 'polyline',
      width: 4,
      points: [
        { x: 10, y: 10 },
        { x: 40, y: 10 },
      ],
    };
    expect(distance(line, { x: 25, y: 17 })).toBe(5);
    expect(distance(line, { x: 25, y: 11.5 })).toBe(0);
    expect(distance({ type: 'circle', x: 10, y: 10, r: 3 }, { x: 16, y: 18 })).toBe(7);
    const patch: Exclusion = {
      type: 'polygon',
      points: [
        { x: 0, y: 0 },
        { x: 20, y: 0 },
        { x: 20, y: 10 },
      ],
    };
    expect(distance(patch, { x: 15, y: 3 })).toBe(0);
    expect(distance(patch, { x: 26, y: 5 })).toBe(6);
  });
});

describe('marks belong to the pad', () => {
  const hole = (x: number): Exclusion => ({ type: 'circle', x, y: 30, r: 5 });
  const taken = (seq: number, pad: string, exclusions?: readonly Exclusion[]): Entry => ({
    seq,
    id: `e${seq}`,
    at: '2031-11-25T14:32:00+01:00',
    kind: 'print photographed',
    round: seq,
    pad,
    photo: 'a'.repeat(64),
    corners: [
      { x: 0, y: 0 },
      { x: 180, y: 0 },
      { x: 180, y: 80 },
      { x: 0, y: 80 },
    ],
    size: { length_mm: 180, width_mm: 80 },
    ...(exclusions ? { exclusions } : {}),
    shares: [0.3],
    density_per_25mm: 12,
    bearing_pct: 30,
    confidence: 0.9,
    warnings: [],
  });
  it('the last photo of the pad that says any gives them', () => {
    const live = [
      taken(1, 'flat', [hole(20)]),
      taken(2, 'flat', [hole(30)]),
      taken(3, 'vee', [hole(40)]),
      taken(4, 'flat'),
    ];
    expect(marksBefore(live, 'flat', face)).toEqual([hole(30)]);
    expect(marksBefore(live, 'gib', face)).toEqual([]);
  });
  it('all taken away stays so, and what is off the face by now stays behind', () => {
    expect(marksBefore([taken(1, 'flat', [hole(20)]), taken(2, 'flat', [])], 'flat', face)).toEqual([]);
    expect(
      marksBefore([taken(1, 'flat', [hole(20), hole(170)])], 'flat', { length_mm: 150, width_mm: 80 }),
    ).toEqual([hole(20)]);
  });
});
