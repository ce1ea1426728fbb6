import { z } from 'zod';
import { type MaterialName, materials } from '../core/kit/material.ts';
import type { Sampling } from '../core/prove/monte-carlo.ts';
import type { SumAsk } from '../core/sums/answer.ts';
import { checked, type Issue } from './refusal.ts';
import { type FoundInputs, filled, knownSum, sumKey } from './sum-typed.ts';

/** A sum that is asked, and by how many draws its doubt is to be tried; see docs/contract.md. */
export interface SumQuestion extends SumAsk {
  readonly monte_carlo?: Sampling;
}

const samplingSchema = z.strictObject({
  seed: z.int(),
  trials: z.int().min(1000).max(1_000_000).optional(),
});

const finite = z.number();
export const sumSchema = z.strictObject({
  sum: z.string(),
  values: z.record(z.string(), finite),
  sd: z.record(z.string(), finite.min(0)).optional(),
  material: z.enum(Object.keys(materials) as [MaterialName, ...MaterialName[]]).optional(),
  monte_carlo: samplingSchema.optional(),
});

/**
 * A sum asked as JSON: {sum, values {roll_mm …}, sd? {roll_mm …}, material?, monte_carlo? {seed, trials}}.
 * @throws BadInput
 */
export function sumQuestion(value: unknown): SumQuestion {
  const ask = checked(sumSchema, value);
  const sum = knownSum(ask.sum);
  const keys = new Map(Object.entries(sum.inputs).map(([key, input]) => [sumKey(key, input.unit), key]));
  const issues: Issue[] = [];
  const taken = (given: Record<string, number>, where: string): Map<string, number> =>
    new Map(
      Object.entries(given).flatMap(([path, number]): [string, number][] => {
        const key = keys.get(path);
        if (key !== undefined) return [[key, number]];
        issues.push({
          path: `${where}.${path}`,
          found: 'a key that is not known here',
          expected: [...keys.keys()].join(', '),
        });
        return [];
      }),
    );
  const found: FoundInputs = { values: taken(ask.values, 'values'), sds: taken(ask.sd ?? {}, 'sd'), issues };
  const { monte_carlo } = ask;
  return {
    ...filled(sum, found, ask.material),
    ...(monte_carlo ? { monte_carlo: samplingOf(monte_carlo.seed, monte_carlo.trials) } : {}),
  };
}

const samplingOf = (seed: number, trials: number | undefined): Sampling => ({
  seed,
  ...(trials === undefined ? {} : { trials }),
});
