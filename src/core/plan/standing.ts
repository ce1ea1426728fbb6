import type { Target } from '../body/feature.ts';
import type { SlideModel } from '../estimate/model.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { jointChance } from '../math/joint-normal.ts';
import { chanceWithin } from '../math/normal.ts';
import type { AlignmentVerdict, BearingVerdict } from './answer.ts';

/** Both verdicts ask for this: chance of all targets at once, and of each. */
export const provenChance = 0.9;
/** Blue on this share of the pads' area, and of every zone (issue's figures; common practice asks for even bearing, not for more). */
export const provenShare = { area: 0.6, zone: 0.25 };

/** A target's standing by itself. */
export interface TargetStanding {
  readonly feature: string;
  readonly chance: number;
}

export interface AlignmentStanding extends AlignmentVerdict {
  readonly targets: readonly TargetStanding[];
}

/** Is the slide aligned? All targets in their bands at once with chance above 0.90, and each of them by itself. */
export function alignmentOf(
  estimate: Pick<SlideEstimate, 'features' | 'covariance'>,
  targets: readonly Target[],
): AlignmentStanding {
  const seen = estimate.features.filter((feature) => feature.seen);
  const asked = targets.map((target) => seen.findIndex((feature) => feature.name === target.feature));
  const each = targets.map((target, k): TargetStanding => {
    const feature = seen[asked[k]!];
    const chance = feature ? chanceWithin(feature.value, feature.sd, target.low, target.high) : 0;
    return { feature: target.feature, chance };
  });
  const known = asked.every((k) => k >= 0);
  const chance = known
    ? jointChance(
        asked.map((k) => seen[k]!.value),
        asked.map((i) => asked.map((j) => estimate.covariance[i]![j]!)),
        targets,
      )
    : 0;
  const proven = chance > provenChance && each.every((one) => one.chance > provenChance);
  const outside = known && each.some((one) => one.chance < 1 - provenChance);
  return { verdict: proven ? 'proven' : outside ? 'outside' : 'not proven', chance, targets: each };
}

/** Does it bear? From the last round's print alone: a share is what was seen, not what was expected. */
export function bearingOf(model: SlideModel, print: readonly (number | undefined)[]): BearingVerdict {
  if (print.some((share) => share === undefined)) return { verdict: 'not printed' };
  const area = model.zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
  const share = model.zones.reduce((sum, zone, z) => sum + zone.area_mm2 * print[z]!, 0) / area;
  const least_zone = Math.min(...print.map((one) => one!));
  const proven = share >= provenShare.area && least_zone >= provenShare.zone;
  return { verdict: proven ? 'proven' : 'not proven', share, least_zone };
}
