import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { readDeviation } from '../../core/quantity/deviation.ts';
import { readLength } from '../../core/quantity/length.ts';
import { readSlope, type SlopeUnit, slopeSign } from '../../core/quantity/slope.ts';
import { type DeviationUnit, unitSign } from '../../core/quantity/unit.ts';
import { readSumInput } from '../../core/sums/typed.ts';
import { fieldWords, hows, type ReadingUnit } from './sheet-hows.ts';

/** A field as it was read: nothing typed, numbers in mm, µm or µrad by what it holds, or why it cannot be read. */
export type FieldRead =
  | { readonly is: 'empty' }
  | {
      readonly is: 'read';
      readonly value: number;
      /** One sd, where it was typed behind ±. */
      readonly sd?: number;
      readonly stretches?: readonly (readonly [number, number])[];
    }
  | { readonly is: 'wrong'; readonly why: string };

export const isAngle = (sheet: SurveySheet): boolean => hows[sheet.how].reads === 'angle';

/** Unit of limits and passes, where readings are angles or finer. */
const smallUnit = (sheet: SurveySheet): DeviationUnit => (sheet.lengths === 'mm' ? 'um' : 'thou');

export const unitWords = (unit: string): string =>
  unit in unitSign ? unitSign[unit as DeviationUnit] : slopeSign(unit as SlopeUnit);

/** A limit is on the height of the way; on a twist it is on the angle. */
const isSmall = (sheet: SurveySheet, name: string): boolean =>
  fieldWords[name]!.holds === 'deviation' || (name === 'limit' && sheet.how !== 'bridge level');

/** The unit a field's bare number is in, as it is written: "mm", "µm", "mm/m". */
export function fieldUnit(sheet: SurveySheet, name: string): string {
  const { holds } = fieldWords[name]!;
  if (holds === 'count' || holds === 'choice') return '';
  if (holds === 'warmth') return sheet.lengths === 'mm' ? 'K' : '°F';
  if (holds === 'size' || holds === 'place' || holds === 'stretches') return sheet.lengths;
  return isSmall(sheet, name) ? unitSign[smallUnit(sheet)] : unitWords(sheet.unit);
}

/** A reading in its column's unit: µm or µrad. */
export function readReading(text: string, unit: string, angle: boolean) {
  if (angle) {
    const read = readSlope(text, unit as SlopeUnit);
    return read.ok ? { ...read, value: read.urad } : read;
  }
  const read = readDeviation(text, unit as DeviationUnit);
  return read.ok ? { ...read, value: read.um } : read;
}

const most = 2_000;

export function readField(sheet: SurveySheet, name: string): FieldRead {
  const text = (sheet.fields[name] ?? '').trim();
  if (text === '') return { is: 'empty' };
  const wrong = (why: string): FieldRead => ({ is: 'wrong', why });
  const { holds } = fieldWords[name]!;
  if (holds === 'count') {
    const value = Number(text);
    return Number.isInteger(value) && value >= 2 && value <= 60 && value % 2 === 0
      ? { is: 'read', value }
      : wrong(
          `“${text}” is no number of steps. Write an even number from 2 to 60, so that the middle is a station.`,
        );
  }
  if (holds === 'stretches') return readStretches(text, sheet);
  if (holds === 'choice') {
    const value = fieldWords[name]!.choices!.findIndex((one) => one.value === text);
    return value < 0 ? wrong(`“${text}” is none of the choices.`) : { is: 'read', value };
  }
  if (holds === 'warmth') return readWarmth(text, sheet, wrong);
  if (holds === 'size' || holds === 'place') {
    const read = readLength(text, sheet.lengths, { sort: holds });
    return read.ok ? { is: 'read', value: read.mm } : wrong(read.why);
  }
  const small = isSmall(sheet, name);
  const unit: ReadingUnit | string = small ? smallUnit(sheet) : sheet.unit;
  const read = readReading(text.replace(/^±\s*/, ''), unit, !small && isAngle(sheet));
  if (!read.ok) return wrong(read.why);
  return read.value > 0
    ? { is: 'read', value: read.value }
    : wrong('That must be above 0. Leave it empty if it is not known.');
}

/** "0.5 ± 0.2", in K, or in °F where lengths are in inches; plus: the top is the warmer side. */
function readWarmth(text: string, sheet: SurveySheet, wrong: (why: string) => FieldRead): FieldRead {
  // Behind the value and behind the doubt: a bare number is in the sheet's own degrees.
  const own = sheet.lengths === 'mm' ? text : text.replace(/(\d|\.)\s*(?=$|±|\+-|\+\/-)/g, '$1 °F ');
  const read = readSumInput(own, 'K', 'metric');
  if (!read.ok) return wrong(read.why);
  return { is: 'read', value: read.value, ...(read.sd === undefined ? {} : { sd: read.sd }) };
}

/** "0 to 150, 1400 to 1600". */
function readStretches(text: string, sheet: SurveySheet): FieldRead {
  const stretches: [number, number][] = [];
  for (const part of text.split(/[,;]/)) {
    // A hyphen behind a value parts two of them; before one it is its sign. (Written without a lookbehind: phones of 2021 know none.)
    const ends = part.replace(/([\d"n m])\s*-\s*/gi, '$1–').split(/\s*(?:\bto\b|–|\.\.+|…)\s*/i);
    const reads = ends.map((end) => readLength(end, sheet.lengths));
    const bad = reads.find((read) => !read.ok);
    if (ends.length !== 2 || bad)
      return { is: 'wrong', why: `“${part.trim()}” is no stretch. Write 0 to 150, 1400 to 1600.` };
    const [from, to] = reads.map((read) => (read.ok ? read.mm : 0)) as [number, number];
    if (from >= to)
      return { is: 'wrong', why: `“${part.trim()}” ends before it begins. Write the smaller place first.` };
    stretches.push([from, to]);
  }
  return { is: 'read', value: stretches.length, stretches };
}

/** How many whole steps fit, or in words why the length is no number of them. */
export function stepsIn(length_mm: number, step_mm: number): number | string {
  const steps = Math.round(length_mm / step_mm);
  if (steps < 2) return 'A survey needs at least two steps: make the step shorter, or the length longer.';
  if (steps > most) return `That would be ${steps} steps, more than ${most}. Is the unit right?`;
  if (Math.abs(steps * step_mm - length_mm) <= 1e-6 * length_mm) return steps;
  const whole = Math.floor(length_mm / step_mm);
  const show = (mm: number) => Number(mm.toPrecision(9));
  return `${show(length_mm)} mm is no whole number of steps of ${show(step_mm)} mm: ${whole} steps make ${show(whole * step_mm)} mm, ${whole + 1} make ${show((whole + 1) * step_mm)} mm.`;
}
