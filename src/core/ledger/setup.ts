import type { AxisName, Vector } from '../body/vector.ts';
import type { Side } from '../observe/sweep.ts';

/** What both kinds of set-up card say in words and drawing. */
interface Card {
  /** Short, stable; entries refer to it. */
  readonly id: string;
  readonly name: string;
  /** "Are the cross ways square to the bed?" */
  readonly question: string;
  /** Which figure of draw/setup shows it. */
  readonly drawing: string;
  /** The features this set-up tells of, the first one above all. */
  readonly tells: readonly string[];
  /** One line each: what rides, what touches, what plus is, in words of the shop. */
  readonly rides_words: string;
  readonly touches_words: string;
  readonly plus_words: string;
  /** What a climbing and a falling number mean on the part: "concave", "convex". */
  readonly climbs_words: string;
  readonly falls_words: string;
  readonly caution?: string;
}

/** An indicator carried along a line in even stops. */
export interface SweepSetup extends Card {
  readonly kind: 'sweep';
  readonly rides: Side;
  readonly touches: Side;
  /** From the indicator's body to the touched face. */
  readonly plunger: Vector;
  readonly from_mm: Vector;
  readonly to_mm: Vector;
  /** Stops, first and last included. */
  readonly points: number;
  readonly reading_sd_um: number;
  /** Which reference face is touched; its error is one error over all rounds. */
  readonly face: string;
  readonly face_slope_urad: number;
  readonly face_slope_sd_urad: number;
  /** The line lies on a test bar held in the slide: instead of the sweep, the bar may be read at two places and turned half round. */
  readonly bar?: true;
}

/** A level laid on the slide. */
export interface LevelSetup extends Card {
  readonly kind: 'level';
  readonly along: Vector;
  readonly sd_urad: number;
}

/** A gauge between a face of the slide and the reference. */
export interface HeightSetup extends Card {
  readonly kind: 'height';
  readonly at_mm: Vector;
  readonly direction: Vector;
  readonly sd_um: number;
}

export type Setup = SweepSetup | LevelSetup | HeightSetup;

/** How a feature is spoken of: its span and what its two directions are called. */
export interface FeatureWords {
  readonly feature: string;
  /** A turn is spoken as a fall over this length, mm (300), or 12 in. */
  readonly span_mm: number;
  /** "convex", "concave"; "back low", "back high". */
  readonly minus: string;
  readonly plus: string;
  /** Whole sentences for a value below and above zero: "At the back the cross ways lean to the tailstock." */
  readonly minus_sentence: string;
  readonly plus_sentence: string;
}

/** How the ends and sides of the part are called, for maps and drawings. */
export interface PlaceWords {
  /** At the minus and plus end of the travel: "headstock end", "tailstock end". */
  readonly minus_end: string;
  readonly plus_end: string;
  /** At the minus and plus side across: "operator's side", "back of the machine". */
  readonly minus_side: string;
  readonly plus_side: string;
  readonly travel: AxisName;
}
