import type { Exclusion } from '../../core/print/exclusion.ts';
import type { PlaceMm, SurfaceSize } from '../../core/print/picture.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { leastApart_mm, markRefusal, mostMarks } from './mark-fit.ts';
import { broughtOn, distance, onFace } from './mark-places.ts';
import { firstSize_mm, sizeOf, sizeWords, steppedSize, withSize } from './mark-sizes.ts';
import { markKind, markName } from './mark-words.ts';

/** Grooves and holes being marked, half-made ones too: what a reload must give back. */
export interface Marking {
  readonly marks: readonly Exclusion[];
  /** What a tap on the photo makes: a hole, a groove's end, or one more point of the groove that is chosen. */
  readonly doing?: 'hole' | 'groove' | 'more';
  /** A groove's first end, while it has no other. */
  readonly begun?: PlaceMm;
  readonly chosen?: number;
  /** Which of its points moves; absent: all of it. */
  readonly point?: number;
  /** Taken away, the last at the end, each with its place in the list. */
  readonly removed?: readonly { readonly mark: Exclusion; readonly at: number }[];
  /** What came of the last deed. */
  readonly said?: { readonly words: string; readonly refused: boolean };
}

/** What they are marked on. */
export interface MarkedFace extends SurfaceSize {
  readonly units: UnitSystem;
}

/** A tap is off the face when it misses it by more than this, mm; nearer, the edge was meant. */
const miss_mm = 2;

type Chosen = { readonly mark: Exclusion; readonly at: number };
const chosenOf = ({ marks, chosen }: Marking): Chosen | undefined => {
  const mark = chosen === undefined ? undefined : marks[chosen];
  return mark && { mark, at: chosen! };
};

const told = (words: string) => ({ said: { words, refused: false } });
const refused = (was: Marking, words: string): Marking => ({ ...was, said: { words, refused: true } });

/** Without what is asked for or said: marks, and what was taken from them. */
const settled = ({ marks, removed }: Marking): Marking => ({ marks, ...(removed ? { removed } : {}) });

/** The next tap begins a hole or a groove. */
export const beginMark = (was: Marking, doing: 'hole' | 'groove'): Marking => ({ ...settled(was), doing });

/** The next taps add points to the groove that is chosen, after its last. */
export const lengthen = (was: Marking): Marking =>
  chosenOf(was)?.mark.type === 'polyline' ? { ...settled(was), chosen: was.chosen!, doing: 'more' } : was;

/** Taps make nothing any more; a groove that has one end only is let go. */
export const leaveOff = (was: Marking): Marking => ({
  ...settled(was),
  ...(was.chosen === undefined ? {} : { chosen: was.chosen }),
  ...(was.begun ? told('The groove had one end only; nothing was marked.') : {}),
});

/** A mark to work on, and one of its points or all of it. */
export const pick = (was: Marking, chosen: number, point?: number): Marking => ({
  ...settled(was),
  chosen,
  ...(point === undefined ? {} : { point }),
});

/** What is begun, by who cannot tap: across the middle of the face, to be moved from there. */
export function putInMiddle(was: Marking, face: MarkedFace): Marking {
  const middle = { x: face.length_mm / 2, y: face.width_mm / 2 };
  if (was.doing === 'hole') return tapped(was, middle, face);
  const reach = Math.min(face.length_mm, face.width_mm) / 4;
  return [-reach, reach].reduce<Marking>((so, by) => tapped(so, { x: middle.x + by, y: middle.y }, face), {
    ...settled(was),
    doing: 'groove',
  });
}

/** A tap on the photo, as a place on the surface; `reach_mm`: how near a mark it must be to pick it. */
export function tapped(was: Marking, tap: PlaceMm, face: MarkedFace, reach_mm = 0): Marking {
  const at = broughtOn(tap, face);
  if (was.doing && Math.hypot(tap.x - at.x, tap.y - at.y) > miss_mm)
    return refused(was, 'That is off the face; nothing was marked. Tap within its edge.');
  switch (was.doing) {
    case 'hole':
      return added(was, { type: 'circle', ...at, r: sizeFor('hole', was, face) / 2 }, face);
    case 'groove': {
      if (!was.begun) return { ...settled(was), doing: 'groove', begun: at };
      const groove = {
        type: 'polyline',
        width: sizeFor('groove', was, face),
        points: [was.begun, at],
      } as const;
      return added(was, groove, face);
    }
    case 'more':
      return lengthened(was, at, face);
    default: {
      const near = was.marks
        .map((mark, k) => ({ k, far: distance(mark, tap) }))
        .sort((a, b) => a.far - b.far)[0];
      return near && near.far <= reach_mm ? pick(was, near.k) : was;
    }
  }
}

/** As large as the last of its kind, which on one pad is most often right. */
const sizeFor = (kind: 'hole' | 'groove', { marks }: Marking, { units }: MarkedFace): number => {
  const last = marks.findLast((mark) => markKind(mark) === kind);
  return (last && sizeOf(last)) ?? firstSize_mm(kind, units);
};

function added(was: Marking, mark: Exclusion, face: MarkedFace): Marking {
  if (was.marks.length >= mostMarks) return refused(was, `A face has at most ${mostMarks} marks.`);
  const wrong = markRefusal(mark, face, face.units);
  if (wrong) return refused(was, wrong);
  const chosen = was.marks.length;
  return {
    ...settled(was),
    marks: [...was.marks, mark],
    chosen,
    ...(mark.type === 'circle' ? {} : { doing: 'more' as const }),
    ...told(`${markName(mark, chosen)} marked, ${sizeWords(sizeOf(mark) ?? 0, face.units)}. Set its size.`),
  };
}

function lengthened(was: Marking, at: PlaceMm, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (one?.mark.type !== 'polyline') return leaveOff(was);
  const { points } = one.mark;
  const last = points.at(-1)!;
  if (Math.hypot(at.x - last.x, at.y - last.y) < leastApart_mm)
    return refused(was, 'The groove has a point there already. Tap its next one.');
  return replaced(was, { ...one.mark, points: [...points, at] }, face, 'more');
}

function replaced(was: Marking, mark: Exclusion, face: MarkedFace, doing?: 'more'): Marking {
  const wrong = markRefusal(mark, face, face.units);
  if (wrong) return refused(was, wrong);
  return {
    ...pick(was, was.chosen!, was.point),
    marks: was.marks.map((one, k) => (k === was.chosen ? mark : one)),
    ...(doing ? { doing } : {}),
  };
}

const pointsOf = (mark: Exclusion): readonly PlaceMm[] => (mark.type === 'circle' ? [mark] : mark.points);
const clean = (mm: number): number => Math.round(mm * 1e4) / 1e4;
const cleanPlace = ({ x, y }: PlaceMm): PlaceMm => ({ x: clean(x), y: clean(y) });

function withPoints(mark: Exclusion, points: readonly PlaceMm[]): Exclusion {
  const clear = points.map(cleanPlace);
  return mark.type === 'circle' ? { ...mark, ...clear[0]! } : { ...mark, points: clear };
}

/** One of the chosen mark's points, put somewhere on the surface; off it, it stays at the edge. */
export function dragged(was: Marking, point: number, to: PlaceMm, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one) return was;
  const at = broughtOn(to, face);
  const points = pointsOf(one.mark).map((place, k) => (k === point ? at : place));
  const now = replaced({ ...was, point }, withPoints(one.mark, points), face);
  return onFace(to, face) || now.said?.refused ? now : refused(now, 'It stays on the face.');
}

/** The chosen point moved by so much, or the whole mark: what goes off the face is refused. */
export function moved(was: Marking, by: PlaceMm, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one) return was;
  const points = pointsOf(one.mark).map(
    (place, k): PlaceMm =>
      was.point === undefined || was.point === k ? { x: place.x + by.x, y: place.y + by.y } : place,
  );
  const moving = was.point === undefined ? points : [points[was.point]!];
  // What a file put off the face may come back to it, and not go farther.
  const before = pointsOf(one.mark);
  const leaves = moving.some((place, k) => {
    const from = was.point === undefined ? before[k]! : before[was.point]!;
    return !onFace(place, face) && onFace(from, face);
  });
  if (leaves) return refused(was, 'That would be off the face; it stays where it was.');
  return replaced(was, withPoints(one.mark, points), face);
}

/** The chosen mark larger or smaller by so many steps. */
export function resized(was: Marking, steps: number, face: MarkedFace): Marking {
  const one = chosenOf(was);
  const size = one && sizeOf(one.mark);
  if (!one || size === undefined) return was;
  const mm = steppedSize(size, steps, face.units);
  const wrong = markRefusal(withSize(one.mark, mm), face, face.units);
  if (wrong) return refused(was, `${wrong} It stays ${sizeWords(size, face.units)}.`);
  return replaced(was, withSize(one.mark, mm), face, was.doing === 'more' ? 'more' : undefined);
}

/** The mark taken away. */
export function removed(was: Marking, at: number): Marking {
  const mark = was.marks[at];
  if (!mark) return was;
  return {
    marks: was.marks.filter((_, k) => k !== at),
    removed: [...(was.removed ?? []), { mark, at }],
    ...told(`${markName(mark, at)} taken away.`),
  };
}

/** The mark that was taken away last, back where it was. */
export function putBack(was: Marking): Marking {
  const last = was.removed?.at(-1);
  if (!last) return was;
  const at = Math.min(last.at, was.marks.length);
  return {
    marks: was.marks.toSpliced(at, 0, last.mark),
    removed: was.removed!.slice(0, -1),
    chosen: at,
    ...told(`${markName(last.mark, at)} is back.`),
  };
}
