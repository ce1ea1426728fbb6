import { rise } from '../body/displacement.ts';

/**
 * The bow of a free bar or bed whose top is warmer than its underside: plus, the middle stands up.
 *
 *     d = α L² ΔT / 8h
 *
 * @param expansion_um_mK  µm per m and K (1e-6/K)
 * @param warmer_K         top less underside
 * @returns                µm
 * Source: a uniform gradient bends a bar to a circle of radius h/αΔT (from memory); held to in checks/sums-temperature.check.ts.
 */
export const thermalBow = (
  expansion_um_mK: number,
  length_mm: number,
  depth_mm: number,
  warmer_K: number,
): number => ((rise(expansion_um_mK, length_mm) * length_mm) / (8 * depth_mm)) * warmer_K;

/** Growth of a length, µm: α L ΔT. */
export const growth = (expansion_um_mK: number, length_mm: number, warmer_K: number): number =>
  rise(expansion_um_mK, length_mm) * warmer_K;
