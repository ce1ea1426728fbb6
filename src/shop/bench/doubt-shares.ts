import { featureRow } from '../../core/body/feature.ts';
import { settledPose, settling } from '../../core/body/settle.ts';
import { zonesOf } from '../../core/body/slide.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { RemovalAnswer, ZoneAnswer } from '../../core/plan/answer.ts';
import type { Valued } from './feature-line.ts';

/** Where the doubt of a forecast comes from, as sds in the feature's unit; squares add up to the whole. */
export interface DoubtShares {
  /** How much a pass takes is not known better. */
  readonly removal: number;
  /** Scatter of the passes, and all else that the forecast holds. */
  readonly scatter: number;
  /** The readings so far. */
  readonly readings: number;
  readonly whole: number;
}

/**
 * Parts the doubt of a forecast. The removal's part is what one sd of it does through the planned passes; the readings'
 * part is the doubt now; the rest of the square is the scatter of the passes.
 *
 *     whole² = readings² + removal² + scatter²
 *
 * @param now, predicted  the same feature before and after the passes; sd in µrad or µm
 */
export function doubtShares(
  plan: Pick<JobPlan, 'slide' | 'features'>,
  zones: readonly ZoneAnswer[],
  removal: readonly RemovalAnswer[],
  now: Valued,
  predicted: Valued,
): DoubtShares | undefined {
  const feature = plan.features.find((one) => one.name === now.name);
  if (!feature || zones.length === 0) return undefined;
  const row = featureRow(feature);
  const settled = settling(plan.slide);
  const moved = (material: string, sd_um: number): number => {
    const depths = zonesOf(plan.slide).map((zone) => {
      const answer = zones.find((one) => one.pad === zone.pad.name && one.zone === zone.index);
      return zone.pad.material === material ? (answer?.passes_now ?? 0) * sd_um : 0;
    });
    const pose = settledPose(settled, depths);
    return row.reduce((sum, part, j) => sum + part * pose[j]!, 0);
  };
  const removalSd = Math.hypot(...removal.map(({ material, sd_um }) => moved(material, sd_um)));
  const left = predicted.sd ** 2 - now.sd ** 2 - removalSd ** 2;
  // A forecast that is surer than the readings alone has no room left for scatter.
  return {
    removal: removalSd,
    scatter: Math.sqrt(Math.max(0, left)),
    readings: now.sd,
    whole: predicted.sd,
  };
}
