/** What one input gives to the doubt of a result. */
export interface Share {
  /** Place of the input in the list. */
  readonly input: number;
  /** ∂y/∂x: the result's change for one unit of the input. */
  readonly slope: number;
  /** |slope| × sd of the input, unit of the result. */
  readonly sd: number;
}

/** A result with its doubt. */
export interface Propagated {
  readonly value: number;
  /** One standard deviation. */
  readonly sd: number;
  /** One for each input, in the order given. */
  readonly shares: readonly Share[];
}

/**
 * The slopes of a formula at a place, by central differences over four points (error of the order of step⁴).
 *
 * @param of   the formula; smooth within a fifth of an sd of `at`
 * @param sds  one sd of each input: steps are a tenth of it, so that a formula is tried only where it is used; a
 *             thousandth of the input where it has none
 */
export function slopesOf(
  of: (x: readonly number[]) => number,
  at: readonly number[],
  sds: readonly number[],
): number[] {
  return at.map((value, i) => {
    const sd = sds[i] ?? 0;
    // Not so small that the rounding of a large input drowns the difference.
    const step = sd > 0 ? Math.max(sd / 10, 1e-7 * Math.abs(value)) : 1e-3 * (Math.abs(value) || 1);
    const there = (k: number): number => of(at.map((x, j) => (j === i ? x + k * step : x)));
    return (8 * (there(1) - there(-1)) - (there(2) - there(-2))) / (12 * step);
  });
}

/**
 * First-order propagation of doubt through a formula, inputs independent unless `correlation` says otherwise:
 *
 *     u² = Σᵢ Σⱼ cᵢ cⱼ uᵢ uⱼ rᵢⱼ,   cᵢ = ∂f/∂xᵢ
 *
 * @param sds          one standard deviation of each input, 0 or above
 * @param correlation  symmetric, ones on its diagonal
 * @throws RangeError  a value that is not finite, an sd below 0, lists of unequal length
 * Source: JCGM 100:2008, 5.1.2 and 5.2.2, held to in checks/sums-uncertainty.check.ts.
 */
export function propagate(
  of: (x: readonly number[]) => number,
  at: readonly number[],
  sds: readonly number[],
  correlation?: readonly (readonly number[])[],
): Propagated {
  if (sds.length !== at.length) throw new RangeError(`${sds.length} sds for ${at.length} inputs`);
  const bad = sds.find((sd) => !(Number.isFinite(sd) && sd >= 0));
  if (bad !== undefined) throw new RangeError(`sd ${bad}; expected a finite number, 0 or above`);
  const value = of(at);
  if (!Number.isFinite(value)) throw new RangeError(`the formula gives ${value} here`);
  const slopes = slopesOf(of, at, sds);
  if (!slopes.every((slope, i) => Number.isFinite(slope) || sds[i] === 0))
    throw new RangeError('a doubt reaches past where the formula has a value');
  const parts = slopes.map((slope, i) => (sds[i] === 0 ? 0 : slope * sds[i]!));
  let variance = 0;
  parts.forEach((a, i) => {
    parts.forEach((b, j) => {
      variance += a * b * (i === j ? 1 : (correlation?.[i]?.[j] ?? 0));
    });
  });
  // A correlation of ±1 may leave a rounding below nothing.
  const sd = Math.sqrt(Math.max(0, variance));
  return {
    value,
    sd,
    shares: slopes.map((slope, input) => ({ input, slope, sd: Math.abs(parts[input]!) })),
  };
}

/**
 * Effective degrees of freedom of a combined doubt (Welch and Satterthwaite):
 *
 *     ν = u⁴ / Σ uᵢ⁴ / νᵢ
 *
 * @param parts  each part's sd and its degrees of freedom (Infinity: known surely)
 * @returns      Infinity when every part is known surely
 * Source: JCGM 100:2008, G.4.1.
 */
export function effectiveFreedom(
  parts: readonly { readonly sd: number; readonly freedom: number }[],
): number {
  const variance = parts.reduce((sum, part) => sum + part.sd ** 2, 0);
  const below = parts.reduce((sum, part) => sum + part.sd ** 4 / part.freedom, 0);
  return below === 0 ? Infinity : variance ** 2 / below;
}
