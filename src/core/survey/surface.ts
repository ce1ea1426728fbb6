import type { Causes } from './causes.ts';

/** Where two ways to one point should meet, and by how much they do not, µm. */
export interface Closure {
  /** "loop 2, 3" (column, row of the cell, from 1), or "middle_x". */
  readonly name: string;
  readonly closing_um: number;
  readonly sd_um?: number;
}

/** A reading that fits the others badly: how many of its own sds it is off. */
export interface Misfit {
  /** `along_x_urad[2][3]`. */
  readonly path: string;
  readonly off_urad: number;
  readonly sds: number;
}

/** A surface's heights with what makes them doubtful, before any plane is laid through them. */
export interface Surface {
  readonly x_mm: readonly number[];
  readonly y_mm: readonly number[];
  readonly z_um: readonly number[];
  /** One sd of every height by itself, µm. */
  readonly each_um?: number;
  /** What one sd of each further cause does to all heights. */
  readonly causes?: Causes;
  readonly closures: readonly Closure[];
  readonly misfits: readonly Misfit[];
}

/** Standard deviation of Σ share · height over a surface. */
export function surfaceSd(gradient: ArrayLike<number>, surface: Surface): number | undefined {
  const { each_um, causes } = surface;
  if (each_um === undefined && !causes) return undefined;
  let own = 0;
  for (let i = 0; i < gradient.length; i++) own += gradient[i]! ** 2;
  let square = own * (each_um ?? 0) ** 2;
  for (const column of causes ?? []) {
    let sum = 0;
    for (let i = 0; i < gradient.length; i++) sum += gradient[i]! * column[i]!;
    square += sum * sum;
  }
  return Math.sqrt(square);
}
