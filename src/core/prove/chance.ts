import { chanceWithin, normalBeyond } from '../math/normal.ts';

/**
 * Chance that what was measured lies in its band, the doubt being normal about the value.
 *
 *     P = Φ((high − value) / sd) − Φ((low − value) / sd)
 *
 * @param low   −Infinity when there is no lower limit
 * @param high  Infinity when there is no upper limit
 * @throws RangeError  a value or sd that is not finite, an sd below 0, or limits the wrong way round
 * Source: conformance probability of JCGM 106:2012 (from memory), held to in checks/decision-rules.check.ts.
 */
export function chanceInBand(value: number, sd: number, low: number, high: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`value ${value}; expected a finite number`);
  if (!(Number.isFinite(sd) && sd >= 0))
    throw new RangeError(`sd ${sd}; expected a finite number, 0 or above`);
  if (!(low <= high)) throw new RangeError(`limits ${low} to ${high}; expected the lower one first`);
  if (sd === 0) return value >= low && value <= high ? 1 : 0;
  if (low === -Infinity && high === Infinity) return 1;
  if (low === -Infinity) return normalBeyond((value - high) / sd);
  if (high === Infinity) return normalBeyond((low - value) / sd);
  return chanceWithin(value, sd, low, high);
}

const chances = (count: number, of: number): string =>
  `${count} ${count === 1 ? 'chance' : 'chances'} in ${of}`;

/**
 * A chance in words a person bets with: "8 chances in 10". Never "never" or "always"; the ends say how near they are.
 * @param p  0 to 1
 */
export function chanceWords(p: number): string {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`chance ${p}; expected 0 to 1`);
  if (p < 0.001) return `less than ${chances(1, 1000)}`;
  if (p < 0.01) return `less than ${chances(1, 100)}`;
  if (p < 0.05) return chances(Math.round(p * 100), 100);
  if (p < 0.95) return chances(Math.min(9, Math.max(1, Math.round(p * 10))), 10);
  // Rounded down: a chance must not be said to be better than it is.
  if (p < 0.99) return chances(Math.floor(p * 100 + 1e-9), 100);
  return p < 0.999 ? 'more than 99 chances in 100' : 'more than 999 chances in 1000';
}
