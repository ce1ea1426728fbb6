/** Whether a value and its whole doubt lie inside a band, wholly outside, or neither. */
export type Verdict = 'within' | 'not proven' | 'outside';

/** A verdict, and which side of the band it leans to. */
export interface Judged {
  readonly verdict: Verdict;
  /** Which jaw the pin is nearer to, or beyond. */
  readonly side: 'low' | 'high';
  /** From the value to the nearer limit, when it lies beyond it; 0 inside the band. Unit of the value. */
  readonly short: number;
  /** How far the doubt reaches beyond a limit: what value or doubt must give before it is within; 0 when it is. */
  readonly over: number;
}

/**
 * The guard-banded decision: within when value ± doubt lies inside [low, high], outside when it lies wholly beyond one
 * limit or just touches it, not proven otherwise. Uses the numbers as they are, never as they are rounded for show.
 *
 * @param doubt  two standard deviations, 0 or above
 * @param low    −Infinity when there is no lower limit
 * @param high   Infinity when there is no upper limit
 * @throws RangeError  a value or doubt that is not finite, a doubt below 0, or limits the wrong way round
 * Source: the decision rule of ISO 14253-1, held to in checks/decision-rules.check.ts: the doubt counts against whoever
 * makes the statement.
 * @example judge(-15.3, 4.3, 6, 20)     // outside, low, 21.3 short
 */
export function judge(value: number, doubt: number, low: number, high: number): Judged {
  if (!Number.isFinite(value)) throw new RangeError(`value ${value}; expected a finite number`);
  if (!(Number.isFinite(doubt) && doubt >= 0))
    throw new RangeError(`doubt ${doubt}; expected a finite number, 0 or above`);
  if (!(low <= high)) throw new RangeError(`limits ${low} to ${high}; expected the lower one first`);
  const side = value - low < high - value ? 'low' : 'high';
  const short = Math.max(0, low - value, value - high);
  const over = Math.max(0, low - (value - doubt), value + doubt - high);
  if (over === 0) return { verdict: 'within', side, short, over };
  const beyond = value + doubt <= low || value - doubt >= high;
  return { verdict: beyond ? 'outside' : 'not proven', side, short, over };
}

/** Two standard deviations: 19 times in 20. */
const usualFactor = 2;

/**
 * {@link judge} from a standard deviation.
 * @param sd      one standard deviation, 0 or above
 * @param factor  how many of them the guard band is wide; 1.645 gives the 95 % of one limit
 */
export const verdict = (value: number, sd: number, low: number, high: number, factor = usualFactor): Judged =>
  judge(value, factor * sd, low, high);
