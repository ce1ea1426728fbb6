import type { Distribution } from '../prove/distribution.ts';
import { monteCarlo, type Sampled, type Sampling } from '../prove/monte-carlo.ts';
import { propagate } from '../prove/propagate.ts';
import type { Sum, SumUnit } from './sum.ts';

/** Twelve figures: what differences of a formula leave behind is not shown as if it were known. */
const clean = (value: number): number => Number(value.toPrecision(12));

/** What a sum is asked with: a value for each input, and one sd each. */
export interface SumAsk {
  readonly name: string;
  readonly values: Readonly<Record<string, number>>;
  readonly sds: Readonly<Record<string, number>>;
  /** Inputs left out, taken at their preset. */
  readonly taken: readonly string[];
  /** Inputs whose sd was left out, taken as usual. */
  readonly usual: readonly string[];
}

/** One result of a sum. */
export interface SumValue {
  readonly key: string;
  readonly unit: SumUnit;
  readonly value: number;
  /** One standard deviation. */
  readonly sd: number;
  /** What each input gives to it, largest first; one sd in the result's unit. */
  readonly shares: readonly { readonly key: string; readonly slope: number; readonly sd: number }[];
  /** By drawing, when it was asked for. */
  readonly sampled?: Sampled;
  /** Why it could not be drawn. */
  readonly not_sampled?: string;
}

/**
 * The results of a sum with their doubt, by the formula's slopes; by drawing too when `sampling` is given.
 * @throws RangeError  values for which the formula has no finite result
 */
export function answerSum(sum: Sum, ask: SumAsk, sampling?: Sampling): readonly SumValue[] {
  const keys = Object.keys(sum.inputs);
  const at = keys.map((key) => ask.values[key]!);
  const sds = keys.map((key) => ask.sds[key]!);
  const record = (x: readonly number[]): Record<string, number> =>
    Object.fromEntries(keys.map((key, i) => [key, x[i]!]));
  const spreads = keys.map((_, i): Distribution => ({ kind: 'normal', value: at[i]!, sd: sds[i]! }));
  return Object.entries(sum.results).map(([key, result]) => {
    const of = (x: readonly number[]): number => sum.of(record(x))[key]!;
    const { value, sd, shares } = propagate(of, at, sds);
    return {
      key,
      unit: result.unit,
      value,
      sd: clean(sd),
      shares: shares
        .map((share) => ({ key: keys[share.input]!, slope: clean(share.slope), sd: clean(share.sd) }))
        .sort((a, b) => b.sd - a.sd),
      ...(sampling ? drawn(of, spreads, sampling) : {}),
    };
  });
}

/** The draws, or why there are none: some may fall where the formula has no value. */
function drawn(
  of: (x: readonly number[]) => number,
  spreads: readonly Distribution[],
  sampling: Sampling,
): { sampled: Sampled } | { not_sampled: string } {
  try {
    return { sampled: monteCarlo(of, spreads, sampling) };
  } catch (failure) {
    if (failure instanceof RangeError) return { not_sampled: failure.message };
    throw failure;
  }
}
