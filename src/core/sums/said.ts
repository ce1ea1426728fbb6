import { sayLength } from '../quantity/length.ts';
import { type SayOptions, say, sayDeviation } from '../quantity/say.ts';
import { plain } from '../quantity/show.ts';
import { saySlope } from '../quantity/slope.ts';
import type { UnitSystem } from '../quantity/unit.ts';
import type { Sum, SumUnit } from './sum.ts';

const signs: Record<SumUnit, string> = {
  mm: 'mm',
  um: 'µm',
  urad: 'µrad',
  deg: '°',
  ratio: '',
  K: 'K',
  um_mK: 'µm/m/K',
  GPa: 'GPa',
  kg_m3: 'kg/m³',
  kg: 'kg',
  divisions: 'div',
};

/** Without a doubt, lengths keep the figures a micrometer has and angles those of a second of arc. */
const decimals: Partial<Record<SumUnit, Record<UnitSystem, number>>> = {
  mm: { metric: 4, inch: 5 },
  deg: { metric: 4, inch: 4 },
};

/** How a sum's value is said: sign where it has two directions, doubt where it has one, in the units of the shop. `rough` keeps three figures; a value that is itself a `doubt` keeps one or two. */
export function saySum(
  value: number,
  unit: SumUnit,
  system: UnitSystem,
  options: {
    readonly sd?: number;
    readonly signed?: boolean;
    readonly rough?: boolean;
    readonly doubt?: boolean;
  } = {},
): string {
  const { sd = 0, signed = false, rough = false, doubt = false } = options;
  const fixed = sd > 0 || rough || doubt ? undefined : decimals[unit]?.[system];
  const how: SayOptions = { signed, sd, rough: doubt, ...(fixed === undefined ? {} : { decimals: fixed }) };
  if (unit === 'mm') return sayLength(value, system, how).text;
  if (unit === 'um') return sayDeviation(value, system, how).text;
  if (unit === 'urad') return saySlope(value, system, how).text;
  if (unit === 'ratio')
    return value > 0 && sd === 0 && !doubt
      ? `1:${plain(1 / value, 5)}`
      : say(1000 * value, 'mm/m', { signed, sd: 1000 * sd, rough: doubt }).text;
  return say(value, signs[unit], how).text;
}

/** A number put into a formula: no doubt, its unit behind it, eight figures so that the working can be followed. */
function inFormula(value: number, unit: SumUnit, system: UnitSystem): string {
  if (unit === 'ratio') return value > 0 ? `1/${plain(1 / value, 6)}` : plain(value, 6);
  if (system === 'inch' && unit === 'mm') return `${plain(value / 25.4, 7)} in`;
  if (system === 'inch' && unit === 'um') return `${plain(value / 25.4, 6)} thou`;
  const text = plain(value, 8);
  return unit === 'deg' ? `${text}°` : `${text} ${signs[unit]}`;
}

/** A value as it is typed: every figure it has, its unit behind it. */
export const exampleText = (value: number, unit: SumUnit, system: UnitSystem): string =>
  unit === 'ratio'
    ? saySum(value, unit, system)
    : unit === 'urad' && system === 'inch'
      ? saySlope(value, system, {}).text
      : inFormula(value, unit, system);

/** The formula of a result with its letters: "x = a + D × (1 + cot(A / 2))". */
export function formulaText(sum: Sum, key: string): string {
  const result = sum.results[key]!;
  const letters = result.formula.replace(
    /\{(\w+)\}/g,
    (_, name: string) => (sum.inputs[name] ?? sum.results[name])!.symbol,
  );
  return `${result.symbol} = ${letters}`;
}

/**
 * The same with its numbers put in: the working.
 * @param numbers  every input, and every result
 */
export function workingText(
  sum: Sum,
  key: string,
  numbers: Readonly<Record<string, number>>,
  system: UnitSystem,
): string {
  const { formula, unit, symbol } = sum.results[key]!;
  const put = formula.replace(/\{(\w+)\}/g, (hole: string, name: string, at: number) => {
    const { unit: its } = (sum.inputs[name] ?? sum.results[name])!;
    const text = inFormula(numbers[name]!, its, system);
    // A power, a sign or a fraction belongs to the whole of a number and its unit.
    const isWhole = '²³⁴'.includes(formula[at + hole.length] ?? ' ') || /^−/.test(text) || its === 'ratio';
    return isWhole ? `(${text})` : text;
  });
  return `${symbol} = ${put} = ${inFormula(numbers[key]!, unit, system)}`;
}
