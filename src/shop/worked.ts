import { plain } from '../core/quantity/show.ts';

/** One line of working: what it is, its formula in letters, and the same with numbers and result. */
export interface Worked {
  readonly what: string;
  readonly formula: string;
  readonly worked: string;
  /** Where the formula comes from, when it is not plain geometry. */
  readonly source?: string;
}

const n = (value: number): string => plain(value, 6);

/** The rule by which every verdict is made. */
export const bandRule =
  'within: low ≤ value − doubt and value + doubt ≤ high; outside: wholly beyond one of them';
export const bandSource = 'ISO 14253-1’s rule: the doubt counts against whoever makes the statement';

/**
 * A verdict with its numbers put in.
 * @param doubt  two standard deviations, in the value's unit
 */
export function bandWorked(
  value: number,
  doubt: number,
  limits: { readonly low?: number | undefined; readonly high?: number | undefined },
  unit: string,
  verdict: string,
): string {
  const { low, high } = limits;
  const sides = [
    ...(low === undefined ? [] : [`${n(low)} against ${n(value)} − ${n(doubt)} = ${n(value - doubt)}`]),
    ...(high === undefined ? [] : [`${n(value)} + ${n(doubt)} = ${n(value + doubt)} against ${n(high)}`]),
  ];
  return `${sides.join('; ')} ${unit}: ${verdict}`;
}
