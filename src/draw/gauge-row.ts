import type { Verdict } from '../core/prove/verdict.ts';
import type { GaugeBand } from './jaws.ts';
import type { PinPlace } from './pin.ts';

/** A round on the gauge. Value and doubt (two sd) in the shown unit; the text is how they are spoken. */
export interface GaugeRow {
  readonly kind: 'past' | 'now' | 'forecast';
  /** "R1", "before". */
  readonly label: string;
  readonly value: number;
  readonly doubt: number;
  /** "−43 ± 5"; of a forecast "forecast +11 ± 10". */
  readonly text: string;
  /** Of the row that is now. */
  readonly verdict?: Verdict;
  /** "21 to go": of the row that is now, when it is outside. */
  readonly to_go?: string;
}

export interface GaugeFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  readonly band: GaugeBand;
  /** Oldest first; they stack down the same axis and their centres are joined. */
  readonly rows: readonly GaugeRow[];
  /** What the two directions are called: "convex", "concave". */
  readonly minus_word?: string;
  readonly plus_word?: string;
  /** Ends of the scale; left out: all that must be seen. */
  readonly domain?: readonly [number, number];
  /** Writes the value beside the pin that is now too; left out, the page's hero number says it. */
  readonly show_now_text?: boolean;
}

/** A row with where its pin stands. */
export interface Placed {
  readonly row: GaugeRow;
  readonly place: PinPlace;
}

/** Thickness of a jaw, px. */
export const jawThick = 7;
