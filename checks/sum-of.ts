import { sumQuestion } from '../src/contract/sums.ts';
import { answerSum, type SumValue } from '../src/core/sums/answer.ts';
import { sumNamed } from '../src/core/sums/sums.ts';

/** A sum answered by its JSON keys, through the contract: what it gives, by key. */
export function sumOf(
  sum: string,
  values: Readonly<Record<string, number>>,
  sd: Readonly<Record<string, number>> = {},
): Readonly<Record<string, SumValue>> {
  const question = sumQuestion({ sum, values, sd });
  return Object.fromEntries(answerSum(sumNamed(sum)!, question).map((one) => [one.key, one]));
}
