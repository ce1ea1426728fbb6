import type { MaterialName } from './material.ts';

/** When it was last checked, ISO 8601 date; told, never reckoned with. */
interface Owned {
  readonly name: string;
  readonly checked?: string;
}

/** An indicator, a lever gauge or a comparator: reads lengths. */
export interface Indicator extends Owned {
  readonly kind: 'indicator';
  readonly graduation_um: number;
  /** One sd of reading the same place again. */
  readonly repeatability_um: number;
}

/** A spirit level, an electronic level or an autocollimator with its mirror's foot: reads tilts. */
export interface TiltReader extends Owned {
  readonly kind: 'level' | 'electronic level' | 'autocollimator';
  readonly graduation_urad: number;
  /** One sd of reading the same place again, set down anew. */
  readonly repeatability_urad: number;
  /** Between its feet. */
  readonly base_mm: number;
  /** Class of JIS B 7510, for a spirit level. */
  readonly class?: 'A' | 'B';
  /** One sd of its zero, when it is not found by turning; left out: one graduation. */
  readonly zero_urad?: number;
}

/** An indicator, level or autocollimator: what it reads to, and how well it is known. */
export type Instrument = Indicator | TiltReader;

/** What is known of a reference's own error. */
export type Known =
  | { readonly by: 'grade'; readonly standard: string; readonly grade: string }
  /** Measured: what is left after its error is taken out is the certificate's doubt, two sd. */
  | { readonly by: 'certificate'; readonly doubt_um: number }
  /** Somebody's word: out by no more than this. */
  | { readonly by: 'limit'; readonly limit_um: number };

/** A reference: what readings are held against. */
export interface Reference extends Owned {
  readonly kind: 'plate' | 'straightedge' | 'square' | 'test bar' | 'parallels' | 'gauge blocks';
  /** Of gauge blocks: the highest stack. */
  readonly length_mm: number;
  /** Of a plate. */
  readonly width_mm?: number;
  readonly known: Known;
  /** One sd of setting it down again, over its length; left out: 1 µm, common practice. */
  readonly reseat_um?: number;
  /** Depth of a straightedge, diameter of a bar, and what it is made of: with these sag and bow are worked out. */
  readonly depth_mm?: number;
  readonly bore_mm?: number;
  readonly material?: MaterialName;
}

/** The instruments and references at hand. */
export interface Kit {
  readonly instruments: readonly Instrument[];
  readonly references: readonly Reference[];
}

/** How warm one side is against the other, and how well that is known. */
export interface Warmth {
  /** Top warmer than the underside by, K. */
  readonly warmer_K: number;
  /** One sd. */
  readonly sd_K: number;
}

interface Measured {
  readonly name: string;
  readonly instrument: string;
}

/** An indicator swept along a square: squareness, a slope. */
export interface SquareSweep extends Measured {
  readonly method: 'square sweep';
  readonly reference: string;
  readonly length_mm: number;
  readonly points: number;
  /** Sweeps on each side. */
  readonly sweeps: number;
  /** Times the square is set down on each side. */
  readonly seats: number;
  readonly turned_over: boolean;
}

/** A level set down on a face: tilt, a slope. */
export interface LevelTilt extends Measured {
  readonly method: 'level';
  readonly readings: number;
  /** Turned end for end, as many readings again. */
  readonly turned: boolean;
}

/** A level or a mirror stepped along a way: straightness, a height. */
export interface LevelWalk extends Measured {
  readonly method: 'level walk';
  readonly length_mm: number;
  /** Runs there, or there and back: 1, 2 … */
  readonly runs: number;
}

/** An indicator along a straightedge: straightness, a height. */
export interface StraightedgeSweep extends Measured {
  readonly method: 'straightedge sweep';
  readonly reference: string;
  readonly length_mm: number;
  readonly sweeps: number;
  readonly seats: number;
  readonly turned_over: boolean;
  readonly plane: 'vertical' | 'horizontal';
  /** From each end to its support; left out: the points of least sag. */
  readonly support_mm?: number;
  readonly sag_taken_out: boolean;
  readonly warmth?: Warmth;
}

/** An indicator at two places of a bar in a spindle: parallelism of an axis, a slope. */
export interface BarReading extends Measured {
  readonly method: 'test bar';
  readonly reference: string;
  /** Between the two places. */
  readonly length_mm: number;
  readonly readings: number;
  readonly turned_half: boolean;
  readonly plane: 'vertical' | 'horizontal';
  readonly sag_taken_out: boolean;
}

/** A part spotted on a plate: flatness, a height. */
export interface PlatePrint {
  readonly method: 'plate print';
  readonly name: string;
  readonly reference: string;
  /** Thickness of the film, µm. */
  readonly film_um: number;
  readonly prints: number;
}

/** How far blocks from their box and a machine differ in warmth, one sd, K: common practice for a shop without a climate. */
export const usualApart_K = 0.5;

/** An indicator carried from a stack of gauge blocks to a place: a height. */
export interface BlockHeight extends Measured {
  readonly method: 'height by blocks';
  readonly reference: string;
  readonly height_mm: number;
  /** Blocks wrung together. */
  readonly blocks: number;
  readonly readings: number;
  /** Times the stack is set down. */
  readonly seats: number;
  /** How far blocks and machine may differ in warmth, one sd, K. */
  readonly apart_K: number;
}

/** A level across two ways at one end and at the other: twist, a slope that its zero drops out of. */
export interface LevelTwist extends Measured {
  readonly method: 'level twist';
  readonly readings: number;
}

/** An indicator along one way with its plunger on another: parallelism, a height. */
export interface CarriedIndicator extends Measured {
  readonly method: 'carried indicator';
  readonly sweeps: number;
}

/** An indicator on a surface plate that carries the face, or that is moved about it: flatness, a height. */
export interface PlateHeights extends Measured {
  readonly method: 'plate heights';
  readonly reference: string;
  readonly sweeps: number;
}

/** How a target is measured with what is at hand. */
export type SetUp =
  | SquareSweep
  | LevelTilt
  | LevelWalk
  | StraightedgeSweep
  | BarReading
  | PlatePrint
  | BlockHeight
  | LevelTwist
  | CarriedIndicator
  | PlateHeights;

/** What a set-up measures: a slope in µrad, or a height in µm. */
export const quantityOf = (setup: SetUp): 'slope' | 'height' =>
  setup.method === 'square sweep' ||
  setup.method === 'level' ||
  setup.method === 'level twist' ||
  setup.method === 'test bar'
    ? 'slope'
    : 'height';

/** A limit to be proven, in the unit of what is measured: µrad or µm. A straightness or flatness has only `high`. */
export interface KitTarget {
  readonly name: string;
  readonly low?: number;
  readonly high: number;
  readonly unit: 'urad' | 'um';
}
