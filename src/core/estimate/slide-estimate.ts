import type { Alarm, Cause } from './cause.ts';
import type { Known } from './filter.ts';
import type { SlideModel } from './model.ts';
import type { SweepFit } from './sweep-fit.ts';

/** A feature as known: a number with its doubt, or the reason why there is none. */
export type FeatureEstimate =
  | { readonly name: string; readonly seen: true; readonly value: number; readonly sd: number }
  | { readonly name: string; readonly seen: false; readonly why: 'not held' | 'not read' };

/** What a pass takes off a material, as learned so far. */
export interface RemovalEstimate {
  readonly material: string;
  readonly whole_um: number;
  readonly whole_sd_um: number;
  /** A spotting pass, over what bears. */
  readonly spot_um: number;
  readonly spot_sd_um: number;
}

/** A zone's mean gap at rest, µm, plus: open. */
export interface ZoneEstimate {
  readonly gap_um: number;
  readonly sd_um: number;
  /** Share that bears: as printed, or as expected where it was not. */
  readonly share: number;
}

/** What was known after one round, with nothing from later ones. */
export interface RoundEstimate {
  /** From 0. */
  readonly round: number;
  readonly features: readonly FeatureEstimate[];
  /** Joint covariance of the features that are seen, in their order. */
  readonly covariance: readonly (readonly number[])[];
  readonly removal: readonly RemovalEstimate[];
  readonly zones: readonly ZoneEstimate[];
  /** Share of each zone that was expected to take colour before the print was seen; absent in the first round. */
  readonly expected_shares?: readonly number[];
  /** The round went otherwise than recorded, beyond chance; the numbers go on with the likeliest cause. */
  readonly alarm?: Alarm;
}

/** All that the rounds so far tell of a slide. */
export interface SlideEstimate extends RoundEstimate {
  readonly rounds: readonly RoundEstimate[];
  /** What else may be so after an alarm, and what the features would be then; empty when nothing is in doubt. */
  readonly otherwise: readonly OtherwiseEstimate[];
  /** The last round's sweeps looked at by themselves. */
  readonly sweeps: readonly SweepFit[];
  readonly model: SlideModel;
  /** The joint state, enough to predict from. */
  readonly known: Known;
}

/** Another belief about the rounds so far than the one gone on with. */
export interface OtherwiseEstimate {
  /** Absent: all as recorded. */
  readonly cause?: Cause;
  /** Chance of it, beside what is gone on with and the others. */
  readonly chance: number;
  readonly features: readonly FeatureEstimate[];
  readonly covariance: readonly (readonly number[])[];
}
