import { slope } from '../body/displacement.ts';
import { halves } from '../kit/reversal.ts';
import { type Bar, heldSag } from './bar-sag.ts';

/** One sd of an indicator's reading that is taken when none is given, µm; common practice. */
export const usualReadingSd_um = 1.5;

/** Which line of the bar the plunger touches; the operator stands in front. */
export type BarSide = 'top' | 'bottom' | 'front' | 'back';

/** The two readings at a place, spindle as it is and turned half round; plus: plunger pushed in. */
export interface TurnedReading {
  readonly first_um: number;
  readonly turned_um: number;
}

/** A bar read along one line, the indicator carried by the travel that the axis is held against. */
export interface TurnedBar {
  readonly side: BarSide;
  readonly near: TurnedReading;
  readonly far: TurnedReading;
}

/** A test bar held at one end, and the two places it is read at. */
export interface HeldBar {
  readonly bar: Bar;
  /** How far it stands out. */
  readonly out_mm: number;
  /** The two places, from where it is held. */
  readonly near_mm: number;
  readonly far_mm: number;
  /** One sd of a reading. */
  readonly reading_sd_um: number;
}

/** An axis against the travel, in one plane. */
export interface AxisFound {
  readonly plane: 'up' | 'sideways';
  /** Plus: the free end is high, or lies toward the operator. */
  readonly slope_urad: number;
  readonly sd_urad: number;
  /** Sag that was taken out between the two places, µm; 0 sideways. */
  readonly sag_um: number;
  /** The bar's own error at the two places, µm: what turned with the spindle. */
  readonly bar_um: { readonly near: number; readonly far: number };
}

/** What a plunger on this side sees: +1 when it is pushed in by a bar that comes up, or toward the operator. */
export const sideSign = (side: BarSide): 1 | -1 => (side === 'top' || side === 'front' ? 1 : -1);
export const planeOf = (side: BarSide): AxisFound['plane'] =>
  side === 'top' || side === 'bottom' ? 'up' : 'sideways';

/** How well sag is known, as a share: the bar’s stiffness, and where it is really held; common practice. */
const sagShare = 0.05;

/** How much lower the bar hangs at its far place than at its near one, µm. */
export const sagBetween = ({ bar, out_mm, near_mm, far_mm }: HeldBar): number =>
  heldSag(bar, out_mm, far_mm) - heldSag(bar, out_mm, near_mm);

/**
 * The axis from a test bar read at two places, each with the spindle turned half round:
 *
 *     axis = (mean far − mean near) / distance,   mean = (first + turned)/2
 *
 * The bar's own error drops out with the half turn; its sag does not, and is taken out by the beam formula.
 * @throws RangeError  places that are not in order, or beyond the bar's end
 */
export function axisOf(held: HeldBar, reading: TurnedBar): AxisFound {
  const { near_mm, far_mm, out_mm, reading_sd_um } = held;
  if (!(0 <= near_mm && near_mm < far_mm && far_mm <= out_mm))
    throw new RangeError(
      `places ${near_mm} and ${far_mm} mm on a bar ${out_mm} mm out; expected them in order`,
    );
  const sign = sideSign(reading.side);
  const plane = planeOf(reading.side);
  const near = halves(sign * reading.near.first_um, sign * reading.near.turned_um);
  const far = halves(sign * reading.far.first_um, sign * reading.far.turned_um);
  const between_mm = far_mm - near_mm;
  const sag_um = plane === 'up' ? sagBetween(held) : 0;
  // Each mean of two readings has sd u/√2; two of them differ by sd u.
  const sd_um = Math.hypot(reading_sd_um, sagShare * sag_um);
  return {
    plane,
    slope_urad: slope(far.kept - near.kept + sag_um, between_mm),
    sd_urad: slope(sd_um, between_mm),
    sag_um,
    bar_um: { near: near.turned + 0, far: far.turned + 0 },
  };
}
