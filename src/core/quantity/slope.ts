import { refuse, type Unreadable, unreadSentence } from './refusal.ts';
import { inUnits, type Said, type SayOptions, say } from './say.ts';
import { signed } from './show.ts';
import { addUp, readSpoken } from './spoken.ts';
import { tidy } from './token.ts';
import {
  angleWords,
  clean,
  type DeviationUnit,
  deviationWords,
  lengthWords,
  size_um,
  size_urad,
  type UnitSystem,
  unitSign,
} from './unit.ts';

/** The length a fall is counted over: "300 mm", "12 in", or one "m" or "ft". */
type Span = 'm' | 'ft' | `${number} mm` | `${number} in`;

/** Units a slope's column may be in: an angle, or a fall over a length ("mm/m", "um/300 mm", "thou/12 in"). */
export type SlopeUnit = 'urad' | 'arcsec' | `${DeviationUnit}/${Span}`;

/** A slope that was understood. */
export interface SlopeRead {
  readonly ok: true;
  readonly typed: string;
  /** µrad (= µm/m), with its sign. */
  readonly urad: number;
  readonly unit: SlopeUnit;
  /** What was understood, in the column's unit: "+0.02 mm/m". */
  readonly echo: string;
  /** The same in the other system, as a fall over the length its shops speak of: "+0.24 thou in 12 in". */
  readonly echoOther: string;
}

/** One in ten: beyond it the thing is a taper, not a slope. */
const most_urad = 100_000;
const least_urad = 1e-4;

/** Length of a span, µm. */
function spanSize(span: Span): number {
  if (span === 'm' || span === 'ft') return size_um[span];
  const [number, unit] = span.split(' ') as [string, 'mm' | 'in'];
  const size = Number(number) * size_um[unit];
  if (!(size > 0)) throw new RangeError(`span "${span}"; expected a length above 0, as "300 mm"`);
  return size;
}

const isAngle = (unit: SlopeUnit): unit is 'urad' | 'arcsec' => unit === 'urad' || unit === 'arcsec';

/** What one of a column's unit is, µrad. */
export function slopeSize(unit: SlopeUnit): number {
  if (isAngle(unit)) return size_urad[unit];
  const [fall, span] = unit.split('/') as [DeviationUnit, Span];
  return (size_um[fall] / spanSize(span)) * 1e6;
}

/** How a slope's unit is written: "mm/m", "µm in 300 mm", "arcsec". */
export function slopeSign(unit: SlopeUnit): string {
  if (unit === 'urad') return 'µrad';
  if (unit === 'arcsec') return 'arcsec';
  const [fall, span] = unit.split('/') as [DeviationUnit, Span];
  return span === 'm' || span === 'ft' ? `${unitSign[fall]}/${span}` : `${unitSign[fall]} in ${span}`;
}

const inSlopeUnit = (urad: number, unit: SlopeUnit, figures: number): string =>
  `${signed(clean(urad / slopeSize(unit)), figures)} ${slopeSign(unit)}`;

/** The unit the other system's shops would speak a slope of this column in. */
const otherSlopeUnit = (unit: SlopeUnit): SlopeUnit =>
  /^(thou|tenths|in)\//.test(unit) ? 'um/300 mm' : 'thou/12 in';

/**
 * A slope as spoken at the bench: `0.02 mm/m`, `12 um in 300 mm`, `half a thou per foot`, `5 tenths in 12`, `4 arcsec`, `-20 urad`.
 *
 * A bare number takes the unit of its column. A fall needs its unit; the length it is over may leave its unit out when
 * the fall tells it (`12 um in 300` is mm, `2 thou in 12` is inches). Refused: a fall without a length, and `"`, which is
 * inches to one and seconds of arc to another.
 *
 * @example readSlope('0.02 mm/m', 'urad')     // {ok: true, urad: 20, echo: '+20 µrad', …}
 */
export function readSlope(typed: string, column: SlopeUnit): SlopeRead | Unreadable {
  const found = slopeOf(typed, column);
  if (typeof found !== 'number') return found;
  const urad = clean(found);
  if (!(Math.abs(urad) <= most_urad))
    return refuse(`That is steeper than 1 in 10 (100 mm/m). Is the unit right? ${waysToWriteSlope(column)}`);
  if (urad !== 0 && Math.abs(urad) < least_urad)
    return refuse(`That is less than anything an instrument shows. Write 0 if it is nothing.`);
  const value = urad === 0 ? 0 : urad;
  return {
    ok: true,
    typed,
    urad: value,
    unit: column,
    echo: inSlopeUnit(value, column, 6),
    echoOther: inSlopeUnit(value, otherSlopeUnit(column), 4),
  };
}

/** 1/300 is hardly a fraction of a unit; 1/2 is. */
const looksLikeRatio = /\/\s*(?:[1-9]\d{2,}|[7-9]\d|6[5-9])\s*$/;

const waysToWriteSlope = (column: SlopeUnit): string => {
  const ways = [`7 ${slopeSign(column)}`, '0.02 mm/m', '2 thou in 12 in', '4 arcsec'];
  return `Write ${ways.slice(0, 3).join(', ')} or ${ways[3]}.`;
};

/** µrad, or why not. */
function slopeOf(typed: string, column: SlopeUnit): number | Unreadable {
  const text = tidy(typed);
  const ways = waysToWriteSlope(column);
  if (/\d\s*"\s*$/.test(text) && !/[/]|\b(per|in|over)\b/i.test(text))
    return refuse(`“"” is inches to one and seconds of arc to another. ${ways}`);

  const angle = readSpoken(text, angleWords);
  if (angle.ok) {
    if (angle.terms.length > 1)
      return refuse(`“${text}” holds more than one angle. Write one number and one unit. ${ways}`);
    const { unit } = angle.terms[0]!;
    if (unit === undefined && looksLikeRatio.test(text))
      return refuse(`“${text}” may be a fraction or a fall over a length. ${ways}`);
    return addUp(angle, size_urad, slopeSize(column))!;
  }
  if (angle.kind !== 'rest' && angle.kind !== 'nothing read') return refuse(unreadSentence(angle, ways));

  const falls = fallsOver(text);
  if (falls.length === 1) return falls[0]!;
  if (falls.length > 1) return refuse(`“${text}” can be read in more than one way. ${ways}`);
  const fall = readSpoken(text, deviationWords);
  if (fall.ok) return refuse(`${text}: over what length? ${ways}`);
  return refuse(unreadSentence(fall, ways));
}

/** Every way to part the text into a fall with a unit and the length it is over, µrad. */
function fallsOver(text: string): number[] {
  const found: number[] = [];
  for (const match of text.matchAll(/\s*(?:\/|\b(?:per|in|over|to the|a|an)\b)\s*/gi)) {
    const fall = readSpoken(text.slice(0, match.index), deviationWords);
    if (!fall.ok || fall.terms.some((term) => term.unit === undefined)) continue;
    const um = addUp(fall, size_um, size_um.um);
    if (um === undefined) continue;
    const bare = /^(in|tenths|thou|uin)$/.test(fall.terms[0]!.unit!) ? 'in' : 'mm';
    const over = spanOver(text.slice(match.index + match[0].length), bare);
    if (over !== undefined) found.push((um / over) * 1e6);
  }
  return found.filter((value, i) => found.findIndex((other) => Math.abs(other - value) < 1e-9) === i);
}

/** A length above nothing, µm: "300 mm", "12", "m", "foot". */
function spanOver(text: string, bare: 'mm' | 'in'): number | undefined {
  const one = lengthWords.get(text.toLowerCase());
  if (one !== undefined && text !== '"' && text !== "'") return size_um[one];
  const said = readSpoken(text, lengthWords);
  if (!said.ok || said.sign < 0 || said.terms.length !== 1) return undefined;
  const { value, unit } = said.terms[0]!;
  const size = value * size_um[unit ?? bare];
  return size >= size_um.mm && Number.isFinite(size) ? size : undefined;
}

/** How a slope is to be said. */
export interface SlopeOptions extends SayOptions {
  /** The length a fall is spoken over, mm; left out 300. Inch shops hear 12 in for each 300 mm. */
  readonly span_mm?: number;
  /** Another unit than a fall over the span: "urad" for the working, "mm/m" or "arcsec" for a level. */
  readonly unit?: SlopeUnit;
}

/** The unit a system speaks a slope in: µm in so many mm, or thou in so many inches (12 for 300 mm). */
export const spokenSlope = (system: UnitSystem, span_mm = 300): SlopeUnit =>
  system === 'metric' ? `um/${span_mm} mm` : `thou/${clean((span_mm * 12) / 300)} in`;

/**
 * Says a slope as a fall over a length the shop knows: value, sd and limits in µrad.
 * @example saySlope(-51, 'metric', { sd: 7.2 }).text      // "−15 ± 4 µm in 300 mm"
 */
export function saySlope(urad: number, system: UnitSystem, options: SlopeOptions = {}): Said {
  const unit = options.unit ?? spokenSlope(system, options.span_mm);
  const size = slopeSize(unit);
  return say(clean(urad / size), slopeSign(unit), inUnits(options, size));
}
