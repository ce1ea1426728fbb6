import { chiSquareBeyond } from './chi-square.ts';

const rootTwoPi = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / rootTwoPi;

/**
 * Chance that a standard normal value exceeds z, good to a few parts in 1e14 also far out in the tail.
 *
 *     P(Z > z) = ½ P(χ²₁ > z²)   for z ≥ 0
 */
export function normalBeyond(z: number): number {
  if (z < 0) return 1 - normalBeyond(-z);
  return z === 0 ? 0.5 : 0.5 * chiSquareBeyond(z * z, 1);
}

/** Chance that a standard normal value lies below z. */
export const normalBelow = (z: number): number => normalBeyond(-z);

/** ln P(Z > z), finite however far out: beyond 30 by the first terms of the tail's asymptotic series. */
export function logNormalBeyond(z: number): number {
  if (z < 30) return Math.log(normalBeyond(z));
  const zz = z * z;
  return -0.5 * zz - Math.log(z * rootTwoPi) + Math.log1p(-1 / zz + 3 / (zz * zz));
}

/** Chance that a normal value with this mean and sd lies from `low` to `high`. */
export function chanceWithin(mean: number, sd: number, low: number, high: number): number {
  if (sd <= 0) return mean >= low && mean <= high ? 1 : 0;
  // Take both ends on the side of the nearer tail, so that small chances keep their digits.
  const a = (low - mean) / sd;
  const b = (high - mean) / sd;
  return a > 0 ? normalBeyond(a) - normalBeyond(b) : normalBelow(b) - normalBelow(a);
}

/**
 * The value below which a standard normal lies with chance p.
 * Acklam's rational approximation (coefficients from memory, relative error 1.2e-9), then one step of Halley's rule
 * against `normalBelow`; held to printed tables in the test.
 * @param p  above 0, below 1
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`chance ${p}; expected above 0 and below 1`);
  if (p > 0.5) return -normalQuantile(1 - p);
  const first = acklam(p);
  const off = (normalBelow(first) - p) / normalDensity(first);
  return first - off / (1 + 0.5 * first * off);
}

const tail = {
  c: [
    -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ],
  d: [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1],
};
const centre = {
  a: [
    -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
    2.506628277459239,
  ],
  b: [
    -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1,
    -1.328068155288572e1, 1,
  ],
};

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduce((sum, part) => sum * x + part, 0);

function acklam(p: number): number {
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return polynomial(tail.c, q) / polynomial(tail.d, q);
  }
  const q = p - 0.5;
  const r = q * q;
  return (polynomial(centre.a, r) * q) / polynomial(centre.b, r);
}
