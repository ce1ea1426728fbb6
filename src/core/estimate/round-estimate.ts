import { featureRow } from '../body/feature.ts';
import { jointCovariance, product } from '../math/gaussian.ts';
import type { Known } from './filter.ts';
import type { SlideModel } from './model.ts';
import { featureOf, type RoundPose } from './pose.ts';
import { seatedGaps, settledRow } from './seat.ts';
import type { FeatureEstimate, RemovalEstimate, RoundEstimate, ZoneEstimate } from './slide-estimate.ts';

/** Features with their joint covariance, which holds those that are seen, in order. */
export interface FeaturesKnown {
  readonly features: readonly FeatureEstimate[];
  readonly covariance: readonly (readonly number[])[];
}

/** Why a feature has no number, or undefined when it has one. */
export type WhyUnseen = (row: ArrayLike<number>) => 'not held' | 'not read' | undefined;

/** The first round's features: those of its readings alone. */
export function featuresRead(model: SlideModel, pose: RoundPose, why: WhyUnseen): FeaturesKnown {
  const features = model.features.map((feature, k): FeatureEstimate => {
    const { name } = feature;
    const unseen = why(model.featureRows[k]!);
    const read = featureOf(pose, feature);
    if (unseen || !read) return { name, seen: false, why: unseen ?? 'not read' };
    return { name, seen: true, ...read };
  });
  const rows = model.features.flatMap((feature, k) => (features[k]!.seen ? [featureRow(feature)] : []));
  const covariance = rows.map((a) =>
    rows.map((b) =>
      a.reduce((sum, p, i) => sum + p * b.reduce((part, q, j) => part + q * pose.covariance[i]![j]!, 0), 0),
    ),
  );
  return { features, covariance };
}

/** Later rounds' features: those of the settled pose, J h. */
export function featuresSettled(model: SlideModel, known: Known, why: WhyUnseen): FeaturesKnown {
  const unseen = model.featureRows.map(why);
  const rows = model.featureRows.flatMap((row, k) =>
    unseen[k] ? [] : [settledRow(model, known.settled, row)],
  );
  const covariance = jointCovariance(known.state, rows);
  let at = 0;
  const features = model.features.map(({ name }, k): FeatureEstimate => {
    const reason = unseen[k];
    if (reason) return { name, seen: false, why: reason };
    const i = at++;
    const sd = Math.sqrt(Math.max(0, covariance[i]![i]!));
    return { name, seen: true, value: product(rows[i]!, known.state.mean), sd };
  });
  return { features, covariance };
}

/**
 * What a share of blue is worth in µm hangs on roughness and film, which are off by as much in every round: a share of the
 * removal that no number of rounds averages away. It goes into the doubt that is told; the weighing of causes, which compares
 * rounds of one job with each other, has no part of it.
 */
const commonToAllRounds = 0.06;

/** What is known after a round, as numbers a person can read. */
export function roundEstimate(
  model: SlideModel,
  known: Known,
  round: number,
  features: FeaturesKnown,
): RoundEstimate {
  const { layout } = model;
  const { mean, covariance, size } = known.state;
  // Before anything is scraped the removal is what was said of it, with the doubt that was said.
  const common = round === 0 ? 0 : commonToAllRounds;
  const removalSd = (i: number) =>
    Math.sqrt(Math.max(0, covariance[i * size + i]!) + (common * mean[i]!) ** 2);
  const removal = layout.materials.map(
    (material, k): RemovalEstimate => ({
      material,
      whole_um: mean[layout.whole(k)]!,
      whole_sd_um: removalSd(layout.whole(k)),
      spot_um: mean[layout.spot(k)]!,
      spot_sd_um: removalSd(layout.spot(k)),
    }),
  );
  const zones = seatedGaps(model, known.state, known.settled).map(
    (gap, z): ZoneEstimate => ({ gap_um: gap.mean, sd_um: gap.sd, share: known.shares[z]! }),
  );
  return {
    round,
    ...features,
    removal,
    zones,
    ...(known.expected ? { expected_shares: known.expected() } : {}),
  };
}
