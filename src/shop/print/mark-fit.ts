import type { Entry } from '../../core/ledger/entry.ts';
import type { Exclusion } from '../../core/print/exclusion.ts';
import type { PlaceMm, SurfaceSize } from '../../core/print/picture.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { areaWithin } from './mark-area.ts';
import { sizeOf, sizeWords } from './mark-sizes.ts';
import { markKind } from './mark-words.ts';

/** Points nearer than this are one, mm. */
export const leastApart_mm = 1;
/** More than any pad has, and than are taken. */
export const mostMarks = 500;

/** Why a mark cannot be left out of this face, in words; undefined where it can. */
export function markRefusal(mark: Exclusion, face: SurfaceSize, units: UnitSystem): string | undefined {
  const kind = markKind(mark);
  const size = sizeOf(mark);
  const what = kind === 'hole' ? 'diameter' : 'width';
  if (size !== undefined && !(size > 0))
    return `A ${kind}’s ${what} is above 0; ${sizeWords(Math.max(0, size), units)} marks nothing.`;
  const widest = Math.max(face.length_mm, face.width_mm);
  if (size !== undefined && size > widest)
    return `A ${kind} is no wider than the face, ${sizeWords(widest, units)}; that would be ${sizeWords(size, units)}.`;
  if (!touches(mark, face))
    return `That ${kind} would lie off the face, which is ${sizeWords(face.length_mm, units)} by ${sizeWords(face.width_mm, units)}.`;
  if (mark.type !== 'circle' && !isSpread(mark.points))
    return mark.type === 'polyline'
      ? 'A groove’s two ends lie in two places; these are one. Tap its other end, or mark a hole.'
      : 'A patch’s corners lie apart; these are in one place.';
  if (mark.type !== 'circle' && mark.points.length > mostMarks)
    return `A ${kind} has at most ${mostMarks} points.`;
  return undefined;
}

/** Smaller marks nothing that can be seen, mm². */
const leastPatch_mm2 = 1;

/** Why a patch cannot have this outline; undefined where it can, and for all that is no patch. A mask file may have any. */
export function outlineRefusal(mark: Exclusion): string | undefined {
  if (mark.type !== 'polygon') return undefined;
  if (crosses(mark.points)) return 'Its sides would cross there. Go round the patch corner by corner.';
  if (areaWithin(mark.points) < leastPatch_mm2)
    return 'Those corners lie on one line and hold no area. Tap beside it.';
  return undefined;
}

/** Whether two sides that are not neighbours meet. */
function crosses(points: readonly PlaceMm[]): boolean {
  const many = points.length;
  const end = (k: number): PlaceMm => points[(k + 1) % many]!;
  for (let i = 0; i < many; i++)
    for (let j = i + 2; j < many; j++) {
      if (i === 0 && j === many - 1) continue;
      if (meet(points[i]!, end(i), points[j]!, end(j))) return true;
    }
  return false;
}

/** Twice the area of a triangle, plus where it turns one way. */
const turn = (a: PlaceMm, b: PlaceMm, c: PlaceMm): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function meet(a: PlaceMm, b: PlaceMm, c: PlaceMm, d: PlaceMm): boolean {
  const [p, q, r, s] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (p * q < 0 && r * s < 0) return true;
  const on = (from: PlaceMm, to: PlaceMm, at: PlaceMm): boolean =>
    Math.min(from.x, to.x) <= at.x &&
    at.x <= Math.max(from.x, to.x) &&
    Math.min(from.y, to.y) <= at.y &&
    at.y <= Math.max(from.y, to.y);
  return (
    (p === 0 && on(a, b, c)) ||
    (q === 0 && on(a, b, d)) ||
    (r === 0 && on(c, d, a)) ||
    (s === 0 && on(c, d, b))
  );
}

/** Whether any of it can lie on the face: by the box that holds it. */
function touches(mark: Exclusion, { length_mm, width_mm }: SurfaceSize): boolean {
  const points: readonly PlaceMm[] = mark.type === 'circle' ? [mark] : mark.points;
  const reach = (sizeOf(mark) ?? 0) / 2;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return (
    Math.max(...xs) + reach > 0 &&
    Math.min(...xs) - reach < length_mm &&
    Math.max(...ys) + reach > 0 &&
    Math.min(...ys) - reach < width_mm
  );
}

const isSpread = (points: readonly PlaceMm[]): boolean =>
  points.some((p) => Math.hypot(p.x - points[0]!.x, p.y - points[0]!.y) >= leastApart_mm);

/**
 * Marks that a pad's print begins with: those of its last photo in this job that has any said of it. An empty list counts: there
 * they were all taken away. A mark that is off the face by now, since its size was amended, stays behind.
 */
export function marksBefore(live: readonly Entry[], pad: string, face: SurfaceSize): readonly Exclusion[] {
  const last = live.findLast(
    (entry) => entry.kind === 'print photographed' && entry.pad === pad && entry.exclusions !== undefined,
  );
  const marks = last?.kind === 'print photographed' ? (last.exclusions ?? []) : [];
  return marks.filter((mark) => markRefusal(mark, face, 'metric') === undefined);
}
