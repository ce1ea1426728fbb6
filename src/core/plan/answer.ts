import type { PoseNumbers } from '../body/displacement.ts';
import type { Vector } from '../body/vector.ts';
import type { Alarm } from '../estimate/cause.ts';
import type { SweepFit } from '../estimate/sweep-fit.ts';
import type { Print } from '../observe/round.ts';

/** A feature as a number a person can act on: µrad for a turn, µm for a shift. */
export interface FeatureAnswer {
  readonly name: string;
  readonly value: number;
  readonly sd: number;
  /** value − 2 sd and value + 2 sd: where it lies 19 times in 20. */
  readonly low: number;
  readonly high: number;
  /** Chance that it lies in its target's band; 1 when no target is set on it. */
  readonly chance_in_band: number;
}

/** What one pass takes off a material, as learned so far. */
export interface RemovalAnswer {
  readonly material: string;
  readonly um: number;
  readonly sd_um: number;
}

/** What is to be done on one zone. */
export interface ZoneAnswer {
  readonly pad: string;
  /** 0 at the minus end of the travel. */
  readonly zone: number;
  readonly centre_mm: Vector;
  /** The continuous answer: metal to take off, µm. */
  readonly depth_um: number;
  /** The whole-number answer. */
  readonly passes: number;
  /** How many of them to make before measuring again. */
  readonly passes_now: number;
}

/** Alignment and bearing are two verdicts, never one. */
export interface BearingVerdict {
  readonly verdict: 'proven' | 'not proven' | 'not printed';
  /** Share of the pads' area that bears, 0 to 1; absent when nothing was printed. */
  readonly share?: number;
  /** The least share of any zone. */
  readonly least_zone?: number;
}

export interface AlignmentVerdict {
  readonly verdict: 'proven' | 'not proven' | 'outside';
  /** Chance that every target is met at once. */
  readonly chance: number;
  /** Each target by itself. */
  readonly targets: readonly { readonly feature: string; readonly chance: number }[];
}

export interface Warning {
  /** Short and stable: "outlier", "scatter", "slow pass". */
  readonly code: string;
  readonly text: string;
}

/** A forecast's sds, µrad or µm; their squares add up to the whole. */
export interface DoubtBudget {
  /** The feature. */
  readonly name: string;
  /** How much a pass takes. */
  readonly removal: number;
  /** Scatter of the passes. */
  readonly scatter: number;
  /** Where the slide is now: readings, prints, reference faces. */
  readonly readings: number;
  readonly whole: number;
}

/** What to do next with a slide: where, how many passes, what should come of it, and whether it may stop. */
export interface SlidePlan {
  readonly action: 'scrape' | 'spot' | 'stop';
  readonly alignment: AlignmentVerdict;
  readonly bearing: BearingVerdict;
  readonly zones: readonly ZoneAnswer[];
  /** Of `depth_um`. */
  readonly volume_mm3: number;
  /** Features after all passes of the plan. */
  readonly predicted: readonly FeatureAnswer[];
  /** Features when it is next measured: after `passes_now`. */
  readonly predicted_now: readonly FeatureAnswer[];
  /** Where the doubt of `predicted_now` comes from; one a feature. */
  readonly doubt: readonly DoubtBudget[];
  /** How far the plan lowers each pad's middle toward its way, µm. One a pad. */
  readonly settle_um: readonly number[];
  /** Share of each zone expected to take colour after `passes_now`, 0 to 1; one a zone. */
  readonly expected_shares: readonly number[];
}

/** What elastic contact expects of a plan, beside what the plan expects of itself: after `passes_now`. */
export interface RestCheck {
  /** How far each feature moves, µrad or µm. */
  readonly moved: Readonly<Record<string, number>>;
  /** The next print: expected share of blue by pad and zone, 0 to 1. */
  readonly print: Print;
  /** How far those shares may be off, one sd: estimate, removal, scatter of passes and film, and where high spots fall. */
  readonly print_sd: Print;
  /** By area, 0 to 1. */
  readonly bearing_share: number;
  /** False when the part would not sit still on its pads. */
  readonly rests: boolean;
}

/** What `steer` answers; see docs/contract.md. */
export interface SteerAnswer {
  readonly ok: true;
  readonly estimate: {
    readonly features: readonly FeatureAnswer[];
    readonly removal: readonly RemovalAnswer[];
    /** The last round's sweeps looked at by themselves. */
    readonly sweeps: readonly SweepFit[];
    /** The settled pose as known: [t_x, t_y, t_z] µm and [ω_x, ω_y, ω_z] µrad. */
    readonly pose: PoseNumbers;
  };
  readonly plan: SlidePlan;
  readonly rest: RestCheck;
  readonly warnings: readonly Warning[];
  /** The last round went otherwise than chance allows: settle this before scraping. */
  readonly alarm?: Alarm;
}
