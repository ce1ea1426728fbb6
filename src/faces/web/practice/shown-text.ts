import { readDeviation } from '../../../core/quantity/deviation.ts';
import { minus } from '../../../core/quantity/show.ts';
import { readSlope, type SlopeUnit, slopeSign, slopeSize } from '../../../core/quantity/slope.ts';
import { type DeviationUnit, size_um, unitSign } from '../../../core/quantity/unit.ts';

/** Last figure of an instrument's window in each unit, as decimals. */
const deviationDecimals: Readonly<Record<DeviationUnit, number>> = {
  um: 1,
  mm: 4,
  tenths: 1,
  thou: 2,
  in: 5,
};

const written = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return '0';
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return `${value < 0 ? minus : '+'}${short}`;
};

/** A reading as an indicator's window shows it in a unit: "−12.3"; with its unit behind it where bare figures could be read two ways. */
export function shownDeviation(um: number, unit: DeviationUnit): string {
  const bare = written(um / size_um[unit], deviationDecimals[unit]);
  return readDeviation(bare, unit).ok ? bare : `${bare} ${unitSign[unit]}`;
}

/** A level as it is read in a unit, to about 1 µrad. */
export const shownSlope = (urad: number, unit: SlopeUnit): string => {
  const size = slopeSize(unit);
  const bare = written(urad / size, Math.max(0, Math.round(Math.log10(size))));
  return readSlope(bare, unit).ok ? bare : `${bare} ${slopeSign(unit)}`;
};

/** What a window's text is taken for once it is typed: µm. */
export function typedDeviation(text: string, unit: DeviationUnit): number {
  const read = readDeviation(text, unit);
  if (!read.ok) throw new RangeError(`"${text}" of a practice indicator: ${read.why}`);
  return read.um;
}

/** The same of a level: µrad. */
export function typedSlope(text: string, unit: SlopeUnit): number {
  const read = readSlope(text, unit);
  if (!read.ok) throw new RangeError(`"${text}" of a practice level: ${read.why}`);
  return read.urad;
}
