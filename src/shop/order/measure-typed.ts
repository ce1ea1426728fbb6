import { type Measure, measurePattern } from '../../core/ledger/measure.ts';
import { readDeviation } from '../../core/quantity/deviation.ts';
import { readLength } from '../../core/quantity/length.ts';
import { slopeSign, slopeSize, spokenSlope } from '../../core/quantity/slope.ts';
import { clean, size_um, type UnitSystem, unitSign } from '../../core/quantity/unit.ts';

/** What a number of a machine's file counts, as it is kept: lengths in mm, small ones in µm. */
export type MeasureUnit = 'mm' | 'um' | 'deg' | 'kg';

/** How a shop writes such numbers: what stands behind them, and what one of its units is in the unit that is kept. */
export interface MeasureScale {
  readonly unit: MeasureUnit;
  readonly sign: string;
  readonly per: number;
  readonly system: UnitSystem;
}

export function measureScale(unit: MeasureUnit, system: UnitSystem): MeasureScale {
  if (unit === 'deg') return { unit, system, sign: '°', per: 1 };
  if (unit === 'kg') return { unit, system, sign: 'kg', per: 1 };
  if (system === 'metric') return { unit, system, sign: unitSign[unit], per: 1 };
  return unit === 'mm'
    ? { unit, system, sign: unitSign.in, per: size_um.in / size_um.mm }
    : { unit, system, sign: unitSign.thou, per: size_um.thou };
}

/** The same of a band, µm over a length in mm: inch shops speak of 12 in where others speak of 300 mm. */
export function bandScale(over_mm: number | undefined, system: UnitSystem): MeasureScale {
  if (over_mm === undefined) return measureScale('um', system);
  const spoken = spokenSlope(system, over_mm);
  // µrad over a mm are nm: a thousand of them a µm.
  return { unit: 'um', system, sign: slopeSign(spoken), per: clean((slopeSize(spoken) * over_mm) / 1000) };
}

/** A bare number of a sum: not one that multiplies or divides a size. */
const term = /([+-]?\s*)([\w.]+)(\s*[*/]\s*)?([\w.]+)?/g;
const isFigure = (text: string): boolean => /^[\d.]/.test(text);
/** To a nanometre: what the way into inches and back leaves behind is less. */
const kept = (value: number): number => Number(value.toFixed(6));
const shownFigure = (value: number): string => `${Number(value.toPrecision(9))}`;

/** A sum with its bare numbers changed: a number beside a size by * or / is a plain factor and stays. */
const inSum = (text: string, change: (value: number) => number): string =>
  text.replace(term, (all, sign: string, first: string, operator?: string, second?: string) => {
    if (!isFigure(first) || (operator && second !== undefined && !isFigure(second))) return all;
    return `${sign}${shownFigure(change(Number(first)))}${operator ?? ''}${second ?? ''}`;
  });

/** What is kept, as the shop would type it: a number to five figures, the bare numbers of a sum so that they come back as they were. */
export function measureShown(value: Measure | undefined, { per }: MeasureScale): string {
  if (value === undefined) return '';
  if (per === 1) return String(value);
  return typeof value === 'number'
    ? `${Number((value / per).toPrecision(5))}`
    : measurePattern.test(value)
      ? inSum(value, (one) => one / per)
      : value;
}

/**
 * What is typed, in the unit that is kept: a number, a sum over the machine's sizes, or a number with its own unit ("14 in",
 * "2 thou"). What is none of them yet ("12.", "-") goes on as it is, so that the check can name it.
 */
export function measureTyped(text: string, scale: MeasureScale): Measure | undefined {
  const { unit, per } = scale;
  const bare = text.trim().replace('−', '-');
  if (bare === '') return undefined;
  if (/[.,-]$/.test(bare)) return text;
  const number = Number(bare.replace(',', '.'));
  if (Number.isFinite(number)) return per === 1 ? number : kept(number * per);
  // A fraction or a number with its unit; a sum is neither.
  const own = unit === 'mm' || unit === 'um' ? ownUnit(bare, scale) : undefined;
  if (own !== undefined) return own;
  return per !== 1 && measurePattern.test(bare) ? inSum(bare, (one) => kept(one * per)) : text;
}

function ownUnit(text: string, { unit, system }: MeasureScale): number | undefined {
  if (!/^[-+]?[\d.]/.test(text)) return undefined;
  if (unit === 'mm') {
    const read = readLength(text, system === 'metric' ? 'mm' : 'in');
    return read.ok ? kept(read.mm) : undefined;
  }
  const read = readDeviation(text, system === 'metric' ? 'um' : 'thou');
  return read.ok ? kept(read.um) : undefined;
}
