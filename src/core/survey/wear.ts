import { type Causes, sdOf } from './causes.ts';

/** Metal gone, station by station, counted from the line through the stretches that were not run on. */
export interface Wear {
  /** Plus: worn down; the unworn stretches come out near nothing. */
  readonly wear_um: readonly number[];
  readonly sd_um?: readonly number[];
  /** The stations that the line goes through. */
  readonly through: readonly number[];
  readonly deepest: { readonly index: number; readonly um: number; readonly sd_um?: number };
}

/**
 * Wear below the unworn stretches: least-squares line through the stations inside them, less the height.
 *
 * @param unworn_mm  stretches from … to …, ends included
 * @returns          undefined when fewer than two stations lie in the stretches
 */
export function wearBelow(
  stations_mm: readonly number[],
  heights_um: readonly number[],
  unworn_mm: readonly (readonly [number, number])[],
  causes?: Causes,
): Wear | undefined {
  const through = stations_mm.flatMap((at, i) =>
    unworn_mm.some(([from, to]) => at >= from && at <= to) ? [i] : [],
  );
  if (through.length < 2) return undefined;
  const below = (heights: ArrayLike<number>) => belowLine(stations_mm, heights, through);
  const wear_um = below(heights_um);
  const columns = causes?.map((column) => Float64Array.from(below(column)));
  const sd_um = columns && stations_mm.map((_, index) => sdOf([{ index, share: 1 }], columns));
  const index = wear_um.indexOf(Math.max(...wear_um));
  return {
    wear_um,
    ...(sd_um ? { sd_um } : {}),
    through,
    deepest: { index, um: wear_um[index]!, ...(sd_um ? { sd_um: sd_um[index]! } : {}) },
  };
}

function belowLine(x: readonly number[], h: ArrayLike<number>, through: readonly number[]): number[] {
  const many = through.length;
  const middle = through.reduce((sum, i) => sum + x[i]!, 0) / many;
  const level = through.reduce((sum, i) => sum + h[i]!, 0) / many;
  const square = through.reduce((sum, i) => sum + (x[i]! - middle) ** 2, 0);
  const perMm = through.reduce((sum, i) => sum + (x[i]! - middle) * (h[i]! - level), 0) / square;
  return x.map((at, i) => level + perMm * (at - middle) - h[i]!);
}
