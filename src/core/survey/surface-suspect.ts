import { leastSquares } from '../math/least-squares.ts';
import type { PlatePoint } from './plate-input.ts';
import { median, type Suspect } from './suspect.ts';

/** Robust sds from a smooth surface beyond which a height stands out. */
const farOut = 8;
const near = 3;
/** Fewer points than this show no smooth surface. */
const leastPoints = 12;
const slips = [-1, 10, 100, 25.4, 1000, -10, 0.1, 1 / 25.4, 0.001];

/** Heights that stand out from a smooth surface (bowl, saddle or dome) through the others; the largest first, five at most. */
export function heightSuspects(points: readonly PlatePoint[]): Suspect[] {
  const found: Suspect[] = [];
  if (points.length < leastPoints) return found;
  const [mx, my] = [middleOf(points.map((p) => p.x_mm)), middleOf(points.map((p) => p.y_mm))];
  const rowOf = ({ x_mm, y_mm }: PlatePoint) => {
    const [u, v] = [(x_mm - mx[0]) / mx[1], (y_mm - my[0]) / my[1]];
    return [1, u, v, u * u, u * v, v * v];
  };
  const rows = points.map(rowOf);
  let kept = points.map((_, i) => i);
  while (found.length < 5) {
    const fit = fitOf(
      kept.map((i) => rows[i]!),
      kept.map((i) => points[i]!.z_um),
    );
    if (!fit) return found;
    const sizes = fit.residuals.map(Math.abs);
    const scatter = 1.4826 * median(sizes);
    let worst = 0;
    for (const k of sizes.keys()) if (sizes[k]! > sizes[worst]!) worst = k;
    if (!(sizes[worst]! > farOut * Math.max(scatter, 1e-9))) return found;
    const index = kept[worst]!;
    const value = points[index]!.z_um;
    kept = kept.filter((i) => i !== index);
    const without = fitOf(
      kept.map((i) => rows[i]!),
      kept.map((i) => points[i]!.z_um),
    );
    if (!without) return found;
    const expected = without.coefficients.reduce((sum, part, j) => sum + part * rows[index]![j]!, 0);
    const left = 1.4826 * median(without.residuals.map(Math.abs));
    const times = slips.find((slip) => Math.abs(value / slip - expected) <= near * left);
    found.push({
      code: 'stands out',
      index,
      found: value,
      expected,
      ...(times === undefined ? {} : { times }),
    });
  }
  return found;
}

/** A fit, unless the points do not hold so many coefficients (two rows show no bow across). */
function fitOf(rows: readonly number[][], z: readonly number[]) {
  try {
    return leastSquares(rows, z);
  } catch (failure) {
    if (failure instanceof RangeError) return undefined;
    throw failure;
  }
}

/** Middle and half range of the places. */
function middleOf(values: readonly number[]): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [(low + high) / 2, (high - low) / 2 || 1];
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
