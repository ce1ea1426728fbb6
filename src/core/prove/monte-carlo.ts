import { seededRandom } from '../math/random.ts';
import { type Distribution, drawn } from './distribution.ts';

/** What many draws of the inputs make of a result. */
export interface Sampled {
  readonly mean: number;
  /** One standard deviation. */
  readonly sd: number;
  /** The interval that leaves as many draws below as above. */
  readonly even: readonly [low: number, high: number];
  /** The shortest interval that holds as many. */
  readonly shortest: readonly [low: number, high: number];
  readonly trials: number;
}

/** How the draws are made. */
export interface Sampling {
  /** Any whole number; the same seed gives the same answer. */
  readonly seed: number;
  /** Default 100 000, at least 1000. */
  readonly trials?: number;
  /** Share of the draws the intervals hold; default 0.95. */
  readonly share?: number;
}

/**
 * Propagation of spreads by drawing: no straightening of the formula, no normal result assumed.
 *
 * @throws RangeError  too few trials, a share not between 0 and 1, or a draw for which the formula has no finite value
 * Source: JCGM 101:2008, 7.2–7.7, held to in checks/sums-uncertainty.check.ts.
 */
export function monteCarlo(
  of: (x: readonly number[]) => number,
  spreads: readonly Distribution[],
  sampling: Sampling,
): Sampled {
  const { seed, trials = 100_000, share = 0.95 } = sampling;
  if (!(Number.isInteger(trials) && trials >= 1000))
    throw new RangeError(`trials ${trials}; expected a whole number of 1000 or more`);
  if (!(share > 0 && share < 1)) throw new RangeError(`share ${share}; expected above 0 and below 1`);
  const random = seededRandom(seed);
  const values = new Float64Array(trials);
  for (let k = 0; k < trials; k++) values[k] = of(spreads.map((spread) => drawn(spread, random)));
  values.sort();
  if (!Number.isFinite(values[0]) || !Number.isFinite(values[trials - 1]))
    throw new RangeError('the formula has no finite value for some draws; its doubts are too large');
  const { mean, sd } = momentsOf(values);
  const inside = Math.round(share * trials);
  const skip = Math.round((trials - inside) / 2);
  let short = 0;
  for (let k = 1; k + inside - 1 < trials; k++)
    if (values[k + inside - 1]! - values[k]! < values[short + inside - 1]! - values[short]!) short = k;
  return {
    mean,
    sd,
    even: [values[skip]!, values[skip + inside - 1]!],
    shortest: [values[short]!, values[short + inside - 1]!],
    trials,
  };
}

/** Mean and sd in two passes, so that a small spread about a large value keeps its digits. */
function momentsOf(values: Float64Array): { mean: number; sd: number } {
  const first = values[0]!;
  let sum = 0;
  for (const value of values) sum += value - first;
  const off = sum / values.length;
  let squares = 0;
  for (const value of values) squares += (value - first - off) ** 2;
  return { mean: first + off, sd: Math.sqrt(squares / (values.length - 1)) };
}
