import { fitLine } from '../math/line-fit.ts';
import { together } from './profile.ts';
import { range } from './reference-lines.ts';
import { type ThereAndBack, thereAndBack, widening } from './there-and-back.ts';

/** Twist of one way to another: a level across both, on a bridge, station by station. Plus: the back (+y) is high. */
export interface TwistInput {
  readonly kind: 'twist';
  readonly name?: string;
  readonly stations_mm: readonly number[];
  readonly tilts_urad: readonly number[];
  /** The run back, in the order it was taken. */
  readonly return_urad?: readonly number[];
  /** Distance between the ways under the bridge: twist as a height too. */
  readonly bridge_mm?: number;
  readonly reading_sd_urad?: number;
  readonly repeatability_sd_urad?: number;
  /** Most that the tilts may differ along the way. */
  readonly limit_urad?: number;
}

/** Parallelism of one way to another: an indicator carried along the one and touching the other, or two profiles from one reference. */
export interface ParallelInput {
  readonly kind: 'parallel';
  readonly name?: string;
  readonly stations_mm: readonly number[];
  /** What the indicator reads, or the heights of the way itself. */
  readonly heights_um: readonly number[];
  /** Heights of the way it is to be parallel to, from the same reference; left out when the indicator rides on it. */
  readonly other_um?: readonly number[];
  readonly return_um?: readonly number[];
  readonly reading_sd_um?: number;
  readonly repeatability_sd_um?: number;
  readonly limit_um?: number;
}

/** A pair of ways compared along them; see docs/contract.md, `line`. */
export type AlongInput = TwistInput | ParallelInput;

/** How something changes along a way, in its own unit (µrad for twist, µm for parallelism). */
export interface Along {
  /** Each less the first. */
  readonly change: readonly number[];
  /** Greatest less least: what a limit on every reading means. */
  readonly range: number;
  /** Last less first. */
  readonly ends: number;
  /** By least squares, for each metre. */
  readonly per_m: number;
  /** One sd of each; left out when nothing is known of the doubt. */
  readonly sd?: {
    readonly each: number;
    readonly range: number;
    readonly ends: number;
    readonly per_m: number;
  };
  readonly runs?: ThereAndBack;
  readonly widened: number;
}

/**
 * Change along a way. A constant (the level's own zero, where the indicator was set) drops out of all of it.
 * @throws RangeError  lists of differing length, fewer than two stations
 */
export function surveyAlong(input: AlongInput): Along {
  const isTwist = input.kind === 'twist';
  const there = isTwist
    ? input.tilts_urad
    : input.heights_um.map((height, i) => height - (input.other_um?.[i] ?? 0));
  const back = isTwist ? input.return_urad : input.return_um;
  const runs = back && thereAndBack(there, back);
  const values = runs ? runs.mean : there;
  const stated = isTwist
    ? together(input.reading_sd_urad, input.repeatability_sd_urad)
    : together(input.reading_sd_um, input.repeatability_sd_um);
  const one = stated ?? (runs && there.length > 2 ? runs.scatter : undefined);
  const widened = runs && stated ? widening(runs, stated) : 1;
  // Two profiles are two readings less each other; a run back halves the variance.
  const twice = !isTwist && input.other_um ? Math.SQRT2 : 1;
  const each = one === undefined ? undefined : (one * widened * twice) / (runs ? Math.SQRT2 : 1);
  const metres = input.stations_mm.map((mm) => mm / 1000);
  const fit = fitLine(metres, values, each ? metres.map(() => each) : undefined);
  return {
    change: values.map((value) => value - values[0]!),
    range: range(values),
    ends: values.at(-1)! - values[0]!,
    per_m: fit.slope,
    ...(each ? { sd: { each, range: each * Math.SQRT2, ends: each * Math.SQRT2, per_m: fit.slope_sd } } : {}),
    ...(runs ? { runs } : {}),
    widened,
  };
}
