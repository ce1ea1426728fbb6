import { type DeviationUnit, size_um, unitSign } from './unit.ts';

/** U+2212: a minus as wide as a plus, never a hyphen. */
export const minus = '−';

/** A number in plain figures (no exponent), at most `figures` significant ones, no trailing zeros, U+2212 for minus. */
export function plain(value: number, figures = 6): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(100, Math.max(0, figures - 1 - size));
  const text = Math.abs(Number(value.toPrecision(figures))).toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return value < 0 ? minus + short : short;
}

/** The same with its sign always shown; plain 0 for zero. */
export const signed = (value: number, figures = 6): string =>
  value > 0 ? `+${plain(value, figures)}` : plain(value, figures);

/** A deviation in one unit, sign shown: "+0.5 thou". */
export const inUnit = (um: number, unit: DeviationUnit, figures = 6): string =>
  `${signed(um / size_um[unit], figures)} ${unitSign[unit]}`;

/** ".007 in": inches below one as the shop writes them, without the nought. */
const shopInch = (um: number): string => `${plain(um / size_um.in, 3).replace(/^0\./, '.')} in`;

/** Three ways of writing a deviation (µm), for a sentence that asks for one of them: the column's unit first. */
export function waysToWrite(um: number, unit: DeviationUnit): string {
  const size = Math.abs(um);
  const way: Record<DeviationUnit, string> = {
    um: `${plain(size, 3)} µm`,
    mm: `${plain(size / size_um.mm, 3)} mm`,
    thou: `${plain(size / size_um.thou, 3)} thou`,
    tenths: `${plain(size / size_um.tenths, 3)} tenths`,
    in: shopInch(size),
  };
  const others: Record<DeviationUnit, readonly DeviationUnit[]> = {
    um: ['mm', 'thou'],
    mm: ['um', 'thou'],
    thou: ['in', 'um'],
    tenths: ['in', 'um'],
    in: ['thou', 'um'],
  };
  const [second, third] = others[unit];
  return `${way[unit]}, ${way[second!]} or ${way[third!]}`;
}
