import { chanceInBand } from '../prove/chance.ts';

/** A feature that wears, in its own unit (µm or µrad) and its own stretch of time (1000 h, a year). */
export interface WearAsk {
  readonly value: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  /** Change in one stretch of time; plus: the value grows. */
  readonly rate: number;
  readonly rate_sd: number;
}

/** How long a feature stays inside its band. Times in the stretch that the rate is told in; Infinity: it does not leave. */
export interface Wear {
  /** The limit that the wear goes to. */
  readonly toward: 'low' | 'high' | 'neither';
  /** When the value as given crosses that limit; 0 when it lies beyond it. */
  readonly lasts: number;
  /** Two sd before and after: the chance of having crossed is 2.3 % and 97.7 % at these. */
  readonly lasts_low: number;
  readonly lasts_high: number;
  /** Chance of lying in the band now. */
  readonly chance_now: number;
  /** Chance of lying in the band at a time. */
  readonly chanceAt: (time: number) => number;
}

const two = 2;

/**
 * How long a feature stays inside its band while it wears at a steady rate.
 *
 *     v(t) = v + r t,   sd(t)² = sd² + (rate_sd · t)²,   T = (limit − v)/r                                     (1)
 *
 * The ends of T are where the limit lies two sd(t) from v(t): with D = limit − v,
 * (r² − 4 rate_sd²) t² − 2 r D t + D² − 4 sd² = 0. When the rate is not two sd from 0 the later end is Infinity.
 * The rate is steady by assumption; a machine runs in fast and then slows, so ask again after the first check.
 *
 * @throws RangeError  an sd below 0, limits the wrong way round, or a number that is not finite
 * Source: the interval of a ratio of two normal values (Fieller 1954, from memory), worked by hand in checks/parts-wear.check.ts.
 */
export function wear(ask: WearAsk): Wear {
  const { value, sd, low, high, rate, rate_sd } = ask;
  if (!(Number.isFinite(rate) && Number.isFinite(rate_sd) && rate_sd >= 0))
    throw new RangeError(`rate ${rate} with sd ${rate_sd}; expected finite numbers, the sd 0 or above`);
  const chance_now = chanceInBand(value, sd, low, high);
  const chanceAt = (time: number) =>
    chanceInBand(value + rate * time, Math.hypot(sd, rate_sd * time), low, high);
  if (rate === 0)
    return {
      toward: 'neither',
      lasts: Infinity,
      lasts_low: Infinity,
      lasts_high: Infinity,
      chance_now,
      chanceAt,
    };
  const toward = rate > 0 ? 'high' : 'low';
  // Counted toward the limit, so that both directions read alike.
  const left = rate > 0 ? high - value : value - low;
  const speed = Math.abs(rate);
  const near = (Math.abs(left) + two * sd) / speed || 1;
  const crossed = (time: number, sds: number): boolean =>
    speed * time - left + sds * Math.hypot(sd, rate_sd * time) >= 0;
  return {
    toward,
    lasts: Math.max(0, left / speed),
    lasts_low: firstTime((time) => crossed(time, two), near),
    lasts_high: speed > two * rate_sd ? firstTime((time) => crossed(time, -two), near) : Infinity,
    chance_now,
    chanceAt,
  };
}

/** The first time at which something that stays true becomes true, by halving; 0 when it is true at once. */
function firstTime(is: (time: number) => boolean, near: number): number {
  if (is(0)) return 0;
  let low = 0;
  let high = near;
  for (let k = 0; !is(high); k++) {
    if (k > 200 || !Number.isFinite(high)) return Infinity;
    low = high;
    high *= 2;
  }
  for (let k = 0; k < 200 && high - low > 1e-14 * high; k++) {
    const middle = (low + high) / 2;
    if (is(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Where to aim so that a feature lasts. */
export interface BetterAim {
  readonly aim: number;
  /** Against the value as given, in the rate's stretch of time. */
  readonly lasts: number;
  readonly why:
    | 'wear goes up'
    | 'wear goes down'
    | 'wear may go either way'
    | 'band too narrow for the doubt';
}

/**
 * The aim that lasts longest: as near to the limit that wear moves away from as the doubt of hitting it allows (two sd).
 * Where the rate is not two sd from 0 the middle serves best; so it does where the band is narrower than four sd.
 *
 * @param hit_sd  sd with which an aim is hit, unit of the value
 */
export function betterAim(ask: WearAsk, hit_sd: number): BetterAim {
  const { low, high, rate, rate_sd } = ask;
  const middle = (low + high) / 2;
  const speed = Math.abs(rate);
  const lastsFrom = (aim: number) =>
    rate === 0 ? Infinity : Math.max(0, (rate > 0 ? high - aim : aim - low) / speed);
  if (speed <= two * rate_sd) return { aim: middle, lasts: lastsFrom(middle), why: 'wear may go either way' };
  if (high - low < 2 * two * hit_sd)
    return { aim: middle, lasts: lastsFrom(middle), why: 'band too narrow for the doubt' };
  const aim = rate > 0 ? low + two * hit_sd : high - two * hit_sd;
  return { aim, lasts: lastsFrom(aim), why: rate > 0 ? 'wear goes up' : 'wear goes down' };
}
