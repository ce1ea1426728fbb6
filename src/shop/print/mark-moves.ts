import type { Exclusion } from '../../core/print/exclusion.ts';
import type { PlaceMm } from '../../core/print/picture.ts';
import { markRefusal } from './mark-fit.ts';
import { broughtOn, onFace } from './mark-places.ts';
import { sizeOf, sizeWords, steppedSize, withSize } from './mark-sizes.ts';
import { step } from './mark-undo.ts';
import { pointName } from './mark-words.ts';
import { chosenOf, type MarkedFace, type Marking, pick, refused, replaced, told } from './marking.ts';

const pointsOf = (mark: Exclusion): readonly PlaceMm[] => (mark.type === 'circle' ? [mark] : mark.points);
const clean = (mm: number): number => Math.round(mm * 1e4) / 1e4;
const cleanPlace = ({ x, y }: PlaceMm): PlaceMm => ({ x: clean(x), y: clean(y) });

function withPoints(mark: Exclusion, points: readonly PlaceMm[]): Exclusion {
  const clear = points.map(cleanPlace);
  return mark.type === 'circle' ? { ...mark, ...clear[0]! } : { ...mark, points: clear };
}

/** Moves of one point, or of the whole, that follow one another are one step back. */
const moves = (was: Marking, point: number | undefined): string => `place ${was.chosen} ${point ?? 'all'}`;

/** One of the chosen mark's points, put somewhere on the surface; off it, it stays at the edge. */
export function dragged(was: Marking, point: number, to: PlaceMm, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one) return was;
  const at = broughtOn(to, face);
  const points = pointsOf(one.mark).map((place, k) => (k === point ? at : place));
  const doing = was.doing === 'more' ? 'more' : undefined;
  const now = replaced({ ...was, point }, withPoints(one.mark, points), face, doing);
  if (now.said?.refused) return now;
  const held = onFace(to, face) ? now : refused(now, 'It stays on the face.');
  return step(was, held, moves(was, point));
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
  return step(was, replaced(was, withPoints(one.mark, points), face), moves(was, was.point));
}

/** The chosen mark larger or smaller by so many steps. */
export function resized(was: Marking, steps: number, face: MarkedFace): Marking {
  const one = chosenOf(was);
  const size = one && sizeOf(one.mark);
  if (!one || size === undefined) return was;
  const mm = steppedSize(size, steps, face.units);
  const wrong = markRefusal(withSize(one.mark, mm), face, face.units);
  if (wrong) return refused(was, `${wrong} It stays ${sizeWords(size, face.units)}.`);
  const now = replaced(was, withSize(one.mark, mm), face, was.doing === 'more' ? 'more' : undefined);
  return step(was, now, `size ${was.chosen}`);
}

/** Fewest points that make a groove, and a patch. */
const fewest = { polyline: 2, polygon: 3 } as const;

/** Whether the chosen point can be taken out: a groove keeps two ends, a patch three corners, a hole its middle. */
export function pointCanGo(was: Marking): boolean {
  const one = chosenOf(was);
  return (
    one !== undefined &&
    one.mark.type !== 'circle' &&
    was.point !== undefined &&
    one.mark.points.length > fewest[one.mark.type]
  );
}

/** The chosen point taken out of its groove or patch. */
export function withoutPoint(was: Marking, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one || one.mark.type === 'circle' || !pointCanGo(was)) return was;
  const left = one.mark.points.filter((_, k) => k !== was.point);
  const now = replaced(pick(was, was.chosen!), { ...one.mark, points: left }, face);
  if (now.said?.refused) return now;
  return step(was, { ...now, ...told(`${pointName(one.mark, was.point!)} taken out.`) });
}

/** A new point half way from the chosen one to the next, to be moved from there; after a groove's last there is no next. */
export function withPointAfter(was: Marking, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one || one.mark.type === 'circle' || was.point === undefined) return was;
  const { points, type } = one.mark;
  const from = points[was.point]!;
  const to = points[was.point + 1] ?? (type === 'polygon' ? points[0] : undefined);
  if (!to) return was;
  const between = cleanPlace({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  const at = was.point + 1;
  const mark = { ...one.mark, points: points.toSpliced(at, 0, between) };
  const now = replaced({ ...pick(was, was.chosen!, at), past: was.past ?? [] }, mark, face);
  if (now.said?.refused) return now;
  return step(was, { ...now, ...told(`${pointName(mark, at)} put in. Move it to its place.`) });
}
