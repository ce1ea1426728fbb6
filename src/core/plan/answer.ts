import type { Vector } from '../body/vector.ts';
import type { Alarm } from '../estimate/cause.ts';
import type { SweepFit } from '../estimate/sweep-fit.ts';

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
}

export interface Warning {
  /** Short and stable: "outlier", "scatter", "slow pass". */
  readonly code: string;
  readonly text: string;
}

/** What `steer` answers; see docs/contract.md. */
export interface SteerAnswer {
  readonly ok: true;
  readonly estimate: {
    readonly features: readonly FeatureAnswer[];
    readonly removal: readonly RemovalAnswer[];
    /** The last round's sweeps looked at by themselves. */
    readonly sweeps: readonly SweepFit[];
  };
  readonly plan: {
    readonly action: 'scrape' | 'spot' | 'stop';
    readonly alignment: AlignmentVerdict;
    readonly bearing: BearingVerdict;
    readonly zones: readonly ZoneAnswer[];
    readonly volume_mm3: number;
    /** Features after the passes of the plan. */
    readonly predicted: readonly FeatureAnswer[];
    /** How far the plan lowers each pad's middle along its normal, µm; plus: toward the way. One a pad. */
    readonly settle_um: readonly number[];
  };
  readonly warnings: readonly Warning[];
  /** The last round went otherwise than chance allows: settle this before scraping. */
  readonly alarm?: Alarm;
}
