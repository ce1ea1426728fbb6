import type { Led } from './follow-on.ts';
import type { PlatePoint } from './plate-input.ts';

/** Points a plane is laid through. */
const through = 6;
/** A plane that is carried on too far tells nothing. */
const mostNoise = 5;

/**
 * Ways to lead to a point where points are no grid: the least-squares plane through the nearest points all round, and through the nearest to each
 * of four sides alone.
 *
 * @param near  points about it
 */
export function planesTo(points: readonly PlatePoint[], i: number, near: readonly number[]): Led[] {
  const { x_mm, y_mm } = points[i]!;
  const away = near
    .map((k) => ({ k, dx: points[k]!.x_mm - x_mm, dy: points[k]!.y_mm - y_mm }))
    .sort((a, b) => Math.hypot(a.dx, a.dy) - Math.hypot(b.dx, b.dy));
  const sides: ((one: (typeof away)[number]) => boolean)[] = [
    () => true,
    ({ dx }) => dx < 0,
    ({ dx }) => dx > 0,
    ({ dy }) => dy < 0,
    ({ dy }) => dy > 0,
  ];
  return sides.flatMap((side): Led[] => {
    const its = away.filter(side).slice(0, through);
    const shares = its.length < 4 ? undefined : planeShares(its);
    if (!shares) return [];
    const noise = Math.hypot(1, ...shares);
    return noise > mostNoise ? [] : [{ at: its.map(({ k }) => k), shares, noise }];
  });
}

/** How much of each height the least-squares plane has at (0, 0); nothing where the points lie in a line. */
function planeShares(its: readonly { readonly dx: number; readonly dy: number }[]): number[] | undefined {
  const size = Math.max(...its.map(({ dx, dy }) => Math.hypot(dx, dy)));
  const rows = its.map(({ dx, dy }) => [dx / size, dy / size] as const);
  const n = its.length;
  const sum = (of: (u: number, v: number) => number) => rows.reduce((total, [u, v]) => total + of(u, v), 0);
  const [mu, mv] = [sum((u) => u) / n, sum((_, v) => v) / n];
  const uu = sum((u) => (u - mu) ** 2);
  const vv = sum((_, v) => (v - mv) ** 2);
  const uv = sum((u, v) => (u - mu) * (v - mv));
  const determinant = uu * vv - uv * uv;
  if (!(determinant > 1e-6 * (uu + vv) ** 2)) return undefined;
  // Mean less the slopes to the mean place.
  const [a, b] = [(vv * mu - uv * mv) / determinant, (uu * mv - uv * mu) / determinant];
  return rows.map(([u, v]) => 1 / n - a * (u - mu) - b * (v - mv));
}
