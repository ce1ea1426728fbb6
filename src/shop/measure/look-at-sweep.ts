import { rise } from '../../core/body/displacement.ts';
import { type Feature, featureUnit } from '../../core/body/feature.ts';
import { type Doubtful, featureOf, poseOfRound } from '../../core/estimate/pose.ts';
import { fitSweep, type SweepFit } from '../../core/estimate/sweep-fit.ts';
import { type Sweep, sweepDistances } from '../../core/observe/sweep.ts';

/** A reading that stands off the line of the rest: a question, not an error. */
export interface OffTheLine {
  readonly point: number;
  readonly reading_um: number;
  /** How far it stands off, µm, without a sign. */
  readonly off_um: number;
  /** With its sign turned it would lie on the line. */
  readonly turned_fits: boolean;
}

/** One sweep by itself, before anything else is known: what its card can say while it is being taken. */
export interface SweepLook {
  readonly fit: SweepFit;
  /** Whether the number climbs or falls along the sweep, or neither beyond its own scatter. */
  readonly way: 'climbs' | 'falls' | 'stays';
  /** The feature told of, by this sweep alone (µrad or µm). */
  readonly feature?: Doubtful & { readonly unit: 'urad' | 'um' };
  readonly off: readonly OffTheLine[];
  /** The fitted line at the first and last point with two sd of it, µm; for drawing. */
  readonly line: readonly { readonly at_mm: number; readonly value_um: number; readonly doubt_um: number }[];
}

/** Fewer points than this make no line worth speaking of. */
const fewest = 3;
/** How far, in stated sd, a reading with its sign turned may lie from the line to be offered. */
const near = 4;

/**
 * Looks at one sweep alone. Undefined while there are fewer than three readings.
 *
 * @param sweep    signs already as the frame has them (plunger in is plus)
 * @param feature  what the set-up tells of first
 */
export function lookAtSweep(sweep: Sweep, feature: Feature | undefined): SweepLook | undefined {
  if (sweep.readings_um.length < fewest) return undefined;
  const fit = fitSweep(sweep);
  const distances = sweepDistances(sweep);
  const { slope_urad, slope_sd_urad } = fit;
  const way = Math.abs(slope_urad) <= 2 * slope_sd_urad ? 'stays' : slope_urad > 0 ? 'climbs' : 'falls';
  const told = feature ? featureOf(poseOfRound({ sweeps: [sweep], levels: [] }), feature) : undefined;
  const off = fit.outliers.map(({ point, reading_um, off_um }): OffTheLine => {
    const expected_um = reading_um - off_um;
    const turned_fits = Math.abs(-reading_um - expected_um) <= near * sweep.reading_sd_um;
    return { point, reading_um, off_um: Math.abs(off_um), turned_fits };
  });
  return {
    fit,
    way,
    off,
    line: lineOf(sweep, fit, distances),
    ...(told && feature ? { feature: { ...told, unit: featureUnit(feature) } } : {}),
  };
}

function lineOf(sweep: Sweep, fit: SweepFit, distances: readonly number[]): SweepLook['line'] {
  const kept = distances.filter((_, i) => fit.kept[i]);
  const middle = kept.reduce((sum, d) => sum + d, 0) / kept.length;
  const level_um = (fit.widen * sweep.reading_sd_um) / Math.sqrt(kept.length);
  return [distances[0]!, distances.at(-1)!].map((at_mm) => ({
    at_mm,
    value_um: fit.start_um + rise(fit.slope_urad, at_mm),
    doubt_um: 2 * Math.hypot(level_um, rise(fit.slope_sd_urad, at_mm - middle)),
  }));
}
