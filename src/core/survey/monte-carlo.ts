import { type Random, seededRandom } from '../math/random.ts';
import type { LineInput } from './line-input.ts';
import { planeDepartures } from './plane-fit.ts';
import { planeZone } from './plane-zone.ts';
import type { PlateInput } from './plate-input.ts';
import { profileOf } from './profile.ts';
import { range, straightness } from './reference-lines.ts';
import { surfaceOf } from './surface-of.ts';

/** What a width does when the readings are drawn anew, over and over. */
export interface Drawn {
  readonly mean: number;
  readonly sd: number;
  /** 19 in 20 lie between these. */
  readonly low: number;
  readonly high: number;
}

export interface Draws {
  /** How many times; 2 or more. */
  readonly draws: number;
  /** The same seed draws the same. */
  readonly seed: number;
}

/**
 * The three straightnesses when every cause of doubt is drawn at random (JCGM 101, from memory): the surveyed profile is taken for the truth. Where
 * several points vie for highest or lowest the mean lies above the width surveyed: noise only widens, and that much of it is noise.
 *
 * @returns undefined when nothing is known of the doubt
 */
export function lineMonteCarlo(input: LineInput, { draws, seed }: Draws) {
  const { stations_mm, heights_um, causes } = profileOf(input);
  if (!causes) return undefined;
  const random = seededRandom(seed);
  const widths = Array.from({ length: draws }, () => {
    const drawn = heights_um.slice();
    disturb(drawn, causes, random);
    return straightness(stations_mm, drawn).straightness_um;
  });
  return {
    endpoint: summed(widths.map((one) => one.endpoint)),
    least_squares: summed(widths.map((one) => one.least_squares)),
    minimum_zone: summed(widths.map((one) => one.minimum_zone)),
  };
}

/** The same of both flatnesses. */
export function plateMonteCarlo(input: PlateInput, { draws, seed }: Draws) {
  const surface = surfaceOf(input);
  const { x_mm, y_mm, z_um, each_um, causes = [] } = surface;
  if (each_um === undefined && causes.length === 0) return undefined;
  const random = seededRandom(seed);
  const widths = Array.from({ length: draws }, () => {
    const drawn = z_um.map((z) => z + (each_um ?? 0) * random.normal());
    disturb(drawn, causes, random);
    return {
      least_squares: range(planeDepartures(x_mm, y_mm, drawn)),
      minimum_zone: planeZone({ x_mm, y_mm, z_um: drawn }).width_um,
    };
  });
  return {
    least_squares: summed(widths.map((one) => one.least_squares)),
    minimum_zone: summed(widths.map((one) => one.minimum_zone)),
  };
}

/** Adds each cause, by a normal draw of its own, to heights made for it. */
function disturb(heights: number[], causes: readonly Float64Array[], random: Random): void {
  for (const column of causes) {
    const size = random.normal();
    for (let i = 0; i < heights.length; i++) heights[i]! += size * column[i]!;
  }
}

/** Mean, sd and 19 in 20 of what was drawn. */
export function summed(widths: readonly number[]): Drawn {
  const many = widths.length;
  const mean = widths.reduce((sum, width) => sum + width, 0) / many;
  const square = widths.reduce((sum, width) => sum + (width - mean) ** 2, 0);
  const sorted = widths.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(many - 1, Math.floor(share * many))]!;
  return { mean, sd: Math.sqrt(square / (many - 1)), low: at(0.025), high: at(0.975) };
}
