import { minus } from './show.ts';
import { clean, type DeviationUnit, size_um, type UnitSystem, unitSign } from './unit.ts';

/** A quantity in the parts a screen sets in different sizes; put together they make `text`. */
export interface Said {
  /** "+", "−" (U+2212), or "" for zero and for what has only a size. */
  readonly sign: '' | '+' | '−';
  /** Figures without a sign. */
  readonly number: string;
  /** Two standard deviations, in figures, when a doubt is known. */
  readonly doubt?: string;
  /** "µm", "thou", "µm in 300 mm". */
  readonly unit: string;
  /** "−15 ± 4 µm", unbroken: narrow no-break spaces about ±, no-break spaces elsewhere. */
  readonly text: string;
}

/** How a quantity is to be said; everything may be left out. */
export interface SayOptions {
  /** It has two directions, so its sign is always shown. Default true; false for what has only a size (run-out, removal). */
  readonly signed?: boolean;
  /** One standard deviation, in the unit of the value given. Shown as ±2 sd. */
  readonly sd?: number;
  /** Decimals of value and doubt, for charts; left out, the doubt decides (one figure, two when it starts with 1). */
  readonly decimals?: number;
  /** The value is itself a doubt or a guess: rounded as a doubt is, one figure, two when it starts with 1. Counts where neither sd nor decimals are given. */
  readonly rough?: boolean;
  /** Limits a verdict was made against, in the unit of the value given: where rounding would move value or doubt across one, more figures are shown. */
  readonly limits?: readonly number[];
}

/** U+00A0 no-break, U+202F narrow no-break: a quantity never breaks over a line, however narrow its column. */
const noBreak = '\u00a0';
const narrow = '\u202f';

/** More figures than this would claim what no instrument sees. */
const mostDecimals = 6;

/** The decimal place of a doubt's last figure that counts: one figure, two when it starts with 1. Negative: tens, hundreds. */
export function doubtPlace(doubt: number): number {
  const size = Math.floor(Math.log10(doubt));
  const tenths = Math.round(clean((doubt / 10 ** size) * 10));
  return tenths >= 20 ? -size : 1 - size;
}

/** Rounds half away from zero at a decimal place; a negative place rounds to tens, hundreds. */
export function roundAt(value: number, place: number): number {
  const factor = 10 ** Math.abs(place);
  const scaled = place >= 0 ? value * factor : value / factor;
  const whole = Math.sign(scaled) * Math.round(clean(Math.abs(scaled)));
  return place >= 0 ? whole / factor : whole * factor;
}

const side = (value: number, limit: number): number => Math.sign(clean(value - limit));

/** Whether rounding at this place leaves value and value ± doubt on their sides of every limit. */
function truthful(value: number, doubt: number, place: number, limits: readonly number[]): boolean {
  const roundValue = roundAt(value, place);
  const roundDoubt = roundAt(doubt, place);
  return limits.every((limit) =>
    [0, -1, 1].every((k) => {
      const is = side(value + k * doubt, limit);
      return is === 0 || is === side(roundValue + k * roundDoubt, limit);
    }),
  );
}

/** Without a doubt: at least three figures of the value, as an indicator shows them; no needless noughts. */
const placeWithoutDoubt = (value: number): number =>
  value === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));

/**
 * Says a value already in the unit it is to be shown in.
 * @throws RangeError  value or sd is not a finite number, or sd is below 0
 */
export function say(value: number, unit: string, options: SayOptions = {}): Said {
  const { signed = true, sd, decimals, rough = false, limits = [] } = options;
  if (!Number.isFinite(value)) throw new RangeError(`value ${value}; expected a finite number`);
  if (sd !== undefined && !(Number.isFinite(sd) && sd >= 0))
    throw new RangeError(`sd ${sd}; expected a finite number, 0 or above`);
  const doubt = sd === undefined || sd === 0 ? 0 : 2 * sd;
  const isRough = rough && value !== 0;
  const own = isRough ? doubtPlace(Math.abs(value)) : placeWithoutDoubt(value);
  let place = decimals ?? (doubt > 0 ? doubtPlace(doubt) : Math.min(mostDecimals, own));
  const start = place;
  while (place < Math.min(mostDecimals, start + 3) && !truthful(value, doubt, place, limits)) place++;
  if (!truthful(value, doubt, place, limits)) place = start;

  const shownValue = roundAt(value, place);
  const sign = shownValue < 0 ? minus : shownValue > 0 && signed ? '+' : '';
  const figures = (size: number): string => {
    const text = size.toFixed(Math.max(0, place));
    return decimals === undefined && doubt === 0 && text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  };
  const number = figures(Math.abs(shownValue));
  const doubtText = doubt > 0 ? figures(roundAt(doubt, place)) : undefined;
  const withDoubt = doubtText === undefined ? '' : `${narrow}±${narrow}${doubtText}`;
  return {
    sign,
    number,
    ...(doubtText === undefined ? {} : { doubt: doubtText }),
    unit,
    text: `${sign}${number}${withDoubt}${noBreak}${unit.replaceAll(' ', noBreak)}`,
  };
}

/** How a deviation is to be said. */
export interface DeviationOptions extends SayOptions {
  /** The unit, when a table must keep one; left out: µm, or thou (tenths below one thou). */
  readonly unit?: DeviationUnit;
}

/** The unit a system speaks a deviation of this size in: µm; thou, and tenths for what is less than one thou. */
export function spokenUnit(um: number, system: UnitSystem): DeviationUnit {
  if (system === 'metric') return 'um';
  return um !== 0 && Math.abs(um) < size_um.thou ? 'tenths' : 'thou';
}

/**
 * Says a deviation: value and limits in µm, sd in µm.
 * @example sayDeviation(-15.3, 'metric', { sd: 2.15 }).text     // "−15 ± 4 µm"
 */
export function sayDeviation(um: number, system: UnitSystem, options: DeviationOptions = {}): Said {
  const unit = options.unit ?? spokenUnit(Math.max(Math.abs(um), 2 * (options.sd ?? 0)), system);
  return say(clean(um / size_um[unit]), unitSign[unit], inUnits(options, size_um[unit]));
}

/** Options whose sd and limits are counted in a unit of the given size. */
export const inUnits = (options: SayOptions, size: number): SayOptions => ({
  ...options,
  ...(options.sd === undefined ? {} : { sd: options.sd / size }),
  ...(options.limits === undefined ? {} : { limits: options.limits.map((limit) => clean(limit / size)) }),
});
