/** A straight line y = start + slope · x, fitted, with its doubts. */
export interface LineFit {
  readonly slope: number;
  /** Value at x = 0. */
  readonly start: number;
  readonly slope_sd: number;
  readonly start_sd: number;
  /** Covariance of start and slope. */
  readonly covariance: number;
  /** One a point: y less the line. */
  readonly residuals: readonly number[];
  /** Σ weight · residual²: chi-square when sds were given, the sum of squares when not. */
  readonly square: number;
  /** Points less two. */
  readonly degrees: number;
  /** Scatter about the line, √(square / degrees): in y's unit without sds, 1 for honest sds with them. 0 with no degree left. */
  readonly residual_sd: number;
  /** Weighted means: the line passes here, and slope and level are uncorrelated here. */
  readonly middle: readonly [x: number, y: number];
  /** Variance of the line's level at the middle. */
  readonly middle_variance: number;
}

/**
 * Straight line by least squares, ordinary or weighted, in sums about the mean so that far-off origins lose no digits.
 *
 *     slope = Σ w (x − x̄)(y − ȳ) / Σ w (x − x̄)²,   start = ȳ − slope · x̄                                        (1)
 *
 * Without sds all points count alike and the doubts come from the scatter (infinite with two points, whose scatter cannot be
 * seen); with sds the weights are 1/sd² and the doubts come from the sds alone, however the points scatter.
 *
 * @param x    n ≥ 2 places, not all the same
 * @param y    n values
 * @param sds  n standard deviations of y, above 0
 * @throws RangeError  numbers of points differ, fewer than two places, a value that is not finite, an sd not above 0
 * Source: NIST StRD Norris (checks/nist-strd.check.ts), ISO/TS 28037 clause 6 (checks/iso-28037.check.ts), GUM H.3 (checks/gum-h3.check.ts).
 * @example fitLine([0, 100, 200], [1, 3, 5]).slope      // 0.02
 */
export function fitLine(x: readonly number[], y: readonly number[], sds?: readonly number[]): LineFit {
  demandPoints(x, y, sds);
  const n = x.length;
  const w = sds ? sds.map((sd) => 1 / sd ** 2) : x.map(() => 1);
  const weight = sum(w);
  const x0 = weightedMean(w, x);
  const y0 = weightedMean(w, y);
  const spread = sum(w.map((wi, i) => wi * (x[i]! - x0) ** 2));
  const slope = sum(w.map((wi, i) => wi * (x[i]! - x0) * (y[i]! - y0))) / spread;
  const residuals = y.map((yi, i) => yi - y0 - slope * (x[i]! - x0));
  const square = sum(w.map((wi, i) => wi * residuals[i]! ** 2));
  const degrees = n - 2;
  const residual_sd = degrees > 0 ? Math.sqrt(square / degrees) : 0;
  const variance = sds ? 1 : degrees > 0 ? square / degrees : Infinity;
  const middle_variance = variance / weight;
  return {
    slope,
    start: y0 - slope * x0,
    slope_sd: Math.sqrt(variance / spread),
    start_sd: Math.sqrt(middle_variance + (x0 * x0 * variance) / spread),
    covariance: x0 === 0 ? 0 : (-x0 * variance) / spread,
    residuals,
    square,
    degrees,
    residual_sd,
    middle: [x0, y0],
    middle_variance,
  };
}

/** The fitted line at x, and the sd of the line there (not of a further reading). */
export function lineAt(fit: LineFit, x: number): { readonly value: number; readonly sd: number } {
  const [x0, y0] = fit.middle;
  const arm = x - x0;
  return {
    value: y0 + fit.slope * arm,
    sd: Math.sqrt(fit.middle_variance + (arm === 0 ? 0 : (arm * fit.slope_sd) ** 2)),
  };
}

/** Mean in two turns: the second takes off what rounding left in the first. */
export function mean(values: readonly number[]): number {
  return weightedMean(
    values.map(() => 1),
    values,
  );
}

/** Standard deviation of a sample, n − 1; about the mean, so that a far-off level loses no digits. */
export function sampleSd(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError(`${values.length} values; expected 2 or more`);
  const middle = mean(values);
  return Math.sqrt(sum(values.map((v) => (v - middle) ** 2)) / (values.length - 1));
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function weightedMean(w: readonly number[], values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('no values; expected 1 or more');
  const weight = sum(w);
  const first = sum(values.map((value, i) => w[i]! * value)) / weight;
  return first + sum(values.map((value, i) => w[i]! * (value - first))) / weight;
}

/** What every fit of a line asks of its points. @throws RangeError */
export function demandPoints(x: readonly number[], y: readonly number[], sds?: readonly number[]): void {
  if (x.length !== y.length)
    throw new RangeError(`${x.length} places and ${y.length} values; expected as many`);
  if (sds && sds.length !== y.length)
    throw new RangeError(`${sds.length} sds and ${y.length} values; expected as many`);
  const odd = [...x, ...y].find((value) => !Number.isFinite(value));
  if (odd !== undefined) throw new RangeError(`a point holds ${odd}; expected finite numbers`);
  const bad = sds?.find((sd) => !(Number.isFinite(sd) && sd > 0));
  if (bad !== undefined) throw new RangeError(`an sd is ${bad}; expected above 0`);
  if (new Set(x).size < 2) throw new RangeError('fewer than two places; a line needs two');
}
