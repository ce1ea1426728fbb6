import { sumKey } from '../../contract/sum-typed.ts';
import type { SumQuestion } from '../../contract/sums.ts';
import type { Sampled } from '../../core/prove/monte-carlo.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { answerSum } from '../../core/sums/answer.ts';
import { exampleText, formulaText, saySum, workingText } from '../../core/sums/said.ts';
import type { Sum, SumDrawing, SumSource } from '../../core/sums/sum.ts';
import { sumNamed, sums } from '../../core/sums/sums.ts';

/** A sum as it is listed. */
export interface SumListed {
  readonly name: string;
  readonly group: string;
  readonly title: string;
  readonly question: string;
  /** `roll_mm`, `angle_deg` …; those that may be left out say what is taken. */
  readonly inputs: readonly {
    readonly key: string;
    readonly symbol: string;
    readonly label: string;
    /** What is taken when it is left out, in words. */
    readonly preset?: string;
  }[];
  readonly results: readonly {
    readonly key: string;
    readonly symbol: string;
    readonly label: string;
    readonly formula: string;
  }[];
  /** Numbers to show it with, in words: "root=40 mm". */
  readonly example: readonly string[];
}

/** One input of an answer. */
export interface SumInputShown {
  readonly key: string;
  readonly symbol: string;
  readonly label: string;
  readonly value: number;
  /** One sd. */
  readonly sd: number;
  /** Value and doubt, in words. */
  readonly text: string;
  /** What was not given: the value, only its doubt, or nothing. */
  readonly assumed: 'value' | 'doubt' | 'nothing';
}

/** One result of an answer. */
export interface SumResultShown {
  readonly key: string;
  readonly symbol: string;
  readonly label: string;
  readonly value: number;
  readonly sd: number;
  readonly text: string;
  readonly plus?: string;
  readonly formula: string;
  readonly working: string;
  /** What each input gives to the doubt, largest first: one sd, and ± two sd in words. */
  readonly shares: readonly { readonly key: string; readonly sd: number; readonly text: string }[];
  readonly monte_carlo?: Sampled & { readonly text: string };
  /** Why it could not be drawn, when it was asked for. */
  readonly not_drawn?: string;
}

/** A sum answered, with all that is shown of it. */
export interface SumAnswer {
  readonly sum: string;
  readonly title: string;
  readonly question: string;
  readonly inputs: readonly SumInputShown[];
  readonly results: readonly SumResultShown[];
  readonly source: SumSource;
  readonly note?: string;
  readonly drawing: SumDrawing;
  /** Letter → words, for the drawing. */
  readonly labels: Readonly<Record<string, string>>;
}

/** Every sum, as a list. */
export const listSums = (system: UnitSystem = 'metric'): readonly SumListed[] =>
  sums.map((sum) => listedSum(sum, system));

/** One sum as it is listed. */
export function listedSum(sum: Sum, system: UnitSystem): SumListed {
  return {
    name: sum.name,
    group: sum.group,
    title: sum.title,
    question: sum.question,
    inputs: Object.entries(sum.inputs).map(([key, { symbol, label, unit, preset }]) => ({
      key: sumKey(key, unit),
      symbol,
      label,
      ...(preset === undefined ? {} : { preset: saySum(preset, unit, system, { rough: true }) }),
    })),
    results: Object.entries(sum.results).map(([key, { symbol, label, unit }]) => ({
      key: sumKey(key, unit),
      symbol,
      label,
      formula: formulaText(sum, key),
    })),
    example: Object.entries(sum.inputs).map(
      ([key, { unit }]) => `${key}=${spoken(exampleText(sum.example[key]!, unit, system))}`,
    ),
  };
}

/** Words as a keyboard has them. */
const spoken = (text: string): string =>
  text
    .replaceAll(/[\u00a0\u202f\u2009]/g, ' ')
    .replaceAll('−', '-')
    .replaceAll('µ', 'u')
    .replaceAll('³', '3')
    .replace(/ °$/, '°');

/** A sum's results with doubt, working and words. */
export function sumAnswer(question: SumQuestion, system: UnitSystem = 'metric'): SumAnswer {
  const sum = sumNamed(question.name)!;
  const answers = answerSum(sum, question, question.monte_carlo);
  const numbers = { ...question.values, ...Object.fromEntries(answers.map((one) => [one.key, one.value])) };
  const inputs = Object.entries(sum.inputs).map(([key, { symbol, label, unit }]): SumInputShown => {
    const value = question.values[key]!;
    const sd = question.sds[key]!;
    const text = saySum(value, unit, system, { sd });
    const assumed = question.taken.includes(key)
      ? 'value'
      : question.usual.includes(key)
        ? 'doubt'
        : 'nothing';
    return { key: sumKey(key, unit), symbol, label, value, sd, text, assumed };
  });
  const results = answers.map((one): SumResultShown => {
    const { symbol, label, unit, plus } = sum.results[one.key]!;
    const signed = plus !== undefined;
    const say = (value: number, sd: number): string => saySum(value, unit, system, { sd, signed });
    return {
      key: sumKey(one.key, unit),
      symbol,
      label,
      value: one.value,
      sd: one.sd,
      text: say(one.value, one.sd),
      ...(plus === undefined ? {} : { plus }),
      formula: formulaText(sum, one.key),
      working: workingText(sum, one.key, numbers, system),
      shares: one.shares
        .filter((share) => share.sd > 0)
        .map((share) => ({
          key: sumKey(share.key, sum.inputs[share.key]!.unit),
          sd: share.sd,
          text: `±\u202f${saySum(2 * share.sd, unit, system, { doubt: true })}`,
        })),
      ...(one.sampled
        ? { monte_carlo: { ...one.sampled, text: say(one.sampled.mean, one.sampled.sd) } }
        : {}),
      ...(one.not_sampled === undefined ? {} : { not_drawn: one.not_sampled }),
    };
  });
  const labels = Object.fromEntries([...inputs, ...results].map(({ symbol, text }) => [symbol, text]));
  return {
    sum: sum.name,
    title: sum.title,
    question: sum.question,
    inputs,
    results,
    source: sum.source,
    ...(sum.note === undefined ? {} : { note: sum.note }),
    drawing: sum.drawing,
    labels,
  };
}
