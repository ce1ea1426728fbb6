import type { GaugeBand } from './jaws.ts';

/** A value with its doubt (two sd), both in the shown unit. */
export interface Measured {
  readonly value: number;
  readonly doubt: number;
}

/**
 * The stretch of the scale that holds the band, zero and every value with its doubt. Hand the same one on from round to round
 * and the scale does not jump.
 */
export function gaugeDomain(band: GaugeBand, rows: readonly Measured[]): [number, number] {
  const marks = [
    0,
    ...(band.low === undefined ? [] : [band.low]),
    ...(band.high === undefined ? [] : [band.high]),
    ...rows.flatMap((row) => [row.value - row.doubt, row.value + row.doubt]),
  ];
  const low = Math.min(...marks);
  const high = Math.max(...marks);
  const air = (high - low || 1) * 0.04;
  return [low - air, high + air];
}

/** Places values of the shown unit on the drawing, px: linear. */
export const linear =
  (domain: readonly [number, number], range: readonly [number, number]) =>
  (value: number): number =>
    range[0] + ((value - domain[0]) / (domain[1] - domain[0] || 1)) * (range[1] - range[0]);
