import { byPad } from '../core/body/slide.ts';
import { estimateSlide } from '../core/estimate/estimate-slide.ts';
import { settledMean } from '../core/estimate/seat.ts';
import type { SlideEstimate } from '../core/estimate/slide-estimate.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { RestCheck, SteerAnswer, Warning } from '../core/plan/answer.ts';
import { featureAnswer } from '../core/plan/answers.ts';
import type { Plan } from '../core/plan/plan.ts';
import { planSlide } from '../core/plan/plan-slide.ts';
import { filmScatter, gapSdAfter } from '../core/plan/print-doubt.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import type { Solve } from '../core/plan/program.ts';
import { foretellPrint } from '../core/print/foretold.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { assumedRest } from '../core/rest/after-scraping.ts';
import { checkPlan } from '../core/rest/plan-check.ts';
import { restWarnings, sweepWarnings } from './steer-warnings.ts';

/**
 * How far out, how sure, where to scrape, how many passes, or stop: the whole of `steer`.
 * @param system  units of the warnings
 */
export async function steer(
  input: SteerInput,
  solve: Solve,
  system: UnitSystem = 'metric',
): Promise<SteerAnswer | NoAnswer> {
  return steerFrom(input, estimateSlide(input), solve, system);
}

/** The same from an estimate that is made already. */
export async function steerFrom(
  input: SteerInput,
  estimate: SlideEstimate,
  solve: Solve,
  system: UnitSystem = 'metric',
): Promise<SteerAnswer | NoAnswer> {
  const planned = await planSlide(input, estimate, solve);
  if (!planned.ok) return planned;
  const { ok: _, warnings, ...plan } = planned;
  const { model, known } = estimate;
  const check = restCheck(input, estimate, planned);
  const now = Object.fromEntries(
    estimate.features.flatMap((one) => (one.seen ? [[one.name, one.value]] : [])),
  );
  const told: Warning[] = [
    ...sweepWarnings(estimate.sweeps, input.rounds.at(-1)!.sweeps, system),
    ...warnings,
    ...restWarnings(now, planned, check),
  ];
  return {
    ok: true,
    estimate: {
      features: estimate.features.flatMap((one) =>
        one.seen ? [featureAnswer(one.name, one.value, one.sd, input.targets)] : [],
      ),
      removal: estimate.removal.map(({ material, whole_um, whole_sd_um }) => ({
        material,
        um: whole_um,
        sd_um: whole_sd_um,
      })),
      sweeps: estimate.sweeps,
      pose: settledMean(model, known.state, known.settled),
    },
    plan,
    rest: check,
    warnings: told,
    ...(estimate.alarm ? { alarm: estimate.alarm } : {}),
  };
}

/** Rests the slide on its zones, before and after the passes to be made now: what elastic contact expects of the plan. */
function restCheck(input: SteerInput, estimate: SlideEstimate, plan: Plan): RestCheck {
  const { model } = estimate;
  const spot = plan.action === 'spot';
  const removal = estimate.removal.map((one) => (spot ? one.spot_um : one.whole_um));
  const count = plan.zones.map((zone, z) => zone.passes_now * (spot ? estimate.zones[z]!.share : 1));
  const depths_um = count.map((passes, z) => passes * removal[model.materialOf[z]!]!);
  const { film_um } = model;
  const { roughness_um } = assumedRest;
  const { moved, print, seat_um, bearing_share, converged } = checkPlan(
    {
      slide: input.slide,
      heights_um: estimate.zones.map((zone) => zone.gap_um),
      depths_um,
      film_um,
      roughness_um,
    },
    input.features,
  );
  const foretold = foretellPrint({
    slide: input.slide,
    gap_um: seat_um,
    gap_sd_um: gapSdAfter(estimate, { spot, count }),
    roughness_um,
    film_um,
    film_sd_um: filmScatter * film_um,
  });
  const print_sd = byPad(
    input.slide,
    foretold.map((zone) => zone.sd),
  );
  return { moved, print, print_sd, bearing_share, rests: converged };
}
