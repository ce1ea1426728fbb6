import type { PlatePoint } from './plate-input.ts';
import { standingOut } from './standing-out.ts';
import { surfaceReadings } from './surface-follow-on.ts';
import { otherUnit, type Suspect } from './suspect.ts';

/** Fewer points than this show no surface of their own. */
const leastPoints = 12;

/**
 * Heights over a surface that look like slips: each kind of slip is weighed against how rough the surface is round the point, and the instrument's
 * division. They are named, the clearest first, never dropped.
 */
export function heightSuspects(points: readonly PlatePoint[]): Suspect[] {
  if (points.length < leastPoints) return [];
  const heights = points.map((point) => point.z_um);
  const units = otherUnit(heights);
  const others = standingOut(surfaceReadings(points), heights, heights);
  return [...units, ...others.filter((one) => units.every((unit) => unit.index !== one.index))];
}

/** Places that an otherwise full grid lacks, in order of rows; nothing when the points are no grid. */
export function missingPlaces(
  points: readonly PlatePoint[],
): { readonly x_mm: number; readonly y_mm: number }[] {
  const columns = [...new Set(points.map((point) => point.x_mm))].sort((a, b) => a - b);
  const rows = [...new Set(points.map((point) => point.y_mm))].sort((a, b) => a - b);
  const whole = columns.length * rows.length;
  if (columns.length < 3 || rows.length < 3 || points.length >= whole || points.length < 0.8 * whole)
    return [];
  const there = new Set(points.map((point) => `${point.x_mm} ${point.y_mm}`));
  return rows.flatMap((y_mm) =>
    columns.flatMap((x_mm) => (there.has(`${x_mm} ${y_mm}`) ? [] : [{ x_mm, y_mm }])),
  );
}
