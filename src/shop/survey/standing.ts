import { type Pose, poseFromNumbers, rise } from '../../core/body/displacement.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import { travelOnBed } from '../../core/parts/on-bed.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import type { SiteAnswer } from '../site.ts';
import { hungOver } from './usual-work.ts';

/** Where the slide stands worst for the work when printed at a place: index among the places of work. */
export function worstStand(
  answer: Pick<SiteAnswer, 'candidates' | 'facing_mm' | 'shows'>,
  printed_mm: number,
): number {
  const { yaw_urad, roll_urad, tool_across_um } = answer.candidates.find((one) => one.at_mm === printed_mm)!;
  // Where nothing is turned there is no tool across: how far it turns about its travel and in plan counts.
  const costs = yaw_urad.map((yaw, i) =>
    answer.shows === 'turned'
      ? Math.hypot(2 * tool_across_um[i]!, rise(yaw, answer.facing_mm))
      : Math.hypot(roll_urad[i]!, yaw),
  );
  return costs.indexOf(Math.max(...costs));
}

/** How a slide printed at one place stands at another, against its rest where it was printed; undefined where it does not rest. */
export function standing(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  places: { readonly printed_mm: number; readonly at_mm: number; readonly weight_kg: number },
): Pose | undefined {
  const travel = travelOnBed({
    slide: plan.slide,
    bed,
    load: hungOver(plan.slide, places.weight_kg),
    stiffness_N_per_mm3: assumedRest.stiffness_N_per_mm3,
    printed_mm: places.printed_mm,
    positions_mm: [places.at_mm],
  });
  return 'ok' in travel ? undefined : poseFromNumbers(travel.poses[0]!);
}
