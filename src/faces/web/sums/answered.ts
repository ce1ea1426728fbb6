import type { SumAsk } from '../../../core/sums/answer.ts';
import { sumNamed } from '../../../core/sums/sums.ts';
import { type SumAnswer, type SumInputShown, sumAnswer } from '../../../shop/sums/sum-answer.ts';
import type { Units } from '../keep/settings.ts';

/** A sum's answer for the page, or that its formula has none for these numbers. */
export type Answered =
  | {
      readonly ok: true;
      readonly answer: SumAnswer;
      /** By the input's own key. */
      readonly inputs: Readonly<Record<string, SumInputShown>>;
      /** Every input's and result's words by its key. */
      readonly texts: Readonly<Record<string, string>>;
    }
  | { readonly ok: false; readonly why: string };

/** Answers what was asked. */
export function answered(ask: SumAsk, system: Units): Answered {
  const sum = sumNamed(ask.name)!;
  try {
    const answer = sumAnswer(ask, system);
    const inputs = Object.fromEntries(Object.keys(sum.inputs).map((key, i) => [key, answer.inputs[i]!]));
    const results = Object.keys(sum.results).map((key, i) => [key, answer.results[i]!.text]);
    const texts = {
      ...Object.fromEntries(Object.entries(inputs).map(([key, one]) => [key, one.text])),
      ...Object.fromEntries(results),
    };
    return { ok: true, answer, inputs, texts };
  } catch (failure) {
    if (!(failure instanceof RangeError)) throw failure;
    return {
      ok: false,
      why: 'The formula has no result for these numbers together. What you typed stays here.',
    };
  }
}
