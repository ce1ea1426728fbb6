import { rise } from '../body/displacement.ts';

/**
 * Heights along a way from a level, an electronic level or an autocollimator's mirror stepped foot to foot.
 *
 *     h₀ = 0,   hᵢ₊₁ = hᵢ + rise(aᵢ, s)                                        (1)
 *
 * @param angles_urad  n ≥ 2 tilts in order along the way, µrad (= µm/m); plus: the end ahead is high
 * @param step_mm      distance between the feet, mm, above 0
 * @returns            n + 1 heights at 0, s, 2s, …, µm; plus: proud of the first point
 * @throws RangeError  fewer than two angles, or a step not above 0
 * Source: engineering-metrology lecture slides and a fitter's-trade examination, checks/straightness.check.ts
 * @example heightsFromAngles([10, -5], 200)      // [0, 2, 1]
 */
export function heightsFromAngles(angles_urad: readonly number[], step_mm: number): number[] {
  if (angles_urad.length < 2) throw new RangeError(`${angles_urad.length} angles; expected 2 or more`);
  if (!(step_mm > 0)) throw new RangeError(`step ${step_mm} mm; expected above 0`);
  const heights = [0];
  // Angles are summed before they are turned into heights: one rounding a station, not one a step.
  let sum_urad = 0;
  for (const angle of angles_urad) {
    sum_urad += angle;
    heights.push(rise(sum_urad, step_mm));
  }
  return heights;
}
