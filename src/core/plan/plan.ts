import type { AlignmentVerdict, BearingVerdict, FeatureAnswer, Warning, ZoneAnswer } from './answer.ts';

/** What to do next with a slide: where, how many passes, what should come of it, and whether it may stop. */
export interface Plan {
  readonly ok: true;
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
  /** Where the doubt of `predicted_now` comes from. */
  readonly doubt: readonly DoubtBudget[];
  /** How far the plan lowers each pad's middle toward its way, µm. One a pad. */
  readonly settle_um: readonly number[];
  /** Share of each zone expected to take colour after `passes_now`; one a zone. */
  readonly expected_shares: readonly number[];
  readonly warnings: readonly Warning[];
}

/** A forecast's sds, µrad or µm; their squares add up to the whole. */
export interface DoubtBudget {
  readonly name: string;
  /** How much a pass takes. */
  readonly removal: number;
  /** Scatter of the passes. */
  readonly scatter: number;
  /** Where the slide is now: readings, prints, reference faces. */
  readonly readings: number;
  readonly whole: number;
}
