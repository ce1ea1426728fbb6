import type { Doubtful } from './pose.ts';

/** What may have happened when a round's readings do not follow from what was recorded. */
export type Cause =
  /** Entered with its sign turned, read backwards, or with the plunger facing the other way. */
  | {
      readonly kind: 'sweep reversed';
      readonly sweep: string;
      /** Rounds, from 0, in which it was; left out: the alarm's round alone. */
      readonly rounds?: readonly number[];
    }
  | { readonly kind: 'reference moved'; readonly face: string }
  | { readonly kind: 'zone missed'; readonly pad: string; readonly zone: number }
  | { readonly kind: 'pass too many'; readonly pad: string }
  | { readonly kind: 'flanks swapped'; readonly pads: readonly [string, string] }
  | { readonly kind: 'map end for end' }
  | { readonly kind: 'not as recorded' };

/** A cause held against the readings. */
export interface CauseFound {
  readonly cause: Cause;
  /** The round, from 0, whose readings it is about, or that followed the scraping it is about; left out: the alarm's. */
  readonly round?: number;
  /** Log of how many times likelier the readings are with it than as recorded, its own rarity counted. */
  readonly log_odds: number;
  /** What the alarm's feature would have read with it (µrad or µm); absent when nothing in the record can tell. */
  readonly would_read?: Doubtful;
}

/** A round that moved a feature otherwise than chance allows. */
export interface Alarm {
  /** From 0. */
  readonly round: number;
  /** The feature that went furthest astray, in its own doubt. */
  readonly feature: string;
  /** Before the scraping, as asked of the scraping, and as found. */
  readonly before: Doubtful;
  readonly asked: Doubtful;
  readonly found: Doubtful;
  /** Chance of readings so far off with everything as recorded. */
  readonly chance: number;
  /** Likeliest first. */
  readonly causes: readonly CauseFound[];
}
