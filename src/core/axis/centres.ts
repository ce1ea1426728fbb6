import { limpness, overhangSag, type Stiff, tipLoadSag } from '../kit/beam.ts';
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
    }
  | {
      /** An indicator on a bracket in the spindle, its plunger toward the axis, swung round the tailstock's barrel; plus: plunger in. */
      readonly kind: 'swung indicator';
      /** On the top, or the operator's side. */
      readonly first_um: number;
      /** Underneath, or at the back. */
      readonly opposite_um: number;
      /** What the bracket's own sag makes a swing from top to underside read too much; 0 sideways. */
      readonly bracket: SwungSag;
      readonly plane: 'up' | 'sideways';
      readonly reading_sd_um: number;
    };

/** Top less underside on something that is true, twice what the bracket droops, µm; and one sd. */
export interface SwungSag {
  readonly um: number;
  readonly sd_um: number;
}

/** A round arm that carries an indicator at its end. */
export interface Arm extends Stiff {
  readonly arm_mm: number;
  readonly diameter_mm: number;
  readonly mass_kg: number;
}

/** Clamps and joints give more than the arm does: what is worked out is known so badly, as a share; common practice. */
const armShare = 0.3;

/** The same worked out: 2 (m g l³ / 3EI + q l⁴ / 8EI). Source: beam tables; checks/sums-sag.check.ts. */
export function swungSag({ arm_mm, diameter_mm, mass_kg, ...stiff }: Arm): SwungSag {
  const section = { kind: 'round', diameter_mm, bore_mm: 0 } as const;
  const droop =
    tipLoadSag(arm_mm, mass_kg, section, stiff.modulus_GPa) +
    overhangSag(limpness(section, stiff), arm_mm).sag_um;
  return { um: 2 * droop, sd_um: armShare * 2 * droop };
}

/** Where the tailstock's centre lies against the spindle's. */
export interface CentresFound {
  readonly plane: 'up' | 'sideways';
  /** Plus: the tailstock is high, or toward the operator. */
  readonly um: number;
  readonly sd_um: number;
  /** What the bars themselves were out by, where it was parted. */
  readonly bars_um: number;
  /** What the bracket's sag made it read too high, µm; taken out. */
  readonly bracket_um?: number;
}

/** @throws RangeError  places that are not between the centres, in order */
export function centresOf(reading: CentresReading): CentresFound {
  const { plane, reading_sd_um } = reading;
  if (reading.kind === 'two bars') {
    const { kept, turned } = halves(reading.first_um, reading.exchanged_um);
    // Each difference is of two readings (sd u√2), and two of them are averaged.
    return { plane, um: kept, sd_um: reading_sd_um, bars_um: turned };
  }
  if (reading.kind === 'swung indicator') {
    const { first_um, opposite_um, bracket } = reading;
    const half = (first_um - opposite_um) / 2;
    // Half the difference of two readings has sd u/√2.
    const sd_um = Math.hypot(reading_sd_um / Math.SQRT2, bracket.sd_um / 2);
    return { plane, um: half - bracket.um / 2, sd_um, bars_um: 0, bracket_um: bracket.um / 2 };
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
