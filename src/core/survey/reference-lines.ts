import { rise } from '../body/displacement.ts';
import { mean } from '../math/line-fit.ts';
import { type Causes, type Gradient, sdOf } from './causes.ts';
import { type Contact, type LineZone, lineZone } from './line-zone.ts';

/** A profile against the three lines that straightness is counted from. */
export interface Straightness {
  readonly endpoint_um: readonly number[];
  readonly least_squares_um: readonly number[];
  /** Against the middle of the minimum zone. */
  readonly minimum_zone_um: readonly number[];
  readonly straightness_um: Widths;
  readonly contacts: readonly Contact[];
}

export interface Widths {
  readonly endpoint: number;
  readonly least_squares: number;
  readonly minimum_zone: number;
}

/** One standard deviation of each result. */
export interface StraightnessSds {
  readonly endpoint_um: readonly number[];
  readonly least_squares_um: readonly number[];
  readonly straightness_um: Widths;
}

/**
 * Departures from the line through the two end points, the least-squares line and the minimum zone; straightness is the range of each.
 *
 * @param stations_mm  n ≥ 3 places, rising
 * @param heights_um   n heights; plus: proud
 * Source: references as in ISO 12780 (names from memory); checks/straightness.check.ts
 */
export function straightness(stations_mm: readonly number[], heights_um: readonly number[]): Straightness {
  const zone = lineZone(stations_mm, heights_um);
  const endpoint_um = endpointDepartures(stations_mm, heights_um);
  const least_squares_um = leastSquaresDepartures(stations_mm, heights_um);
  return {
    endpoint_um,
    least_squares_um,
    minimum_zone_um: zoneDepartures(zone, stations_mm, heights_um),
    straightness_um: {
      endpoint: range(endpoint_um),
      least_squares: range(least_squares_um),
      minimum_zone: zone.width_um,
    },
    contacts: zone.contacts,
  };
}

export function endpointDepartures(x: readonly number[], h: readonly number[]): number[] {
  const last = x.length - 1;
  const perMm = (h[last]! - h[0]!) / (x[last]! - x[0]!);
  return h.map((height, i) => (i === last ? 0 : height - h[0]! - perMm * (x[i]! - x[0]!)));
}

function leastSquaresDepartures(x: readonly number[], h: readonly number[]): number[] {
  const { arms, square, level } = centred(x, h);
  const perMm = arms.reduce((sum, arm, i) => sum + arm * (h[i]! - level), 0) / square;
  return h.map((height, i) => height - level - perMm * arms[i]!);
}

function centred(x: readonly number[], h: readonly number[]) {
  const middle = mean(x);
  const arms = x.map((at) => at - middle);
  return { arms, square: arms.reduce((sum, arm) => sum + arm * arm, 0), level: mean(h) };
}

function zoneDepartures(zone: LineZone, x: readonly number[], h: readonly number[]): number[] {
  const off = h.map((height, i) => height - rise(zone.slope_urad, x[i]! - x[0]!));
  const middle = (Math.max(...off) + Math.min(...off)) / 2;
  return off.map((height) => height - middle);
}

/** Greatest less least; a loop, since a call takes only so many numbers. */
export function range(values: ArrayLike<number>): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i++) {
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  return high - low;
}

/**
 * One standard deviation of every departure and of the three straightnesses, from the heights' causes of doubt.
 *
 * A range is its highest less its lowest point, a minimum zone its contacts by their shares: to first order these carry the doubt. Where two
 * points vie for the highest, noise can only widen a range, which this does not see; a Monte Carlo run does (monte-carlo.ts).
 */
export function straightnessSds(
  stations_mm: readonly number[],
  result: Straightness,
  causes: Causes,
): StraightnessSds {
  const endpoint = causes.map((column) => Float64Array.from(endpointDepartures(stations_mm, [...column])));
  const fitted = causes.map((column) => Float64Array.from(leastSquaresDepartures(stations_mm, [...column])));
  const each = (columns: Causes) => stations_mm.map((_, index) => sdOf([{ index, share: 1 }], columns));
  return {
    endpoint_um: each(endpoint),
    least_squares_um: each(fitted),
    straightness_um: {
      endpoint: sdOf(extremes(result.endpoint_um), endpoint),
      least_squares: sdOf(extremes(result.least_squares_um), fitted),
      minimum_zone: sdOf(
        result.contacts.map(({ index, side, share }) => ({ index, share: side === 'high' ? share : -share })),
        causes,
      ),
    },
  };
}

const extremes = (values: readonly number[]): Gradient => [
  { index: values.indexOf(Math.max(...values)), share: 1 },
  { index: values.indexOf(Math.min(...values)), share: -1 },
];
