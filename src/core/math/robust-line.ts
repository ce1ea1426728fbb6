import { demandPoints, fitLine } from './line-fit.ts';
import { normalQuantile } from './normal.ts';

/** A straight line that a few wild points do not move. */
export interface RobustLine {
  readonly slope: number;
  /** Value at x = 0. */
  readonly start: number;
}

/** The middle value; the mean of the two middle ones when they are even in number. */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('no values; expected 1 or more');
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Slopes of all pairs of points at different places, in order of size. */
function pairSlopes(x: readonly number[], y: readonly number[]): number[] {
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i++)
    for (let j = i + 1; j < x.length; j++) if (x[i] !== x[j]) slopes.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
  return slopes.sort((a, b) => a - b);
}

/**
 * Line of Theil and Sen: the median of the slopes of all pairs. Up to 29 of 100 points may be wild.
 *
 * `start` is the median of y − slope · x, so that half the points lie on each side. (Others take
 * median(y) − slope · median(x), which is another number.)
 * Source: P. K. Sen, JASA 63 (1968), 1379–1389; checks/robust-lines.check.ts.
 */
export function theilSen(x: readonly number[], y: readonly number[]): RobustLine {
  demandPoints(x, y);
  const slope = median(pairSlopes(x, y));
  return { slope, start: median(y.map((value, i) => value - slope * x[i]!)) };
}

/** How often values come more than once: what ties take off the variance of Kendall's sum. */
function tieLoss(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].reduce((loss, k) => loss + k * (k - 1) * (2 * k + 5), 0);
}

/**
 * Interval of the Theil–Sen slope, from the ranks of the pair slopes; it asks nothing of the scatter's shape.
 * @param share  0 to 1: how often the interval should hold the true slope
 */
export function theilSenInterval(
  x: readonly number[],
  y: readonly number[],
  share: number,
): { readonly low: number; readonly high: number } {
  demandPoints(x, y);
  const slopes = pairSlopes(x, y);
  const n = y.length;
  const variance = (n * (n - 1) * (2 * n + 5) - tieLoss(x) - tieLoss(y)) / 18;
  const reach = normalQuantile((1 + share) / 2) * Math.sqrt(variance);
  const upper = Math.min(slopes.length - 1, Math.round((slopes.length + reach) / 2));
  const lower = Math.max(0, Math.round((slopes.length - reach) / 2) - 1);
  return { low: slopes[lower]!, high: slopes[upper]! };
}

/** Median absolute deviation of normal scatter, in sds: Φ⁻¹(3/4), as the source rounds it. */
const madOfNormal = 0.6745;
/** Points within this many scales count in full: 95 % as sharp as least squares when nothing is wild. */
const huberReach = 1.345;

/**
 * Huber's line: least squares for the near points, far ones weighted down by their distance.
 *
 *     weight = min(1, k · scale / |residual|),   scale = median |residual| / 0.6745                             (2)
 *
 * Repeated until nothing moves. Points far out along x can still pull it; the scale is 0 when half the points lie on a
 * line, and that line is then the answer.
 * Source: Huber, as rlm of MASS computes it; checks/robust-lines.check.ts.
 */
export function huberLine(
  x: readonly number[],
  y: readonly number[],
  reach = huberReach,
): RobustLine & { readonly scale: number } {
  let fit = fitLine(x, y);
  let scale = Infinity;
  for (let turn = 0; turn < 500; turn++) {
    const sizes = fit.residuals.map(Math.abs);
    scale = median(sizes) / madOfNormal;
    if (scale <= Number.EPSILON * Math.max(...y.map(Math.abs))) {
      scale = 0;
      break;
    }
    // A weight of w is an sd of 1/√w.
    const next = fitLine(
      x,
      y,
      sizes.map((size) => Math.sqrt(Math.max(1, size / (reach * scale)))),
    );
    const moved = Math.max(...next.residuals.map((r, i) => Math.abs(r - fit.residuals[i]!)));
    fit = next;
    if (moved <= 1e-12 * scale) break;
  }
  return { slope: fit.slope, start: fit.start, scale };
}
