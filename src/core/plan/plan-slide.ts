import type { PoseNumbers } from '../body/displacement.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { product } from '../math/gaussian.ts';
import type { SteerInput } from '../observe/round.ts';
import type { Warning } from './answer.ts';
import { padSettling, zoneAnswers } from './answers.ts';
import { planDepth } from './depth.ts';
import { after } from './evening.ts';
import {
  firstBite,
  isUnsure,
  type NextPasses,
  planLaterRound,
  roughProblem,
  takenSoFar,
} from './later-rounds.ts';
import { outlook } from './outlook.ts';
import { planPasses } from './passes.ts';
import type { Plan } from './plan.ts';
import { type NoAnswer, type PlanProblem, planProblem, volumeOf } from './problem.ts';
import type { Solve } from './program.ts';
import { alignmentOf, bearingOf } from './standing.ts';

/**
 * What to do next: scrape whole zones, spot the blue, or stop.
 *
 * On one round's readings alone it is the contract's answer: least volume, least whole passes. With a print, or with rounds
 * before, it plans on the state: even bearing and features near their aims, over as few rounds as may be. It stops only when
 * alignment and bearing are both proven.
 */
export async function planSlide(
  input: SteerInput,
  estimate: SlideEstimate,
  solve: Solve,
): Promise<Plan | NoAnswer> {
  const values: Record<string, number> = {};
  for (const feature of estimate.features) if (feature.seen) values[feature.name] = feature.value;
  const unseen = input.targets.find((target) => !(target.feature in values));
  if (unseen) return notSeen(estimate, unseen.feature);

  const { model, known } = estimate;
  const alignment = alignmentOf(estimate, input.targets);
  const bearing = bearingOf(model, known.print);
  const nothing = model.zones.map(() => 0);
  const warnings: Warning[] = [];
  if (alignment.verdict === 'proven' && bearing.verdict === 'proven') {
    const next: NextPasses = {
      action: 'spot',
      passes: nothing,
      passes_now: nothing,
      unit_um: nothing,
      settled: known.settled,
    };
    return { ...composed(input, estimate, next, nothing), action: 'stop', alignment, bearing, warnings };
  }

  const problem = leftProblem(input, estimate, values);
  const single = input.rounds.length === 1 && bearing.verdict === 'not printed';
  const next: (NextPasses & Partial<FirstPasses>) | NoAnswer = single
    ? await firstPasses(input, estimate, problem, warnings, solve)
    : await planLaterRound(input, estimate, bearing.share, solve);
  if ('ok' in next) return next;
  let depth_um: readonly number[] = next.depth_um ?? next.passes.map((m, z) => m * next.unit_um[z]!);
  if (!next.depth_um && next.action === 'scrape') {
    const depths = await planDepth(problem, solve);
    if (!depths.ok) return depths;
    depth_um = depths.depth_um;
  }
  if (next.passes_now.some((m, z) => m < next.passes[z]!))
    warnings.push({
      code: 'first bite',
      text: 'what a pass takes is not known well yet: about three quarters now, then measure; the next round plans the rest',
    });
  if (bearing.verdict === 'not printed')
    warnings.push({
      code: 'not printed',
      text: 'the last round has no print of every zone: bearing cannot be judged',
    });
  return { ...composed(input, estimate, next, depth_um), alignment, bearing, warnings };
}

/** The continuous answer beside the whole passes, which may be none while a feature in its band is still off its aim. */
type FirstPasses = NextPasses & { readonly depth_um: readonly number[] };

/** Answers one round's readings as the contract says, and takes a first bite of it. */
async function firstPasses(
  input: SteerInput,
  estimate: SlideEstimate,
  problem: PlanProblem,
  warnings: Warning[],
  solve: Solve,
): Promise<FirstPasses | NoAnswer> {
  // Depths first: when a limit binds, they say which.
  const depths = await planDepth(problem, solve);
  if (!depths.ok) return depths;
  const found = await planPasses(problem, solve);
  if (!found.ok) return found;
  if (!found.proven)
    warnings.push({
      code: 'best so far',
      text: 'time ran out: fewer passes may do; these keep every target in its band',
    });
  const none = found.passes.every((m) => m === 0);
  const rough = { ...roughProblem(input, estimate), settled: problem.settled };
  const unsure = isUnsure(estimate, found.passes);
  return {
    action: none ? 'spot' : 'scrape',
    passes: found.passes,
    passes_now: unsure ? await firstBite(rough, after(rough, found.passes), solve) : found.passes,
    unit_um: problem.pass_um,
    settled: problem.settled,
    depth_um: depths.depth_um,
  };
}

/** The contract's problem with what is left of stock and of sinking, and the removal as learned. */
function leftProblem(
  input: SteerInput,
  estimate: SlideEstimate,
  values: Readonly<Record<string, number>>,
): PlanProblem {
  const learned = Object.fromEntries(
    estimate.removal.map((one) => [one.material, { um: one.whole_um, sd_um: one.whole_sd_um }]),
  );
  const problem = planProblem(input, values, learned);
  const taken = takenSoFar(input, estimate);
  const sunk = problem.settled.response.map((line) => product(line, taken)) as unknown as PoseNumbers;
  return {
    ...problem,
    stock_um: problem.stock_um.map((stock, z) => Math.max(0, stock - taken[z]!)),
    sinks: problem.sinks.map((sink) => ({
      ...sink,
      most_um: Math.max(0, sink.most_um - Math.max(0, -product(sink.row, sunk))),
    })),
  };
}

function composed(
  input: SteerInput,
  estimate: SlideEstimate,
  next: NextPasses,
  depth_um: readonly number[],
): Omit<Plan, 'alignment' | 'bearing' | 'warnings'> {
  const { model, known } = estimate;
  const spot = next.action === 'spot';
  const count = (passes: readonly number[]) => (spot ? passes.map((m, z) => m * known.shares[z]!) : passes);
  const whole = outlook(estimate, { spot, count: count(next.passes) }, next.settled, input.targets);
  const now = outlook(estimate, { spot, count: count(next.passes_now) }, next.settled, input.targets);
  const taken = next.passes.map((m, z) => m * next.unit_um[z]!);
  const move = next.settled.response.map((line) => product(line, taken)) as unknown as PoseNumbers;
  return {
    ok: true,
    action: next.action,
    zones: zoneAnswers(model.zones, depth_um, next.passes, next.passes_now),
    volume_mm3: volumeOf(model.zones, depth_um),
    predicted: whole.features,
    predicted_now: now.features,
    doubt: now.doubt,
    settle_um: padSettling(input.slide, move),
    expected_shares: now.shares,
  };
}

function notSeen(estimate: SlideEstimate, feature: string): NoAnswer {
  const one = estimate.features.find((found) => found.name === feature);
  const held = !(one && !one.seen && one.why === 'not held');
  return {
    ok: false,
    why: held ? 'not seen' : 'not held',
    limits: [],
    text: held
      ? `no sweep, level or height of any round sees "${feature}"`
      : `no pad holds "${feature}": scraping cannot move it`,
  };
}
