import { fitLine } from '../math/line-fit.ts';

/** Thickness of a gib, or of the space it goes into, at places from its thin end. */
export interface TaperRead {
  readonly stations_mm: readonly number[];
  readonly thick_mm: readonly number[];
  /** One sd of a reading. */
  readonly reading_sd_um: number;
}

/** A taper as it was measured. */
export interface TaperFound {
  /** Thickness over length. */
  readonly taper: number;
  readonly sd: number;
  /** Length that gives one: 60 of 1:60. */
  readonly one_in: number;
  readonly thin_mm: number;
  readonly thick_mm: number;
  /** Furthest that a place lies off the straight wedge. */
  readonly off_line_um: number;
}

/**
 * Taper by least squares through the thicknesses.
 * @throws RangeError  fewer than two places, or a wedge that does not grow toward the thick end
 * Source: definition; checks/gib.check.ts.
 */
export function taperFound({ stations_mm, thick_mm, reading_sd_um }: TaperRead): TaperFound {
  const fit = fitLine(
    stations_mm,
    thick_mm,
    stations_mm.map(() => reading_sd_um / 1000),
  );
  if (!(fit.slope > 0)) throw new RangeError('no taper: it does not grow toward the thick end');
  return {
    taper: fit.slope,
    sd: fit.slope_sd,
    one_in: 1 / fit.slope,
    thin_mm: thick_mm[0]!,
    thick_mm: thick_mm.at(-1)!,
    off_line_um: 1000 * Math.max(...fit.residuals.map(Math.abs)),
  };
}

/** How a gib's taper meets that of its space. */
export interface TaperMatch {
  /** Gib thicker at its thick end than the space asks, when its thin end fits, over its length; minus: too thin there. */
  readonly proud_um: number;
  readonly sd_um: number;
  /** Which end would print alone, and what to take off its face there, nothing at the other end. */
  readonly tight: 'thick end' | 'thin end';
  readonly take_um: number;
}

/**
 * A gib steeper than its space bears at its thick end alone: that end comes off. Flatter, the thin end.
 * Source: common practice in fitting taper gibs.
 */
export function taperMatch(gib: TaperFound, space: TaperFound, length_mm: number): TaperMatch {
  const proud_um = 1000 * (gib.taper - space.taper) * length_mm;
  return {
    proud_um,
    sd_um: 1000 * Math.hypot(gib.sd, space.sd) * length_mm,
    tight: proud_um > 0 ? 'thick end' : 'thin end',
    take_um: Math.abs(proud_um),
  };
}
