import type { SumAnswer, SumListed } from '../../shop/sums/sum-answer.ts';
import { table } from './table.ts';

/** Every sum by group, with what it answers. */
export function sumsListText(list: readonly SumListed[]): string {
  const groups = [...new Set(list.map((sum) => sum.group))];
  return groups
    .map((group) =>
      [
        group.toUpperCase(),
        ...list.filter((sum) => sum.group === group).map((sum) => `  ${sum.name.padEnd(24)}${sum.question}`),
      ].join('\n'),
    )
    .join('\n\n');
}

/** One sum: what it wants, what it gives, and how it is asked. */
export function sumListedText(sum: SumListed): string {
  return [
    sum.title,
    sum.question,
    '',
    ...sum.inputs.map(
      (input) =>
        `  ${input.key.padEnd(20)}${input.symbol}: ${input.label}${input.preset ? ` (left out: ${input.preset})` : ''}`,
    ),
    '',
    ...sum.results.map((result) => `  ${result.key.padEnd(20)}${result.label}: ${result.formula}`),
    '',
    `  waywright sums ${sum.name} ${sum.example.map((one) => (/[ '"°]/.test(one) ? `"${one}"` : one)).join(' ')}`,
  ].join('\n');
}

const told = { value: 'taken', doubt: 'doubt as usual', nothing: '' } as const;

/** A sum's answer: numbers, working, where the doubt comes from, source. */
export function sumAnswerText(answer: SumAnswer): string {
  return [
    answer.title,
    '',
    table(
      ['', 'asked with', '', ''],
      answer.inputs.map((input) => [input.symbol, input.text, input.label, told[input.assumed]]),
    ),
    '',
    ...answer.results.flatMap((result) => [
      `${result.symbol}  ${result.label}: ${result.text}${result.plus ? `   (plus: ${result.plus})` : ''}`,
      `   ${result.formula}`,
      `   ${result.working}`,
      ...(result.shares.length > 0
        ? [`   doubt from ${result.shares.map((share) => `${share.key} ${share.text}`).join(', ')}`]
        : []),
      ...(result.monte_carlo ? [`   by ${result.monte_carlo.trials} draws: ${result.monte_carlo.text}`] : []),
      ...(result.not_drawn ? [`   not drawn: ${result.not_drawn}`] : []),
      '',
    ]),
    ...(answer.note ? [answer.note, ''] : []),
    `Source (${answer.source.came}): ${answer.source.text}.`,
    '± is two standard deviations. “Doubt as usual” is common practice with a shop’s usual means; give your own as value ± doubt.',
  ].join('\n');
}
