import { BadInput } from '../../contract/refusal.ts';
import { siteInput } from '../../contract/site.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import { type SiteAnswer, site } from '../site.ts';

/** What is known of the work: where the machine works, the weight and where the tool stands, in the slide's frame. */
export interface WorkPlaces {
  /** Stretch of the bed that the middle of the slide works over, and where most, mm from the headstock end. */
  readonly from_mm: number;
  readonly to_mm: number;
  readonly most_mm: number;
  readonly weight_kg: number;
  /** Tool from the middle of the slide's own frame: across (plus: to the back) and up. */
  readonly tool_across_mm: number;
  readonly tool_up_mm: number;
}

/** What was usual where nothing is said: shop's own, common practice for a mid-size lathe. */
export const usualWork = { weight_kg: 100, tool_across_mm: -60, tool_up_mm: 180 } as const;

const gravity_N_per_kg = 9.80665;
/** Places to choose from, and places of work, at most. */
const mostPlaces = 13;
const workPlaces = 21;
/** The ends of the stretch see this share of the work at its peak. */
const endShare = 0.1;

/** The stretch over which every zone of the slide stands on surveyed bed, for its middle. */
export function reachOf(plan: JobPlan, bed: Bed): readonly [number, number] {
  const travel = 'xyz'.indexOf(plan.slide.free);
  const low = Math.min(...plan.slide.pads.map((pad) => pad.centre_mm[travel]! - pad.length_mm / 2));
  const high = Math.max(...plan.slide.pads.map((pad) => pad.centre_mm[travel]! + pad.length_mm / 2));
  return [bed.stations_mm[0]! - low, bed.stations_mm.at(-1)! - high];
}

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

/** Where to print the slide on this bed; or in words why that cannot be told. */
export function whereToPrint(
  plan: JobPlan,
  bed: Bed,
  work: WorkPlaces,
): SiteAnswer | { readonly ok: false; readonly text: string } {
  const [first, last] = reachOf(plan, bed);
  if (last < first)
    return { ok: false, text: 'The surveyed bed is shorter than the slide: survey further along.' };
  const from = Math.max(first, Math.min(work.from_mm, last));
  const to = Math.max(from, Math.min(work.to_mm, last));
  const positions_mm = Array.from(
    { length: workPlaces },
    (_, k) => from + ((to - from) * k) / (workPlaces - 1),
  );
  const peak = Math.min(to, Math.max(from, work.most_mm));
  const duty = positions_mm.map((at) => {
    const side = at < peak ? peak - from : to - peak;
    return side > 0 ? 1 - (1 - endShare) * (Math.abs(at - peak) / side) : 1;
  });
  const { pads } = plan.slide;
  const area = pads.map((pad) => pad.length_mm * pad.width_mm);
  const whole = area.reduce((sum, one) => sum + one, 0);
  // Nobody weighs where a slide's weight hangs: over the middle of what carries it.
  const middle = [0, 1, 2].map(
    (k) => pads.reduce((sum, pad, i) => sum + pad.centre_mm[k]! * area[i]!, 0) / whole,
  );
  const up = plan.slide.free === 'z' ? 0 : 2;
  const across = plan.slide.free === 'y' ? 0 : 1;
  const tool_mm = [0, 0, 0];
  tool_mm[across] = work.tool_across_mm;
  tool_mm[up] = work.tool_up_mm;
  const direction = [0, 0, 0];
  direction[up] = -1;
  try {
    const answer = site(
      siteInput({
        slide: plan.slide,
        bed,
        load: { force_N: work.weight_kg * gravity_N_per_kg, at_mm: middle, direction },
        stiffness_N_per_mm3: assumedRest.stiffness_N_per_mm3,
        film_um: plan.film_um ?? assumedRest.film_um,
        candidates_mm: roundPlaces(first, last, mostPlaces),
        positions_mm,
        duty,
        tool_mm,
      }),
    );
    return answer.ok ? answer : { ok: false, text: answer.text };
  } catch (failure) {
    if (failure instanceof BadInput)
      return {
        ok: false,
        text: failure.issues.map((issue) => `${issue.found}; expected ${issue.expected}`).join('. '),
      };
    throw failure;
  }
}
