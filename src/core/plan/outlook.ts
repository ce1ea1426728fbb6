import type { Target } from '../body/feature.ts';
import type { Settling } from '../body/settle.ts';
import { expectedShares, zoneRoughness } from '../estimate/bearing.ts';
import { takeScraping } from '../estimate/scraping.ts';
import { settledRow } from '../estimate/seat.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { copyGaussian, product, varianceOf } from '../math/gaussian.ts';
import type { DoubtBudget, FeatureAnswer } from './answer.ts';
import { featureAnswer } from './answers.ts';

/** What is to be expected once passes are made. */
export interface Outlook {
  readonly features: readonly FeatureAnswer[];
  readonly doubt: readonly DoubtBudget[];
  /** Share of each zone expected to take colour. */
  readonly shares: readonly number[];
}

/**
 * Carries the state through passes that are yet to be made.
 * @param count   one a zone: passes, or for spotting passes × share that bears
 * @param settled how the part is taken to settle
 */
export function outlook(
  estimate: SlideEstimate,
  made: { readonly spot: boolean; readonly count: readonly number[] },
  settled: Settling,
  targets: readonly Target[],
): Outlook {
  const { model, known } = estimate;
  const state = copyGaussian(known.state);
  takeScraping(model, state, { ...made, wider: 1 });
  const features: FeatureAnswer[] = [];
  const doubt: DoubtBudget[] = [];
  estimate.features.forEach((feature, k) => {
    if (!feature.seen) return;
    const row = settledRow(model, settled, model.featureRows[k]!);
    const moved = product(row, state.mean) - product(row, known.state.mean);
    const added = Math.max(0, varianceOf(state, row) - varianceOf(known.state, row));
    // The doubt now is the feature's own, so that a plan of no passes forecasts what is known.
    const whole = Math.sqrt(feature.sd ** 2 + added);
    features.push(featureAnswer(feature.name, feature.value + moved, whole, targets));
    const removal = Math.min(removalSd(estimate, made, row), Math.sqrt(added));
    doubt.push({
      name: feature.name,
      removal,
      scatter: Math.sqrt(Math.max(0, added - removal ** 2)),
      readings: feature.sd,
      whole,
    });
  });
  const passed = known.passed.map((sum, z) => sum + (made.spot ? 0 : made.count[z]!));
  const rough = zoneRoughness(model, known.state, passed);
  return { features, doubt, shares: expectedShares(model, state, settled, rough) };
}

/** What the removal's own doubt does to a row's value through the passes. */
function removalSd(
  { model, removal }: SlideEstimate,
  made: { readonly spot: boolean; readonly count: readonly number[] },
  row: ArrayLike<number>,
): number {
  const parts = removal.map((one, k) => {
    const sd = made.spot ? one.spot_sd_um : one.whole_sd_um;
    return made.count.reduce((sum, m, z) => sum + (model.materialOf[z] === k ? m * row[z]! : 0), 0) * sd;
  });
  return Math.hypot(...parts);
}
