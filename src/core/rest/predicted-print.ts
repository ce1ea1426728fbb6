import { normalBelow } from '../math/normal.ts';

/** A surface and the blue on it. */
export interface Blueing {
  /** Sd of the surface's height within a zone, above 0: scraping marks, ridges. */
  readonly roughness_um: number;
  readonly film_um: number;
}

/**
 * The print to expect: the share of each zone that comes up blue.
 *
 *     share = Φ((film − gap) / roughness)
 *
 * A zone's heights are taken as normal about its mean gap; what lies within the film of the way takes blue.
 * @param gap_um  mean gap of each zone with the slide at rest, µm; negative where pressed
 * @returns       0 to 1, one a zone
 * @example predictedPrint([3], { roughness_um: 2, film_um: 3 })      // [0.5]
 */
export const predictedPrint = (gap_um: readonly number[], blueing: Blueing): number[] =>
  gap_um.map((gap) => normalBelow((blueing.film_um - gap) / blueing.roughness_um));
