/** Whether a value and its whole doubt lie inside a band, wholly outside, or neither. */
export type Verdict = 'within' | 'not proven' | 'outside';

/** A verdict, and which side of the band it leans to. */
export interface Judged {
  readonly verdict: Verdict;
  /** Which jaw the pin is nearer to, or beyond. */
  readonly side: 'low' | 'high';
  /** From the value to the nearer limit, when it lies beyond it; 0 inside the band. Unit of the value. */
  readonly short: number;
}

/**
 * The guard-banded decision: within when value ± doubt lies inside [low, high], outside when it lies wholly beyond one
 * limit, not proven otherwise. Uses the numbers as they are, never as they are rounded for show.
 *
 * @param doubt  two standard deviations, 0 or above
 * Source: the decision rule of ISO 14253-1 (from memory): the uncertainty counts against whoever makes the statement.
 * @example judge(-15.3, 4.3, 6, 20)     // outside, low, 21.3 short
 */
export function judge(value: number, doubt: number, low: number, high: number): Judged {
  const side = value - low < high - value ? 'low' : 'high';
  const short = Math.max(0, low - value, value - high);
  if (value - doubt >= low && value + doubt <= high) return { verdict: 'within', side, short };
  if (value + doubt < low || value - doubt > high) return { verdict: 'outside', side, short };
  return { verdict: 'not proven', side, short };
}
