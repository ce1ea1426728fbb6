import { rasterPxPerMm } from './rectified.ts';

/** Blue dragged along the rub: what an over-blued print shows between its spots. */
export interface Smear {
  /** How far gradients of faint film keep to one direction, 0 to 1. */
  readonly alike: number;
  /** Share of what is not film that is faintly blue. */
  readonly faint: number;
  /** Direction across the streaks, radians from the length of the surface. */
  readonly across_rad: number;
}

/** Over-blued where both are above these; sound prints reach 0.28 and a third, but never both. */
const overBlued = { alike: 0.35, faint: 0.25 };
/** Streaks narrower than this are taken out. */
const streak_mm = 0.5;

export const isOverBlued = ({ alike, faint }: Smear): boolean =>
  alike > overBlued.alike && faint > overBlued.faint;

/** Structure tensor of faint film: streaks have their gradients across them. */
export function smearOf(strength: Float32Array, width: number, height: number, out: Uint8Array): Smear {
  let xx = 0;
  let yy = 0;
  let xy = 0;
  let faint = 0;
  let notFilm = 0;
  for (let j = 2; j < height - 2; j += 3)
    for (let i = 2; i < width - 2; i += 2) {
      const o = j * width + i;
      if (out[o]) continue;
      const here = strength[o]!;
      if (here < 0.7) notFilm++;
      if (here > 0.12 && here < 0.5) faint++;
      if (here < 0.05 || here > 0.6) continue;
      const gx = strength[o + 1]! - strength[o - 1]!;
      const gy = strength[o + width]! - strength[o - width]!;
      // Edges of spots are steeper than streaks and run every way.
      if (gx * gx + gy * gy > 0.09) continue;
      xx += gx * gx;
      yy += gy * gy;
      xy += gx * gy;
    }
  return {
    alike: xx + yy > 0 ? Math.hypot(xx - yy, 2 * xy) / (xx + yy) : 0,
    faint: faint / Math.max(1, notFilm),
    across_rad: 0.5 * Math.atan2(2 * xy, xx - yy),
  };
}

/** Grey opening by a line across the streaks: what is thinner than the line in that direction goes, the rest stays as it was. */
export function withoutStreaks(
  strength: Float32Array,
  width: number,
  height: number,
  across_rad: number,
): Float32Array {
  const reach = Math.max(1, Math.round((streak_mm * rasterPxPerMm) / 2));
  const steps = Array.from({ length: 2 * reach + 1 }, (_, k) => ({
    dx: Math.round((k - reach) * Math.cos(across_rad)),
    dy: Math.round((k - reach) * Math.sin(across_rad)),
  }));
  const least = alongSteps(strength, width, height, steps, leastRow);
  return alongSteps(least, width, height, steps, greatestRow);
}

interface Step {
  readonly dx: number;
  readonly dy: number;
}

/** Of each element and those that steps lead to from it, what `row` keeps. The line is shorter at the edge: a neighbour in its place could add what was not there. */
function alongSteps(
  source: Float32Array,
  width: number,
  height: number,
  steps: readonly Step[],
  row: (kept: Float32Array, source: Float32Array, from: number, to: number, off: number) => void,
): Float32Array {
  const kept = source.slice();
  for (let j = 0; j < height; j++)
    for (const { dx, dy } of steps) {
      if (j + dy < 0 || j + dy >= height) continue;
      const from = j * width + Math.max(0, -dx);
      const to = (j + 1) * width - Math.max(0, dx);
      row(kept, source, from, to, dy * width + dx);
    }
  return kept;
}

function leastRow(kept: Float32Array, source: Float32Array, from: number, to: number, off: number): void {
  for (let o = from; o < to; o++) if (source[o + off]! < kept[o]!) kept[o] = source[o + off]!;
}

function greatestRow(kept: Float32Array, source: Float32Array, from: number, to: number, off: number): void {
  for (let o = from; o < to; o++) if (source[o + off]! > kept[o]!) kept[o] = source[o + off]!;
}
