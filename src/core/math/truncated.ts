import { logNormalBeyond, normalBeyond, normalDensity } from './normal.ts';

/** Mean and variance of a normal value of which only a bound is known, and ln of the chance that it meets the bound. */
export interface Truncated {
  readonly mean: number;
  readonly variance: number;
  readonly logChance: number;
}

/**
 * A normal value known to be at least `least`.
 *
 *     α = (least − μ)/σ,  λ = φ(α)/P(Z > α):   mean = μ + σ λ,   variance = σ² (1 + α λ − λ²)
 *
 * Source: Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 1, 2nd ed. 1994, section 10.1 (from memory).
 */
export function atLeast(mean: number, sd: number, least: number): Truncated {
  const alpha = (least - mean) / sd;
  const lambda = hazard(alpha);
  // Far out the closed form loses its digits to cancellation; there the variance tends to σ²/α².
  const share = alpha > 1e4 ? 1 / alpha ** 2 : 1 + alpha * lambda - lambda * lambda;
  return {
    mean: mean + sd * lambda,
    variance: sd * sd * Math.min(1, Math.max(share, 1e-9)),
    logChance: logNormalBeyond(alpha),
  };
}

/** A normal value known to be at most `most`: the mirror image of {@link atLeast}. */
export function atMost(mean: number, sd: number, most: number): Truncated {
  const mirrored = atLeast(-mean, sd, -most);
  return { ...mirrored, mean: -mirrored.mean };
}

/** φ(α)/P(Z > α); far out by its continued fraction, where both parts vanish. */
function hazard(alpha: number): number {
  if (alpha < 12) return normalDensity(alpha) / normalBeyond(alpha);
  let tail = alpha;
  for (let k = 40; k >= 1; k--) tail = alpha + k / tail;
  return tail;
}
