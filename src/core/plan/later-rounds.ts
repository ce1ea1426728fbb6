import { displacementRow } from '../body/displacement.ts';
import { type Settling, settling } from '../body/settle.ts';
import { padStarts, zoneVector } from '../body/slide.ts';
import { unit } from '../body/vector.ts';
import { seatedGaps, settledMean } from '../estimate/seat.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { product } from '../math/gaussian.ts';
import type { SteerInput } from '../observe/round.ts';
import { type Evening, type EveningProblem, type Held, planEvening } from './evening.ts';
import type { Solve } from './program.ts';

/** What is to be made next, once readings and prints of the slide are known. All lists one a zone. */
export interface NextPasses {
  readonly action: 'scrape' | 'spot';
  readonly passes: readonly number[];
  /** How many of them before measuring again. */
  readonly passes_now: readonly number[];
  /** What one pass takes off the zone's mean height: a spotting pass by the share that bears. */
  readonly unit_um: readonly number[];
  /** How the part is taken to settle while they are made. */
  readonly settled: Settling;
}

/** Features are planned to within this share of the half band around the aim. */
const heldShare = 1 / 3;
/** A zone that does not bear now will carry in part once evened out; one that does carries in full. */
const carriesAnyhow = 0.3;
/** Prices, in passes over a mean zone; found on simulated slides (tests/loop), flat about these values. */
const roughPrice = { pass: 1, largest: 25, own: 5, feature: 400 };
const spotPrice = { pass: 0.6, largest: 12, own: 4, feature: 150 };
/** Whole passes are worth it when they lessen the largest unevenness by a pass, or bring features nearer by this share of the band than spotting would. */
const worth = { passes: 1, band: 0.15 };
/** While the removal of a pass is known to no better than a fifth, three quarters of the way is enough to learn it. */
const bite = { unsure: 0.75, unsureAbove: 0.2 };
/** A zone with less blue than this is not spotted; more than this of it bears hard. */
const blue = { least: 0.04, hard: 0.75 };
/** Below this share of the area bearing is poor: what bears hard is spotted twice. */
const poorShare = 0.5;
const mostPasses = { whole: 60, spot: 3 };

/** Whole passes or spotting, planned on the state: the slide evened out, its features held near their aims. */
export async function planLaterRound(
  input: SteerInput,
  estimate: SlideEstimate,
  bearingShare: number | undefined,
  solve: Solve,
): Promise<NextPasses> {
  const rough = roughProblem(input, estimate);
  const spot = spotProblem(rough, estimate, bearingShare);
  const [rougher, spotted] = [await planEvening(rough, solve), await planEvening(spot, solve)];
  const gained = rougher.before_um - rougher.after_um;
  const nearer = awayAfter(spot, spotted) - awayAfter(rough, rougher);
  if (gained < worth.passes * rough.pass_um && nearer <= worth.band)
    return {
      action: 'spot',
      passes: spotted.passes,
      passes_now: spotted.passes,
      unit_um: spot.unit_um,
      settled: spot.settled,
    };
  return {
    action: 'scrape',
    passes: rougher.passes,
    passes_now: isUnsure(estimate, rougher.passes) ? await firstBite(rough, rougher, solve) : rougher.passes,
    unit_um: rough.unit_um,
    settled: rough.settled,
  };
}

/** Whether the removal of a pass is still a guess for any material that is to be scraped. */
export function isUnsure(estimate: SlideEstimate, passes: readonly number[]): boolean {
  const { model } = estimate;
  return estimate.removal.some(
    ({ material, whole_um, whole_sd_um }) =>
      whole_sd_um > bite.unsureAbove * whole_um &&
      passes.some((m, z) => m > 0 && model.zones[z]!.pad.material === material),
  );
}

/** Three quarters of the way of a plan, in whole passes and never more than the plan on any zone. */
export async function firstBite(
  problem: EveningProblem,
  plan: Evening,
  solve: Solve,
): Promise<readonly number[]> {
  const part = await planEvening(
    {
      ...problem,
      most: plan.passes,
      // Gaps as if the last quarter were made already: what is left to even out is the first three.
      gap_um: problem.gap_um.map((gap, z) => plan.gap_um[z]! + bite.unsure * (gap - plan.gap_um[z]!)),
      held: problem.held.map((held) => {
        const way = bite.unsure * product(held.row, plan.move);
        const slack = 0.02 * held.band;
        return { ...held, low: held.now + way - slack, high: held.now + way + slack };
      }),
    },
    solve,
  );
  return part.passes;
}

/** How far the worst feature is out of its held range after a plan, as a share of its band. */
const awayAfter = (problem: EveningProblem, plan: Evening): number =>
  problem.held.reduce((most, held) => {
    const value = held.now + product(held.row, plan.move);
    return Math.max(most, Math.max(held.low - value, value - held.high, 0) / held.band);
  }, 0);

/** Metal taken off each zone so far, µm, as the removal is known now. */
export function takenSoFar(input: SteerInput, estimate: SlideEstimate): number[] {
  const { model } = estimate;
  const taken = model.zones.map(() => 0);
  input.rounds.forEach((round, k) => {
    if (!round.scraped) return;
    const shares = estimate.rounds[k]!.zones;
    zoneVector(input.slide, round.scraped.passes).forEach((m, z) => {
      const removal = estimate.removal[model.materialOf[z]!]!;
      taken[z]! += round.scraped!.spot ? m * removal.spot_um * shares[z]!.share : m * removal.whole_um;
    });
  });
  return taken;
}

export function roughProblem(input: SteerInput, estimate: SlideEstimate): EveningProblem {
  const { model, known } = estimate;
  const settled = settling(
    model.slide,
    model.zones.map((zone, z) => zone.area_mm2 * (carriesAnyhow + (1 - carriesAnyhow) * known.shares[z]!)),
  );
  const pose = settledMean(model, known.state, settled);
  const now = settledMean(model, known.state, known.settled);
  const unit_um = model.materialOf.map((k) => estimate.removal[k]!.whole_um);
  const taken = takenSoFar(input, estimate);
  return {
    settled,
    area_mm2: model.zones.map((zone) => zone.area_mm2),
    padStarts: [...padStarts(model.slide), model.zones.length],
    gap_um: model.rows.map((row, z) => known.state.mean[z]! + product(row, pose)),
    gapSd_um: seatedGaps(model, known.state, known.settled).map((gap) => gap.sd),
    unit_um,
    most: model.zones.map((zone, z) =>
      Math.max(
        0,
        Math.min(mostPasses.whole, Math.floor(((zone.pad.stock_um ?? Infinity) - taken[z]!) / unit_um[z]!)),
      ),
    ),
    wish: model.zones.map(() => 0),
    held: heldFeatures(input, estimate, now),
    sinks: (input.sink ?? []).map((limit) => {
      const row = displacementRow(unit(limit.direction ?? [0, 0, 1]), limit.at_mm);
      return { row, most_um: limit.most_um - sunkSoFar(row, taken, estimate) };
    }),
    price: roughPrice,
    pass_um: Math.max(...unit_um),
  };
}

/** How far what was taken off has let a place sink against its direction, µm; 0 or above. */
function sunkSoFar(row: ArrayLike<number>, taken: readonly number[], { model }: SlideEstimate): number {
  const settled = settling(model.slide);
  const pose = settled.response.map((line) => product(line, taken));
  return Math.max(0, -product(row, pose));
}

function spotProblem(
  rough: EveningProblem,
  estimate: SlideEstimate,
  bearingShare: number | undefined,
): EveningProblem {
  const { model, known } = estimate;
  const poor = (bearingShare ?? 1) < poorShare;
  const spot_um = model.materialOf.map((k) => estimate.removal[k]!.spot_um);
  return {
    ...rough,
    settled: known.settled,
    gap_um: estimate.zones.map((zone) => zone.gap_um),
    unit_um: spot_um.map((um, z) => um * known.shares[z]!),
    most: known.shares.map((share, z) => (share > blue.least && rough.most[z]! > 0 ? mostPasses.spot : 0)),
    wish: known.shares.map((share, z) => {
      if (share <= blue.least || rough.most[z]! === 0) return 0;
      return poor && share > blue.hard ? 2 : 1;
    }),
    price: spotPrice,
    pass_um: Math.max(...spot_um),
  };
}

function heldFeatures(input: SteerInput, estimate: SlideEstimate, pose: ArrayLike<number>): Held[] {
  const { model } = estimate;
  return input.targets.map((target) => {
    const row = model.featureRows[model.features.findIndex((feature) => feature.name === target.feature)]!;
    const half = (target.high - target.low) / 2;
    const aim = target.aim ?? (target.low + target.high) / 2;
    return {
      name: target.feature,
      row,
      now: product(row, pose),
      low: Math.max(target.low, aim - heldShare * half),
      high: Math.min(target.high, aim + heldShare * half),
      band: 2 * half,
    };
  });
}
