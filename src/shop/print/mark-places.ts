import type { Exclusion } from '../../core/print/exclusion.ts';
import { applied, type Homography, inverted, pxPerMm } from '../../core/print/homography.ts';
import type { PlaceMm, PlacePx, SurfaceSize } from '../../core/print/picture.ts';

export type Arrow = 'left' | 'right' | 'up' | 'down';

/** Where on the surface a place on the screen lies, mm, to a tenth. `onScreen`: surface, mm → screen, px. */
export function placeUnder(onScreen: Homography, at: PlacePx): PlaceMm {
  const { x, y } = applied(inverted(onScreen), at);
  return { x: tenths(x), y: tenths(y) };
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;

export const onFace = ({ x, y }: PlaceMm, { length_mm, width_mm }: SurfaceSize): boolean =>
  x >= 0 && x <= length_mm && y >= 0 && y <= width_mm;

/** The nearest place on the surface. */
export const broughtOn = ({ x, y }: PlaceMm, { length_mm, width_mm }: SurfaceSize): PlaceMm => ({
  x: Math.min(Math.max(x, 0), length_mm),
  y: Math.min(Math.max(y, 0), width_mm),
});

/**
 * A step on the surface that an arrow makes: along the surface's length or width, whichever runs the arrow's way there on the
 * screen, so that four arrows always are four ways.
 */
export function arrowStep(onScreen: Homography, at: PlaceMm, arrow: Arrow, step_mm: number): PlaceMm {
  const here = applied(onScreen, at);
  const way = (to: PlaceMm): PlacePx => {
    const there = applied(onScreen, { x: at.x + to.x, y: at.y + to.y });
    const length = Math.hypot(there.x - here.x, there.y - here.y);
    return { x: (there.x - here.x) / length, y: (there.y - here.y) / length };
  };
  const along = way({ x: 1, y: 0 });
  const across = way({ x: 0, y: 1 });
  const level = arrow === 'left' || arrow === 'right';
  const ahead = arrow === 'right' || arrow === 'down' ? step_mm : -step_mm;
  const lengthLevel = Math.abs(along.x) + Math.abs(across.y) >= Math.abs(along.y) + Math.abs(across.x);
  const isAlong = level === lengthLevel;
  const run = isAlong ? along : across;
  const by = (level ? run.x : run.y) >= 0 ? ahead : -ahead;
  return isAlong ? { x: by, y: 0 } : { x: 0, y: by };
}

/** How far a place lies from a mark, mm; 0 in it. */
export function distance(mark: Exclusion, at: PlaceMm): number {
  if (mark.type === 'circle') return Math.max(0, Math.hypot(at.x - mark.x, at.y - mark.y) - mark.r);
  if (mark.type === 'polyline') return Math.max(0, fromLine(mark.points, at) - mark.width / 2);
  const { points } = mark;
  const inside = points.reduce((odd, p, k) => {
    const q = points[(k + 1) % points.length]!;
    const crosses = p.y > at.y !== q.y > at.y && at.x < p.x + ((at.y - p.y) / (q.y - p.y)) * (q.x - p.x);
    return crosses ? !odd : odd;
  }, false);
  return inside ? 0 : fromLine([...points, points[0]!], at);
}

function fromLine(points: readonly PlaceMm[], at: PlaceMm): number {
  const legs = points.slice(1).map((q, k) => {
    const p = points[k]!;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - p.x) * dx + (at.y - p.y) * dy) / square));
    return Math.hypot(at.x - p.x - t * dx, at.y - p.y - t * dy);
  });
  return Math.min(...legs);
}

/** How many mm so many px on the screen are there: the more of the two main directions. */
export const millimetres = (onScreen: Homography, at: PlaceMm, px: number): number =>
  px / pxPerMm(onScreen, at);
