import type { Target } from '../body/feature.ts';
import type { SlideModel } from '../estimate/model.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { jointChance } from '../math/joint-normal.ts';
import { chanceWithin } from '../math/normal.ts';
import type { AlignmentVerdict, BearingVerdict } from './answer.ts';

/** Both verdicts ask for this: chance of all targets at once, and of each. */
export const provenChance = 0.9;
/** Blue on this share of the pads' area, and of every zone (figures of this tool; common practice asks for even bearing, not for more). */
export const provenShare = { area: 0.6, zone: 0.25 };

/** Features with their joint doubt, as a round or another belief about it has them. */
type Belief = Pick<SlideEstimate, 'features' | 'covariance'>;

/**
 * Is the slide aligned? All targets in their bands at once with chance above 0.90, and each of them by itself.
 * What else may be so after an alarm counts by its chance: a slide is not proven true on a square that may have moved.
 */
export function alignmentOf(
  estimate: Belief & Pick<SlideEstimate, 'otherwise'>,
  targets: readonly Target[],
): AlignmentVerdict {
  const left = 1 - estimate.otherwise.reduce((sum, one) => sum + one.chance, 0);
  const beliefs = [{ chance: left, belief: estimate as Belief }].concat(
    estimate.otherwise.map((one) => ({ chance: one.chance, belief: one })),
  );
  const mean = (of: (belief: Belief) => number) =>
    beliefs.reduce((sum, { chance, belief }) => sum + chance * of(belief), 0);
  const each = targets.map((target) => ({
    feature: target.feature,
    chance: mean((belief) => chanceOf(belief, [target])),
  }));
  const chance = mean((belief) => chanceOf(belief, targets));
  const known = each.every((one) => isSeen(estimate, one.feature));
  const proven = chance > provenChance && each.every((one) => one.chance > provenChance);
  const outside = known && each.some((one) => one.chance < 1 - provenChance);
  return { verdict: proven ? 'proven' : outside ? 'outside' : 'not proven', chance, targets: each };
}

const isSeen = (belief: Belief, name: string): boolean =>
  belief.features.some((feature) => feature.seen && feature.name === name);

/** Chance that all these targets are met at once; 0 when one of them was never seen. */
function chanceOf({ features, covariance }: Belief, targets: readonly Target[]): number {
  const seen = features.filter((feature) => feature.seen);
  const asked = targets.map((target) => seen.findIndex((feature) => feature.name === target.feature));
  if (asked.includes(-1)) return 0;
  if (asked.length === 1) {
    const { value, sd } = seen[asked[0]!]!;
    return chanceWithin(value, sd, targets[0]!.low, targets[0]!.high);
  }
  return jointChance(
    asked.map((k) => seen[k]!.value),
    asked.map((i) => asked.map((j) => covariance[i]![j]!)),
    targets,
  );
}

/**
 * Does it bear? From the last round's print alone: a share is what was seen, not what was expected. Faces that nothing may come
 * off only carry (the flats under a gib) and are not judged.
 */
export function bearingOf(model: SlideModel, print: readonly (number | undefined)[]): BearingVerdict {
  const all = model.zones.map((zone, z) => ({ ...zone, share: print[z] }));
  const worked = all.filter((zone) => zone.pad.stock_um !== 0);
  const judged = worked.length > 0 ? worked : all;
  if (judged.some((zone) => zone.share === undefined)) return { verdict: 'not printed' };
  const area = judged.reduce((sum, zone) => sum + zone.area_mm2, 0);
  const share = judged.reduce((sum, zone) => sum + zone.area_mm2 * zone.share!, 0) / area;
  const least_zone = Math.min(...judged.map((zone) => zone.share!));
  const proven = share >= provenShare.area && least_zone >= provenShare.zone;
  return { verdict: proven ? 'proven' : 'not proven', share, least_zone };
}
