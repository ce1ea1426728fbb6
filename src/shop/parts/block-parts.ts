import type { Feature } from '../../core/body/feature.ts';
import type { Vector } from '../../core/body/vector.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { Block } from '../../core/parts/block.ts';
import { blockMade, type MadeBlock } from '../../core/parts/made-block.ts';
import { travelOnBed } from '../../core/parts/on-bed.ts';
import type { Travel } from '../../core/parts/travel.ts';
import type { FeatureAnswer } from '../../core/plan/answer.ts';
import { assumedRest } from '../../core/rest/after-scraping.ts';
import type { Bed } from '../../core/site/bed.ts';
import { bedReach, hungOver, usualWork } from '../survey/usual-work.ts';

/** Places along the surveyed ways that a block is followed over. */
const followed = 9;

/**
 * How the slide goes along its surveyed ways over a block's length, its middle being place 0 and where it was printed; undefined
 * where the ways are too short for the block or the slide does not rest.
 */
export function travelOfBlock(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  length_mm: number,
  height_sd_um: number | undefined,
): Travel | undefined {
  const [first, last] = bedReach(plan.slide, bed);
  if (last - first < length_mm) return undefined;
  const middle = (first + last) / 2;
  const travel = travelOnBed({
    slide: plan.slide,
    bed,
    load: hungOver(plan.slide, usualWork.weight_kg),
    stiffness_N_per_mm3: assumedRest.stiffness_N_per_mm3,
    positions_mm: Array.from({ length: followed }, (_, k) => middle + length_mm * (k / (followed - 1) - 0.5)),
    printed_mm: middle,
    ...(height_sd_um === undefined ? {} : { height_sd_um }),
  });
  return 'ok' in travel ? undefined : { ...travel, stations_mm: travel.stations_mm.map((at) => at - middle) };
}

/** The slide's turns as features tell them, µrad about x, y, z; the axes that none tells stay 0. */
export function turnsTold(
  features: readonly Feature[],
  told: readonly Pick<FeatureAnswer, 'name' | 'value' | 'sd'>[],
): { readonly turn_urad: Vector; readonly sd_urad: Vector } {
  const of = (axis: string, what: 'value' | 'sd') => {
    const feature = features.find((one) => one.kind === 'turn' && one.axis === axis);
    return told.find((one) => one.name === feature?.name)?.[what] ?? 0;
  };
  return {
    turn_urad: [of('x', 'value'), of('y', 'value'), of('z', 'value')],
    sd_urad: [of('x', 'sd'), of('y', 'sd'), of('z', 'sd')],
  };
}

/** A block as the machine of a job makes it, from what is known of its slide. */
export const blockFrom = (
  plan: Pick<JobPlan, 'features'>,
  makes: MadeBlock,
  size_mm: Vector,
  told: readonly Pick<FeatureAnswer, 'name' | 'value' | 'sd'>[],
  travel?: Travel,
): Block => blockMade(makes, size_mm, { ...turnsTold(plan.features, told), ...(travel ? { travel } : {}) });
