import { displacementAlong, type PoseNumbers, poseFromNumbers } from '../body/displacement.ts';
import type { Target } from '../body/feature.ts';
import type { Slide, Zone } from '../body/slide.ts';
import { unit } from '../body/vector.ts';
import { chanceWithin } from '../math/normal.ts';
import type { FeatureAnswer, ZoneAnswer } from './answer.ts';

/** A feature with its interval and its chance in the band of its target. */
export function featureAnswer(
  name: string,
  value: number,
  sd: number,
  targets: readonly Target[],
): FeatureAnswer {
  const target = targets.find((one) => one.feature === name);
  return {
    name,
    value,
    sd,
    low: value - 2 * sd,
    high: value + 2 * sd,
    chance_in_band: target ? chanceWithin(value, sd, target.low, target.high) : 1,
  };
}

/** Depths and passes put down zone by zone. All lists one a zone. */
export const zoneAnswers = (
  zones: readonly Zone[],
  depth_um: readonly number[],
  passes: readonly number[],
  passes_now: readonly number[],
): ZoneAnswer[] =>
  zones.map((zone, z) => ({
    pad: zone.pad.name,
    zone: zone.index,
    centre_mm: zone.centre_mm,
    depth_um: depth_um[z]!,
    passes: passes[z]!,
    passes_now: passes_now[z]!,
  }));

/** How far a movement lowers each pad's middle toward the way it rests on, µm; one a pad. */
export const padSettling = (slide: Slide, move: PoseNumbers): number[] =>
  slide.pads.map((pad) => -displacementAlong(poseFromNumbers(move), unit(pad.normal), pad.centre_mm));
