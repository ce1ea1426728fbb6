import { logGamma } from './chi-square.ts';
import { normalQuantile } from './normal.ts';

/**
 * Chance that Student's t with `freedom` degrees lies beyond t.
 *
 *     P(T > t) = ½ I_x(ν/2, ½),   x = ν / (ν + t²),   t ≥ 0
 */
export function studentBeyond(t: number, freedom: number): number {
  if (!(freedom > 0)) throw new RangeError(`degrees of freedom ${freedom}; expected above 0`);
  if (t < 0) return 1 - studentBeyond(-t, freedom);
  return 0.5 * betaShare(freedom / (freedom + t * t), freedom / 2, 0.5);
}

/**
 * The t that holds a share of the distribution between −t and t: what a doubt of few readings is multiplied by.
 *
 * @param share    above 0, below 1
 * @param freedom  degrees of freedom, above 0; Infinity is the normal distribution
 * @example studentFactor(0.95, 4)     // 2.776
 * Source: JCGM 100:2008, Table G.2 (from memory), held to in checks/sums-uncertainty.check.ts.
 */
export function studentFactor(share: number, freedom: number): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`share ${share}; expected above 0 and below 1`);
  if (freedom === Infinity) return normalQuantile(0.5 + share / 2);
  const wanted = (1 - share) / 2;
  let high = 1;
  while (studentBeyond(high, freedom) > wanted) high *= 2;
  let low = 0;
  for (let k = 0; k < 200 && high - low > 1e-13 * high; k++) {
    const middle = (low + high) / 2;
    if (studentBeyond(middle, freedom) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Regularised incomplete beta function by its continued fraction (Lentz; from memory, held to the tables of t). */
function betaShare(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let h = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || tiny);
    c = 1 + even / c || tiny;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || tiny);
    c = 1 + odd / c || tiny;
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 1e-15) break;
  }
  return (front * h) / a;
}
