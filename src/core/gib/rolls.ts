import { fitLine } from '../math/line-fit.ts';
import { type Judged, verdict } from '../prove/verdict.ts';
import { dovetailFemaleWidth, dovetailMaleWidth } from '../sums/dovetail.ts';
import { cot, sin } from '../sums/sum.ts';

/** A dovetail measured over (male) or between (female) two rolls at places along its length. */
export interface RollsRead {
  readonly kind: 'male' | 'female';
  readonly roll_mm: number;
  /** Between flank and flats. */
  readonly angle_deg: number;
  /** Along the slide, rising. */
  readonly stations_mm: readonly number[];
  readonly read_mm: readonly number[];
  /** One sd of a reading. */
  readonly reading_sd_um: number;
  /** How much lower the flats lie under the rolls at each place than by the drawing, µm; left out: alike. */
  readonly flats_low_um?: readonly number[];
}

/** Width and parallelism of a dovetail, corner to corner at its sharp corners. */
export interface RollsFound {
  /** At each place, what the flats' own height feigns taken out. */
  readonly width_mm: readonly number[];
  readonly mean_mm: number;
  /** Wider at the far end than at the near one by so much, over the length measured; one sd. */
  readonly wider_um: number;
  readonly sd_um: number;
  readonly length_mm: number;
  /** Furthest that a place lies off the straight run of widths. */
  readonly off_line_um: number;
  /** To take off the gib flank, square to it: at one end, nothing at the other. */
  readonly take_um: number;
  readonly take_at: 'near' | 'far';
}

/**
 * Widths by the rule for rolls, their straight run by least squares, and what makes the flanks parallel:
 *
 *     take = wider · sin(angle),   at the wide end of a male dovetail, at the narrow end of a female one
 *
 * Flats lower by v let the rolls in under a male dovetail, or out in a female one, by 2 v cot(angle) in all: flats come first.
 * @throws RangeError  fewer than two places
 * Source: the rule for rolls, core/sums/dovetail.ts; the cut is the geometry of a flank; checks/gib.check.ts.
 */
export function rollsFound(read: RollsRead): RollsFound {
  const { kind, roll_mm: roll, angle_deg: angle, stations_mm, reading_sd_um } = read;
  const width_mm = read.read_mm.map((one, k) => {
    const feigned = (2 * (read.flats_low_um?.[k] ?? 0) * cot(angle)) / 1000;
    return kind === 'male'
      ? dovetailMaleWidth.of({ over: one + feigned, roll, angle }).root!
      : dovetailFemaleWidth.of({ between: one - feigned, roll, angle }).floor!;
  });
  const fit = fitLine(
    stations_mm,
    width_mm,
    stations_mm.map(() => reading_sd_um / 1000),
  );
  const length_mm = stations_mm.at(-1)! - stations_mm[0]!;
  const wider_um = 1000 * fit.slope * length_mm;
  const farIsThick = kind === 'male' ? wider_um > 0 : wider_um < 0;
  return {
    width_mm,
    mean_mm: fit.middle[1],
    wider_um,
    sd_um: 1000 * fit.slope_sd * length_mm,
    length_mm,
    off_line_um: 1000 * Math.max(...fit.residuals.map(Math.abs)),
    take_um: Math.abs(wider_um) * sin(angle),
    take_at: farIsThick ? 'far' : 'near',
  };
}

/** Whether the two flanks run parallel within so much over the length measured. */
export const judgeParallel = ({ wider_um, sd_um }: RollsFound, most_um: number): Judged =>
  verdict(wider_um, sd_um, -most_um, most_um);
