import { limpness, sagAt, supportPoints } from './beam.ts';
import { type MaterialName, materials } from './material.ts';
import { thermalBow } from './temperature.ts';

/** A straightedge as it lay over a way: what it is, where it stood on its supports, how much warmer its top was. */
export interface LaidEdge {
  readonly length_mm: number;
  /** Depth the way it stands. */
  readonly depth_mm: number;
  readonly material: MaterialName;
  /** GPa; the material's when left out. */
  readonly modulus_GPa?: number;
  /** From each end to its support; the points of least sag when left out. */
  readonly support_mm?: number;
  /** Station of its first end; left out, it lies evenly about the stations. */
  readonly from_mm?: number;
  /** Top less underside, K. */
  readonly warmer_K?: number;
  readonly warmer_sd_K?: number;
}

/** How it bends at each station, and what one sd of each thing it hangs on does there, µm; plus up. */
export interface EdgeBend {
  readonly um: readonly number[];
  readonly causes_um: readonly (readonly number[])[];
}

/** Station of the straightedge's first end, mm. */
export const edgeStart = (edge: LaidEdge, stations_mm: readonly number[]): number =>
  edge.from_mm ?? (stations_mm[0]! + stations_mm.at(-1)! - edge.length_mm) / 2;

/**
 * Sag by its own weight on two supports and the bow of a warmer top, at the stations.
 *
 *     bend(x) = u · f(x; s / L) + α ΔT L² / 8h · (1 − (2x / L − 1)²)                         (1)
 *
 * Turning the straightedge about its long axis turns neither: gravity and warmth stay where they are.
 * Source: checks/sums-sag.check.ts and checks/sums-temperature.check.ts hold both parts.
 */
export function edgeBend(edge: LaidEdge, stations_mm: readonly number[]): EdgeBend {
  const stuff = materials[edge.material];
  const modulus_GPa = edge.modulus_GPa ?? stuff.modulus_GPa;
  const { length_mm, depth_mm, warmer_K = 0, warmer_sd_K = 0 } = edge;
  const limp = limpness({ kind: 'rectangle', depth_mm }, { density_kg_m3: stuff.density_kg_m3, modulus_GPa });
  const from_end = edge.support_mm === undefined ? supportPoints.least_sag : edge.support_mm / length_mm;
  const start = edgeStart(edge, stations_mm);
  const sag = stations_mm.map((at) => sagAt(limp, length_mm, from_end, at - start));
  const arch = stations_mm.map((at) => 1 - ((2 * (at - start)) / length_mm - 1) ** 2);
  const bow = (expansion: number, kelvin: number) => {
    const middle_um = thermalBow(expansion, length_mm, depth_mm, kelvin);
    return arch.map((share) => share * middle_um);
  };
  const warm = bow(stuff.expansion_um_mK, warmer_K);
  // A modulus that the user knows is taken to be known half as badly as the material's usual one.
  const stiffSd = stuff.modulus_sd_GPa / stuff.modulus_GPa / (edge.modulus_GPa === undefined ? 1 : 2);
  return {
    um: sag.map((one, i) => one + warm[i]!),
    causes_um: [
      sag.map((one) => stiffSd * one),
      bow(stuff.expansion_sd_um_mK, warmer_K),
      bow(stuff.expansion_um_mK, warmer_sd_K),
    ].filter((column) => column.some((um) => um !== 0)),
  };
}
