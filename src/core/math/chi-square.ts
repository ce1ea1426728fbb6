/** ln Γ(x) for x > 0. Lanczos' sum with g = 7, nine terms (coefficients from memory; held to factorials and Γ(1/2) in the test). */
export function logGamma(x: number): number {
  const c = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const t = x + 6.5;
  const sum = c.slice(1).reduce((total, part, i) => total + part / (x + i), c[0]!);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Lower regularised incomplete gamma by its series; good for x < a + 1. */
function gammaSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 1000; n++) {
    term *= x / (a + n);
    sum += term;
    if (term < sum * 1e-16) break;
  }
  return sum * Math.exp(-x + a * Math.log(x) - logGamma(a));
}

/** Upper regularised incomplete gamma by its continued fraction (Lentz); good for x ≥ a + 1. */
function gammaFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 1000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + an / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 1e-15) break;
  }
  return Math.exp(-x + a * Math.log(x) - logGamma(a)) * h;
}

/**
 * Chance that a chi-square value exceeds x.
 * @param degrees  degrees of freedom, above 0
 * @example chiSquareBeyond(3.841458820694124, 1)      // 0.05
 */
export function chiSquareBeyond(x: number, degrees: number): number {
  if (!(degrees > 0)) throw new RangeError(`degrees of freedom ${degrees}; expected above 0`);
  if (x <= 0) return 1;
  const a = degrees / 2;
  const half = x / 2;
  return half < a + 1 ? 1 - gammaSeries(a, half) : gammaFraction(a, half);
}
