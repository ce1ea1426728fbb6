import type { Limit, Scaling } from './limit.ts';

/** How a number came to us. Nothing here says that a machine agrees with a standard: nobody has held it against one. */
export type Came = 'seen' | 'second hand' | 'from memory' | 'common practice' | "shop's own";

/** Where a limit comes from. */
export interface LimitSource {
  readonly came: Came;
  /** "as remembered of …": what it was read in, or who chose it. */
  readonly words: string;
}

/**
 * Three curves that must never share a name: what the iron is, where the carriage goes on it, and where the tool goes.
 */
export type Curve = 'form of the way' | 'path of the carriage' | 'path of the tool';
export const curves: readonly Curve[] = ['form of the way', 'path of the carriage', 'path of the tool'];

/** A limit over a shorter length, anywhere along the whole. */
export interface LocalLimit {
  /** On machines up to this size; the last entry has none. */
  readonly up_to_mm?: number;
  readonly um: number;
  readonly any_mm: number;
}

/** A limit as one class of machine has it. */
export interface ClassLimit extends Limit {
  readonly source: LimitSource;
  readonly local?: readonly LocalLimit[];
}

/** One acceptance test, in our own words. */
export interface AcceptanceTest {
  readonly id: string;
  /** The part of the machine it stands under. */
  readonly group: string;
  /** Says what is tested; no other test has this name. */
  readonly name: string;
  /** Of tests that draw a line along a way: which of the three curves. */
  readonly curve?: Curve;
  /**
   * `slope`: a fall over a length, which may be measured over another one. `size`: a number of µm by itself.
   */
  readonly kind: 'slope' | 'size';
  /** What plus means: "convex", "the free end rises". Absent for what has only a size. */
  readonly plus?: string;
  /** What is measured and how: what rides, what is touched, what is turned over. */
  readonly how: string;
  /** Over what it is measured, mm, or the machine's dimension; left out: the length of its limit. */
  readonly length?: number | string;
  /** The dimension that steps go by. */
  readonly by?: string;
  /** By class. */
  readonly limits: Readonly<Record<string, ClassLimit>>;
  /** Which way is permitted and why, in words. */
  readonly direction?: { readonly allowed: string; readonly reason: string };
  /** The feature of a job that answers it. */
  readonly feature?: string;
  /** About how long one measurement takes, minutes: common practice, for telling which is the cheapest. */
  readonly minutes: number;
}

/** A machine's size that limits and lengths go by. */
export interface ListDimension {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The acceptance tests of a kind of machine. */
export interface TestList {
  readonly id: string;
  readonly machine: string;
  /** What it was put together from, and that it is no standard. */
  readonly about: string;
  readonly classes: readonly { readonly id: string; readonly name: string }[];
  readonly dimensions: readonly ListDimension[];
  readonly scaling: Scaling & { readonly source: LimitSource };
  readonly groups: readonly string[];
  readonly tests: readonly AcceptanceTest[];
  /** Tests of the published list that are not here, each with why. */
  readonly left_out: readonly { readonly what: string; readonly why: string }[];
}
