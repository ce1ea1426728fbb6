import type { PoseNumbers } from '../body/displacement.ts';
import type { Slide } from '../body/slide.ts';
import { evenWrench, type Load, wrenchOf } from './load.ts';
import { type Blueing, predictedPrint } from './predicted-print.ts';
import { type RestAnswer, restUnder } from './rest.ts';
import { roughRest } from './rough-rest.ts';

/**
 * What stands in for figures that nobody has measured (common practice, not a source: a saddle of 60 to 200 kg on
 * 500 to 700 cm², iron or liner with an oil film giving some 50 N/mm³). They set how far high zones are pressed in, a few
 * tenths of a µm; the geometry does not hang on them.
 */
export const assumedRest = {
  pressure_N_per_mm2: 0.015,
  stiffness_N_per_mm3: 50,
  film_um: 3,
  /** Height sd within a zone: what leaves forecasts of twenty simulated jobs leaning to neither side, from 2.5 to 2.7. */
  roughness_um: 2.6,
} as const;

export interface ScrapedSlide {
  readonly slide: Slide;
  /** Gap of each zone at the nominal pose before scraping, µm. */
  readonly heights_um: ArrayLike<number>;
  /** Metal to come off each zone, µm, 0 or above; left out: none, so how it rests now. */
  readonly depths_um?: ArrayLike<number>;
  /** Left out: even pressure on every zone, {@link assumedRest}. */
  readonly load?: Load;
  readonly stiffness_N_per_mm3?: number;
  readonly film_um?: number;
  readonly roughness_um: number;
}

/** How the slide will rest, and what the blue will show. */
export interface RestForecast {
  readonly rest: RestAnswer;
  /** Expected bearing share of each zone, 0 to 1. */
  readonly print: readonly number[];
  /** Mean gap of each zone on the highest spots, µm. */
  readonly seat_um: readonly number[];
}

/**
 * How a slide will rest once depths are off, and the print to expect then: the check of a plan, and next round's forecast.
 * @throws RangeError  heights or depths not one a zone
 */
export function restAfterScraping(scraped: ScrapedSlide, start?: PoseNumbers): RestForecast {
  const { slide, heights_um, depths_um } = scraped;
  if (depths_um && depths_um.length !== heights_um.length)
    throw new RangeError(`${depths_um.length} depths; expected one for each of ${heights_um.length} zones`);
  const film_um = scraped.film_um ?? assumedRest.film_um;
  const blueing: Blueing = { roughness_um: scraped.roughness_um, film_um };
  const gaps = Array.from(heights_um, (height, z) => height + (depths_um?.[z] ?? 0));
  const wrench = scraped.load ? wrenchOf(scraped.load) : evenWrench(slide, assumedRest.pressure_N_per_mm2);
  const stiffness_N_per_mm3 = scraped.stiffness_N_per_mm3 ?? assumedRest.stiffness_N_per_mm3;
  const found = restUnder({ slide, stiffness_N_per_mm3, film_um }, gaps, wrench, start);
  // The pose is that of the zones' means; the blue shows where the highest spots hold the part off.
  const roughly = roughRest({
    slide,
    gap_um: gaps,
    wrench,
    stiffness_N_per_mm3,
    roughness_um: scraped.roughness_um,
  });
  const seat = roughly.converged ? roughly.gap_um : found.gap_um;
  return { rest: found, print: predictedPrint(seat, blueing), seat_um: seat };
}
