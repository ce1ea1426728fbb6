import { chiSquareBeyond } from '../math/chi-square.ts';
import { fitLine } from '../math/line-fit.ts';

/** What a run there and a run back over the same places say together. */
export interface ThereAndBack {
  /** Mean of both runs at each place: a steady drift and a jump at the turn add the same to every one, and so drop out of the form. */
  readonly mean: readonly number[];
  /** Back less there at each place, in order there. */
  readonly differences: readonly number[];
  /** Drift from one reading to the next, in the readings' unit, with its sd. */
  readonly drift: number;
  readonly drift_sd: number;
  /** A jump at the turn, as when the instrument was lifted off. */
  readonly jump: number;
  /** What drift and jump leave of each difference. */
  readonly left: readonly number[];
  /** One reading's sd as these differences show it; 0 with fewer than three places. */
  readonly scatter: number;
  /** The place whose difference is left furthest from the others. */
  readonly worst: number;
}

/**
 * Two runs over the same places, the second back from the far end.
 *
 *     backᵢ − thereᵢ = jump + drift · (2n − 1 − 2i) + noise                                 (1)
 *
 * Readings are taken at an even pace: place i is passed at i, and again at 2n − 1 − i. The mean of both falls on the same moment for every
 * place, so that a steady drift tilts or lifts the whole and bends nothing.
 *
 * @param there  n ≥ 2 readings in order
 * @param back   n readings in the order they were taken: the last place first
 * @throws RangeError  numbers of readings differ
 */
export function thereAndBack(there: readonly number[], back: readonly number[]): ThereAndBack {
  const n = there.length;
  if (back.length !== n)
    throw new RangeError(`${n} readings there and ${back.length} back; expected as many`);
  const returned = back.toReversed();
  const differences = returned.map((value, i) => value - there[i]!);
  const apart = differences.map((_, i) => 2 * n - 1 - 2 * i);
  const fit = fitLine(apart, differences);
  const sizes = fit.residuals.map(Math.abs);
  return {
    mean: there.map((value, i) => (value + returned[i]!) / 2),
    differences,
    drift: fit.slope,
    drift_sd: n > 2 ? fit.slope_sd : 0,
    jump: fit.start,
    left: fit.residuals,
    scatter: fit.residual_sd / Math.SQRT2,
    worst: sizes.indexOf(Math.max(...sizes)),
  };
}

/** Beyond this chance scatter is larger than stated. */
const beyondChance = 0.001;

/**
 * How many times larger than stated one reading's sd must be taken, 1 when the runs agree within chance.
 * @param sd  stated sd of one reading, above 0
 */
export function widening(runs: ThereAndBack, sd: number): number {
  const degrees = runs.left.length - 2;
  if (degrees < 1) return 1;
  const square = runs.left.reduce((sum, left) => sum + left * left, 0) / (2 * sd * sd);
  return chiSquareBeyond(square, degrees) < beyondChance ? Math.sqrt(square / degrees) : 1;
}
