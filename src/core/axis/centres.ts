import { halves } from '../kit/reversal.ts';
import { type Judged, judge } from '../prove/verdict.ts';
import type { TurnedReading } from './bar-axis.ts';
import { type Bar, centredSag } from './bar-sag.ts';

/** How the tailstock was held against the spindle; readings plus: bar high, or toward the operator. */
export type CentresReading =
  | {
      /** One bar between the centres, read near each; turned half round so that its own bend drops out. */
      readonly kind: 'bar between centres';
      readonly bar: Bar;
      readonly between_mm: number;
      /** The two places, from the headstock's centre. */
      readonly head_at_mm: number;
      readonly tail_at_mm: number;
      readonly head: TurnedReading;
      readonly tail: TurnedReading;
      readonly plane: 'up' | 'sideways';
      readonly reading_sd_um: number;
    }
  | {
      /** Two bars of one size held in the two bores, read equally far out; exchanged so that their difference drops out. */
      readonly kind: 'two bars';
      /** Tailstock less headstock, bars as they are and exchanged. */
      readonly first_um: number;
      readonly exchanged_um: number;
      readonly plane: 'up' | 'sideways';
      readonly reading_sd_um: number;
    };

/** Where the tailstock's centre lies against the spindle's. */
export interface CentresFound {
  readonly plane: 'up' | 'sideways';
  /** Plus: the tailstock is high, or toward the operator. */
  readonly um: number;
  readonly sd_um: number;
  /** What the bars themselves were out by, where it was parted. */
  readonly bars_um: number;
}

/** @throws RangeError  places that are not between the centres, in order */
export function centresOf(reading: CentresReading): CentresFound {
  const { plane, reading_sd_um } = reading;
  if (reading.kind === 'two bars') {
    const { kept, turned } = halves(reading.first_um, reading.exchanged_um);
    // Each difference is of two readings (sd u√2), and two of them are averaged.
    return { plane, um: kept, sd_um: reading_sd_um, bars_um: turned };
  }
  const { bar, between_mm, head_at_mm, tail_at_mm } = reading;
  if (!(0 <= head_at_mm && head_at_mm < tail_at_mm && tail_at_mm <= between_mm))
    throw new RangeError(`places ${head_at_mm} and ${tail_at_mm} mm between centres ${between_mm} mm apart`);
  const head = halves(reading.head.first_um, reading.head.turned_um);
  const tail = halves(reading.tail.first_um, reading.tail.turned_um);
  const hangs = (at_mm: number): number => (plane === 'up' ? centredSag(bar, between_mm, at_mm) : 0);
  const times = between_mm / (tail_at_mm - head_at_mm);
  const rises = tail.kept + hangs(tail_at_mm) - (head.kept + hangs(head_at_mm));
  return { plane, um: rises * times, sd_um: reading_sd_um * times, bars_um: tail.turned - head.turned };
}

/** What is to be done about a tailstock's height. */
export interface HeightDeed {
  readonly judged: Judged;
  /** `raise`: liner or shim under its whole face; `lower`: scrape evenly; `leave`: proven within. */
  readonly deed: 'raise' | 'lower' | 'leave' | 'measure again';
  /** By how much, µm, to come to the aim. */
  readonly by_um: number;
}

/** A tailstock may stand high and not low: scraping only lowers it, and so does wear. */
export function heightDeed(found: CentresFound, low_um: number, high_um: number, aim_um: number): HeightDeed {
  const judged = judge(found.um, 2 * found.sd_um, low_um, high_um);
  const by_um = aim_um - found.um;
  const deed =
    judged.verdict === 'within'
      ? 'leave'
      : judged.verdict === 'not proven'
        ? 'measure again'
        : by_um > 0
          ? 'raise'
          : 'lower';
  return { judged, deed, by_um: deed === 'leave' || deed === 'measure again' ? 0 : Math.abs(by_um) };
}
