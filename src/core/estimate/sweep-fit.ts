import { slope } from '../body/displacement.ts';
import { chiSquareBeyond } from '../math/chi-square.ts';
import { fitLine, type LineFit, lineAt } from '../math/line-fit.ts';
import { type Sweep, sweepDistances } from '../observe/sweep.ts';

/** A reading left out of a sweep, and how far it stands from the fit of the others. */
export interface Outlier {
  readonly point: number;
  readonly reading_um: number;
  /** Reading less the fit of the others, µm. */
  readonly off_um: number;
}

/** A sweep looked at by itself, before anything else is known. */
export interface SweepFit {
  readonly name: string;
  /** One a point: whether it counts. */
  readonly kept: readonly boolean[];
  readonly outliers: readonly Outlier[];
  /** Rise of the reading along the sweep, µrad, by least squares over the kept points, and its sd from reading scatter alone. */
  readonly slope_urad: number;
  readonly slope_sd_urad: number;
  /** Fitted reading at the sweep's first point, µm. */
  readonly start_um: number;
  /** Sum of squared residuals over the stated variance, and its degrees of freedom. */
  readonly chi_square: number;
  readonly degrees: number;
  /** What the stated sd must be multiplied with: 1 unless the scatter is larger than chance allows (chi-square beyond 0.999). */
  readonly widen: number;
}

/** A point further than this from its own sweep's fit, in stated sd, is left out. */
const outlierSds = 4;
/** More than this share of far points is scatter, not a bumped point. */
const mostLeftOut = 0.25;
/** Scatter is called larger than stated when chance gives it less often than this. */
const scatterChance = 0.001;

/**
 * Fits a sweep by itself: a straight line over the distance along it, bumped points left out.
 *
 * The search starts from the line through two of the points that has the least median deviation, so that a few bumped
 * points cannot pull the fit to themselves; it ends at the set of points that all lie within 4 sd of their own
 * least-squares line.
 */
export function fitSweep(sweep: Sweep): SweepFit {
  const x = sweepDistances(sweep);
  const y = sweep.readings_um;
  const sd = sweep.reading_sd_um;
  const everyone = y.map(() => true);
  const kept = y.length >= 5 ? withoutOutliers(x, y, sd) : everyone;
  const line = lineOf(x, y, kept, sd);
  const { square: chi_square, degrees } = line;
  const loose = degrees > 0 && chiSquareBeyond(chi_square, degrees) < scatterChance;
  const widen = loose ? Math.sqrt(chi_square / degrees) : 1;
  return {
    name: sweep.name,
    kept,
    outliers: y.flatMap((reading_um, point) =>
      kept[point] ? [] : [{ point, reading_um, off_um: reading_um - alongLine(line)(x[point]!) }],
    ),
    slope_urad: slope(line.slope, 1),
    slope_sd_urad: slope(widen * line.slope_sd, 1),
    start_um: line.start,
    chi_square,
    degrees,
    widen,
  };
}

/** A fitted line as a function of the distance. */
const alongLine =
  (line: LineFit) =>
  (d: number): number =>
    lineAt(line, d).value;

/** The kept points' line, each weighed with the stated sd. */
function lineOf(x: readonly number[], y: readonly number[], kept: readonly boolean[], sd: number): LineFit {
  const used = (values: readonly number[]) => values.filter((_, i) => kept[i]);
  const places = used(x);
  return fitLine(
    places,
    used(y),
    places.map(() => sd),
  );
}

function withoutOutliers(x: readonly number[], y: readonly number[], sd: number): boolean[] {
  const everyone = y.map(() => true);
  const { at, median_um } = steadiestPair(x, y);
  // Many far points are scatter larger than stated; a bumped one is then known by standing out of that scatter.
  // Its sd from the median: Rousseeuw and Leroy, Robust Regression and Outlier Detection, 1987, 1.4826 (1 + 5 / (n − 2)).
  const scatter = 1.4826 * (1 + 5 / (x.length - 2)) * median_um;
  return settled(x, y, at, sd) ?? (scatter > sd ? settled(x, y, at, scatter) : undefined) ?? everyone;
}

/** The points that all lie within 4 sd of their own line, searched from a first one; undefined when they are too few. */
function settled(
  x: readonly number[],
  y: readonly number[],
  first: (d: number) => number,
  sd: number,
): boolean[] | undefined {
  let kept = within(x, y, first, outlierSds * sd);
  for (let turn = 0; turn < 30; turn++) {
    if (!enough(x, kept)) return undefined;
    const next = within(x, y, alongLine(lineOf(x, y, kept, sd)), outlierSds * sd);
    if (next.every((keep, i) => keep === kept[i])) return next;
    kept = next;
  }
  return enough(x, kept) ? kept : undefined;
}

/** Enough points are left, and they still span the sweep. */
function enough(x: readonly number[], kept: readonly boolean[]): boolean {
  const left = x.filter((_, i) => kept[i]);
  const lost = x.length - left.length;
  return lost <= Math.max(1, Math.floor(x.length * mostLeftOut)) && new Set(left).size >= 2;
}

const within = (
  x: readonly number[],
  y: readonly number[],
  at: (d: number) => number,
  most_um: number,
): boolean[] => y.map((reading, i) => Math.abs(reading - at(x[i]!)) <= most_um);

/** The line through two of the points with the least median deviation of all of them. */
function steadiestPair(
  x: readonly number[],
  y: readonly number[],
): { at: (d: number) => number; median_um: number } {
  let best = Infinity;
  let chosen = (_: number) => 0;
  const middle = Math.floor(x.length / 2);
  for (let i = 0; i < x.length; i++)
    for (let j = i + 1; j < x.length; j++) {
      if (x[j] === x[i]) continue;
      const perMm = (y[j]! - y[i]!) / (x[j]! - x[i]!);
      const at = (d: number) => y[i]! + perMm * (d - x[i]!);
      // The median is below the best one only if more than half of them are: counted before anything is sorted.
      let nearer = 0;
      for (let k = 0; k < x.length; k++) if (Math.abs(y[k]! - at(x[k]!)) < best) nearer++;
      if (nearer <= middle) continue;
      best = x.map((d, k) => Math.abs(y[k]! - at(d))).sort((a, b) => a - b)[middle]!;
      chosen = at;
    }
  return { at: chosen, median_um: best };
}
