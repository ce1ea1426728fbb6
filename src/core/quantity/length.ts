import { doNotAddUp, refuse, type Unreadable, unreadSentence } from './refusal.ts';
import { inUnits, type Said, type SayOptions, say } from './say.ts';
import { plain } from './show.ts';
import { addUp, readSpoken } from './spoken.ts';
import { clean, type LengthUnit, lengthWords, size_um, type UnitSystem, unitSign } from './unit.ts';

/** A length or place that was understood. */
export interface LengthRead {
  readonly ok: true;
  readonly typed: string;
  readonly mm: number;
  readonly unit: LengthUnit;
  /** What was understood, in the column's unit: "350 mm". */
  readonly echo: string;
  /** The same in the other system: "13.78 in". */
  readonly echoOther: string;
}

export interface LengthRules {
  /** A size must be above 0; a place may be on either side. Default "place". */
  readonly sort?: 'size' | 'place';
}

/** Longer than any way: 100 m. */
const most_mm = 100_000;
/** Shorter than this is no length of a machine. */
const least_mm = 1e-4;

const show = (mm: number, unit: LengthUnit): string =>
  `${plain((mm * size_um.mm) / size_um[unit])} ${unitSign[unit]}`;

/**
 * A length as a rule or drawing gives it: `350`, `13 3/8 in`, `1 ft 6 in`, `0.4 m`, `35 cm`. A bare number takes the column's unit.
 * @example readLength('13 3/8', 'in')     // {ok: true, mm: 339.725, echo: '13.375 in', echoOther: '339.725 mm', …}
 */
export function readLength(
  typed: string,
  column: LengthUnit,
  rules: LengthRules = {},
): LengthRead | Unreadable {
  const ways = column === 'mm' ? 'Write 350 mm, 0.35 m or 13.8 in.' : 'Write 13.8 in, 13 3/8 in or 350 mm.';
  const spoken = readSpoken(typed, lengthWords);
  if (!spoken.ok) return refuse(unreadSentence(spoken, ways));
  const sum = addUp(spoken, size_um, size_um[column]);
  if (sum === undefined) return refuse(doNotAddUp('1 ft 6 in, 18 in or 457.2 mm'));
  if (!(Math.abs(sum) <= most_mm * size_um.mm))
    return refuse(`That is longer than 100 m. Is the unit right? ${ways}`);
  const mm = clean(sum / size_um.mm);
  if (mm !== 0 && Math.abs(mm) < least_mm)
    return refuse(`That is shorter than a tenth of a micron. Is the unit right? ${ways}`);
  if (rules.sort === 'size' && mm <= 0)
    return refuse(`A size must be above 0; I read ${show(mm, column)}. ${ways}`);
  return {
    ok: true,
    typed,
    mm,
    unit: column,
    echo: show(mm, column),
    echoOther: show(mm, column === 'mm' ? 'in' : 'mm'),
  };
}

/** Says a length in mm or inches, without a sign unless it lies on the minus side; `signed: true` for a place. */
export function sayLength(mm: number, system: UnitSystem, options: SayOptions = {}): Said {
  const unit = system === 'metric' ? 'mm' : 'in';
  const size = size_um[unit] / size_um.mm;
  return say(clean(mm / size), unitSign[unit], inUnits({ signed: false, ...options }, size));
}
