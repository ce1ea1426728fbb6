import { materials } from '../kit/material.ts';
import { type BarSide, type HeldBar, type TurnedBar, usualReadingSd_um } from './bar-axis.ts';
import type { Bar } from './bar-sag.ts';

/** A bar as somebody tells of it; what is left out is usual. */
export interface BarTold {
  readonly diameter_mm: number;
  /** Solid when left out. */
  readonly bore_mm?: number | undefined;
  /** Steel when left out. */
  readonly density_kg_m3?: number | undefined;
  readonly modulus_GPa?: number | undefined;
}

export const barOf = ({ diameter_mm, bore_mm = 0, density_kg_m3, modulus_GPa }: BarTold): Bar => ({
  diameter_mm,
  bore_mm,
  density_kg_m3: density_kg_m3 ?? materials.steel.density_kg_m3,
  modulus_GPa: modulus_GPa ?? materials.steel.modulus_GPa,
});

/** A held bar with what was left out filled in. */
export const heldOf = (
  told: BarTold & {
    readonly out_mm: number;
    readonly near_mm: number;
    readonly far_mm: number;
    readonly reading_sd_um?: number | undefined;
  },
): HeldBar => ({
  bar: barOf(told),
  out_mm: told.out_mm,
  near_mm: told.near_mm,
  far_mm: told.far_mm,
  reading_sd_um: told.reading_sd_um ?? usualReadingSd_um,
});

type Pair = readonly [number, number];
/** Two readings at a place. */
export const turnedOf = ([first_um, turned_um]: Pair) => ({ first_um, turned_um });

/** Readings as they are written: near and far, each as the spindle is and turned half round. */
export const readingOf = (told: {
  readonly side: BarSide;
  readonly near: Pair;
  readonly far: Pair;
}): TurnedBar => ({ side: told.side, near: turnedOf(told.near), far: turnedOf(told.far) });
