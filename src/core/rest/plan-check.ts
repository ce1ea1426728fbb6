import { type Feature, featureRow } from '../body/feature.ts';
import { byPad, zonesOf } from '../body/slide.ts';
import type { Print } from '../observe/round.ts';
import { type RestForecast, restAfterScraping, type ScrapedSlide } from './after-scraping.ts';
import { acrossTravel, type RestAnswer } from './rest.ts';

/** What elastic contact expects of a plan, beside what the plan expects of itself. */
export interface PlanCheck {
  /** How far each feature moves, µrad or µm, by rest on what touches rather than by a rigid settle. */
  readonly moved: Readonly<Record<string, number>>;
  /** The next print: expected share of blue by pad and zone. */
  readonly print: Print;
  /** Mean gap of each zone behind that print, µm. */
  readonly seat_um: readonly number[];
  /** By area, 0 to 1. */
  readonly bearing_share: number;
  /** False when the part would not rest on its pads. */
  readonly converged: boolean;
}

/**
 * Checks a plan by resting the slide before and after its depths are off.
 * @param scraped  heights now and the depths that the passes should take
 */
export function checkPlan(
  scraped: ScrapedSlide & { readonly depths_um: ArrayLike<number> },
  features: readonly Feature[],
): PlanCheck {
  const { depths_um, ...before } = scraped;
  const now = restAfterScraping(before);
  const then = restAfterScraping(scraped, poseNumbers(scraped, now.rest));
  const [from, to] = [poseNumbers(scraped, now.rest), poseNumbers(scraped, then.rest)];
  const moved = features.map((feature) => {
    const row = featureRow(feature);
    return [feature.name, row.reduce((sum, part, i) => sum + part * (to[i]! - from[i]!), 0)] as const;
  });
  return {
    moved: Object.fromEntries(moved),
    print: byPad(scraped.slide, then.print),
    seat_um: then.seat_um,
    bearing_share: shareOf(scraped, then),
    converged: now.rest.converged && then.rest.converged,
  };
}

type SixNumbers = [number, number, number, number, number, number];

/** Shifts across the travel and turns as one pose; along the travel 0. */
function poseNumbers({ slide }: ScrapedSlide, { shift_um, turn_urad }: RestAnswer): SixNumbers {
  const pose: SixNumbers = [0, 0, 0, ...turn_urad];
  acrossTravel(slide.free).forEach((axis, k) => {
    pose['xyz'.indexOf(axis)] = shift_um[k]!;
  });
  return pose;
}

function shareOf({ slide }: ScrapedSlide, { print }: RestForecast): number {
  const zones = zonesOf(slide);
  const area = zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
  return zones.reduce((sum, zone, z) => sum + zone.area_mm2 * print[z]!, 0) / area;
}
