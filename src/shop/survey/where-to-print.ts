import { BadInput } from '../../contract/refusal.ts';
import { siteInput } from '../../contract/site.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import { facingOf } from '../parts/lathe-parts.ts';
import { type SiteAnswer, type SiteShows, site, usualLimits } from '../site.ts';
import { siteWorking } from '../site-working.ts';
import type { Worked } from '../worked.ts';
import { bedReach, hungOver, toolAt, usualWork } from './usual-work.ts';

/** What is known of the work: where the machine works, the weight, where the tool stands in the slide's frame, what parts may be out. */
export interface WorkPlaces {
  /** Stretch of the bed that the middle of the slide works over, and where most, mm from the headstock end. */
  readonly from_mm: number;
  readonly to_mm: number;
  readonly most_mm: number;
  readonly weight_kg: number;
  /** Tool from the middle of the slide's own frame: across (plus: to the back) and up. */
  readonly tool_across_mm: number;
  readonly tool_up_mm: number;
  /** What a place of printing may cost, rms over the work, by what the machine shows: µm, µrad. */
  readonly diameter_um: number;
  readonly facing_um: number;
  readonly parallel_um: number;
  readonly square_urad: number;
  readonly lean_urad: number;
  readonly plan_urad: number;
}

/** What a job's machine shows of where its slide was printed: a block where its file says one, turned parts where a feature makes faces concave, else the slide. */
export const showsFor = (plan: JobPlan): SiteShows =>
  plan.makes ? 'block' : facingOf(plan) === undefined ? 'slide' : 'turned';

/** What may be allowed of it. */
export const limitNames = {
  turned: ['diameter_um', 'facing_um'],
  block: ['parallel_um', 'square_urad'],
  slide: ['lean_urad', 'plan_urad'],
} as const satisfies Record<SiteShows, readonly [keyof WorkPlaces, keyof WorkPlaces]>;

/** The work where nothing is said: over the whole bed, most in the first third. */
export function usualPlaces(plan: Pick<JobPlan, 'slide'>, bed: Bed): WorkPlaces {
  const [from_mm, to_mm] = bedReach(plan.slide, bed);
  return {
    ...usualWork,
    ...usualLimits.turned,
    ...usualLimits.block,
    ...usualLimits.slide,
    from_mm,
    to_mm,
    most_mm: from_mm + (to_mm - from_mm) / 3,
  };
}

/** Which of the work does not fit the bed, by name, and what is expected, mm. */
export function misplaced(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  work: WorkPlaces,
): Partial<Record<'from_mm' | 'to_mm' | 'most_mm', readonly [low: number, high: number]>> {
  const [first, last] = bedReach(plan.slide, bed);
  const off = (at: number, low: number, high: number) => at < low - 1e-6 || at > high + 1e-6;
  const from = Math.min(Math.max(first, work.from_mm), last);
  const isFrom = off(work.from_mm, first, last);
  const isTo = off(work.to_mm, from, last);
  return {
    ...(isFrom ? { from_mm: [first, last] as const } : {}),
    ...(isTo ? { to_mm: [from, last] as const } : {}),
    ...(!isFrom && !isTo && off(work.most_mm, work.from_mm, work.to_mm)
      ? { most_mm: [work.from_mm, work.to_mm] as const }
      : {}),
  };
}

/** Places to choose from, and places of work, at most. */
const mostPlaces = 13;
const workPlaces = 21;
/** The ends of the stretch see this share of the work at its peak. */
const endShare = 0.1;

/** Places at round distances over a stretch. */
function roundPlaces(from: number, to: number, most: number): number[] {
  const step =
    [10, 20, 25, 50, 100, 200, 250, 500, 1000].find((one) => (to - from) / one <= most - 1) ??
    (to - from) / most;
  const first = Math.ceil(from / step - 1e-9) * step;
  const places: number[] = [];
  for (let at = first; at <= to + 1e-6; at += step) places.push(at);
  return places.length ? places : [(from + to) / 2];
}

/** Places that the slide works at, evenly over its stretch; what lies beyond the surveyed bed is left away. */
export function placesOfWork(plan: Pick<JobPlan, 'slide'>, bed: Bed, work: WorkPlaces): number[] {
  const [first, last] = bedReach(plan.slide, bed);
  const from = Math.max(first, Math.min(work.from_mm, last));
  const to = Math.max(from, Math.min(work.to_mm, last));
  if (to - from < 1e-6) return [from];
  return Array.from({ length: workPlaces }, (_, k) => from + ((to - from) * k) / (workPlaces - 1));
}

/** Where to print, with its working. */
export type PlaceFound = SiteAnswer & { readonly working: readonly Worked[] };

/** Where to print the slide on this bed; or in words why that cannot be told. */
export function whereToPrint(
  plan: JobPlan,
  bed: Bed,
  work: WorkPlaces,
  system: UnitSystem = 'metric',
): PlaceFound | { readonly ok: false; readonly text: string } {
  const shows = showsFor(plan);
  const [first, last] = bedReach(plan.slide, bed);
  if (last < first)
    return { ok: false, text: 'The surveyed bed is shorter than the slide: survey further along.' };
  const positions_mm = placesOfWork(plan, bed, work);
  const [from, to] = [positions_mm[0]!, positions_mm.at(-1)!];
  const peak = Math.min(to, Math.max(from, work.most_mm));
  const duty = positions_mm.map((at) => {
    const side = at < peak ? peak - from : to - peak;
    return side > 0 ? 1 - (1 - endShare) * (Math.abs(at - peak) / side) : 1;
  });
  try {
    const answer = site(
      siteInput({
        slide: plan.slide,
        bed,
        load: hungOver(plan.slide, work.weight_kg),
        stiffness_N_per_mm3: assumedRest.stiffness_N_per_mm3,
        film_um: plan.film_um ?? assumedRest.film_um,
        candidates_mm: roundPlaces(first, last, mostPlaces),
        positions_mm,
        duty,
        tool_mm: toolAt(plan.slide, work.tool_across_mm, work.tool_up_mm),
        ...(plan.makes ? { makes: plan.makes } : shows === 'slide' ? { shows } : {}),
        allow: Object.fromEntries(limitNames[shows].map((name) => [name, work[name]])),
      }),
    );
    return answer.ok
      ? { ...answer, working: siteWorking(answer, duty, system) }
      : { ok: false, text: answer.text };
  } catch (failure) {
    if (failure instanceof BadInput)
      return {
        ok: false,
        text: failure.issues.map((issue) => `${issue.found}; expected ${issue.expected}`).join('. '),
      };
    throw failure;
  }
}
