import { rise } from '../body/displacement.ts';
import type { Contact } from './line-zone.ts';
import { planeDepartures } from './plane-fit.ts';
import { type PlaneZone, planeZone } from './plane-zone.ts';
import type { PlateInput } from './plate-input.ts';
import { range } from './reference-lines.ts';
import { type Surface, surfaceSd } from './surface.ts';
import { surfaceOf } from './surface-of.ts';

/** Flatness by both references, µm. */
export interface Flatness {
  readonly least_squares: number;
  readonly minimum_zone: number;
}

/** What a survey of a surface finds. */
export interface PlateSurvey {
  readonly surface: Surface;
  readonly flatness_um: Flatness;
  readonly sd_um?: Flatness;
  /** Heights less the least-squares plane, and one sd of each. */
  readonly residual_um: readonly number[];
  readonly residual_sd_um?: readonly number[];
  readonly zone: PlaneZone;
  /** Heights above the lower plane of the minimum zone: what must come off to be flat, nowhere more than the flatness. */
  readonly depth_um: readonly number[];
  readonly stepped?: SteppedDepth;
}

/** Depths in whole passes, and what flatness they would leave if every pass took what is said. */
export interface SteppedDepth {
  readonly pass_um: number;
  readonly passes: readonly number[];
  readonly after_um: number;
}

/**
 * Flatness of a surface from heights, from a grid of angles or from eight lines, with the doubt of each result and where to scrape.
 * @throws RangeError  all points in one row as seen from above
 */
export function surveyPlate(input: PlateInput): PlateSurvey {
  const surface = surfaceOf(input);
  const { x_mm, y_mm, z_um } = surface;
  const zone = planeZone(surface);
  const residual_um = Array.from(planeDepartures(x_mm, y_mm, z_um));
  const depth_um = z_um.map((z, i) =>
    Math.max(0, z - zone.low_um - rise(zone.slope_x_urad, x_mm[i]!) - rise(zone.slope_y_urad, y_mm[i]!)),
  );
  const sd_um = flatnessSds(surface, residual_um, zone.contacts);
  const residual_sd_um = residualSds(surface);
  return {
    surface,
    flatness_um: { least_squares: range(residual_um), minimum_zone: zone.width_um },
    ...(sd_um ? { sd_um } : {}),
    residual_um,
    ...(residual_sd_um ? { residual_sd_um } : {}),
    zone,
    depth_um,
    ...(input.pass_um === undefined ? {} : { stepped: inPasses(surface, depth_um, input.pass_um) }),
  };
}

/** Whole passes nearest to each depth. */
function inPasses(surface: Surface, depth_um: readonly number[], pass_um: number): SteppedDepth {
  const passes = depth_um.map((depth) => Math.round(depth / pass_um));
  const z_um = surface.z_um.map((z, i) => z - passes[i]! * pass_um);
  return { pass_um, passes, after_um: planeZone({ ...surface, z_um }).width_um };
}

/** To first order, as for a line: highest less lowest of the departures, and the contacts by their shares. */
function flatnessSds(
  surface: Surface,
  residual_um: readonly number[],
  contacts: readonly Contact[],
): Flatness | undefined {
  const n = residual_um.length;
  const between = new Float64Array(n);
  between[furthest(residual_um, 1)]! += 1;
  between[furthest(residual_um, -1)]! -= 1;
  const least_squares = surfaceSd(planeDepartures(surface.x_mm, surface.y_mm, between), surface);
  const held = new Float64Array(n);
  for (const { index, side, share } of contacts) held[index]! += side === 'high' ? share : -share;
  const minimum_zone = surfaceSd(held, surface);
  return least_squares === undefined || minimum_zone === undefined
    ? undefined
    : { least_squares, minimum_zone };
}

function furthest(values: readonly number[], side: 1 | -1): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (side * values[i]! > side * values[best]!) best = i;
  return best;
}

/** One sd of each departure from the least-squares plane. */
function residualSds(surface: Surface): number[] | undefined {
  const { x_mm, y_mm, each_um, causes } = surface;
  if (each_um === undefined && !causes) return undefined;
  const squares = new Float64Array(x_mm.length);
  for (const column of causes ?? [])
    planeDepartures(x_mm, y_mm, column).forEach((left, i) => {
      squares[i]! += left * left;
    });
  const leverages = each_um === undefined ? undefined : leveragesOf(x_mm, y_mm);
  return Array.from(squares, (square, i) =>
    Math.sqrt(square + (leverages ? Math.max(0, 1 - leverages[i]!) * each_um! ** 2 : 0)),
  );
}

/** How far each height pulls the plane to itself, 0 to 1. */
function leveragesOf(x: readonly number[], y: readonly number[]): number[] {
  const n = x.length;
  const mx = x.reduce((sum, value) => sum + value, 0) / n;
  const my = y.reduce((sum, value) => sum + value, 0) / n;
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    xx += (x[i]! - mx) ** 2;
    xy += (x[i]! - mx) * (y[i]! - my);
    yy += (y[i]! - my) ** 2;
  }
  const determinant = xx * yy - xy * xy;
  return x.map((at, i) => {
    const [u, v] = [at - mx, y[i]! - my];
    return 1 / n + (u * u * yy - 2 * u * v * xy + v * v * xx) / determinant;
  });
}
