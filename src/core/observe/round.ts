import type { Feature, Target } from '../body/feature.ts';
import type { Slide } from '../body/slide.ts';
import type { Vector } from '../body/vector.ts';
import type { Height } from './height.ts';
import type { Level } from './level.ts';
import type { Sweep } from './sweep.ts';

/** Bearing share 0 to 1 of each zone, by pad. A pad that was not printed is left out. */
export type Print = Readonly<Record<string, readonly number[]>>;

/** Passes made on each zone after the round's measurements, by pad; `spot`: on the blue only. */
export interface Scraped {
  readonly spot?: boolean;
  readonly passes: Readonly<Record<string, readonly number[]>>;
}

/** One turn of the work: set on, measured, printed, lifted, scraped. */
export interface Round {
  readonly sweeps: readonly Sweep[];
  readonly levels: readonly Level[];
  readonly heights?: readonly Height[];
  readonly print?: Print;
  readonly scraped?: Scraped;
  /** Causes of this round's alarm that were looked for at the bench and were not so, by name (core/estimate/cause-name.ts). */
  readonly ruled_out?: readonly string[];
}

/** What one pass takes off a material, as first believed. */
export interface PassSize {
  readonly um: number;
  readonly sd_um: number;
}

/** The slide may not settle by more than this at this place, against this direction (lead screw, feed rod, oil groove). */
export interface SinkLimit {
  readonly name: string;
  readonly at_mm: Vector;
  /** Which way is up here; the limit is on movement the other way. Left out: z. */
  readonly direction?: Vector;
  readonly most_um: number;
}

/** All that `steer` is asked: see docs of the contract. */
export interface SteerInput {
  readonly slide: Slide;
  readonly features: readonly Feature[];
  readonly targets: readonly Target[];
  readonly passes: Readonly<Record<string, PassSize>>;
  readonly sink?: readonly SinkLimit[];
  readonly film_um?: number;
  readonly rounds: readonly Round[];
}
