import type { Worked } from '../../shop/worked.ts';

/** The working, for people: what, formula, numbers put in, source. */
export const workingText = (lines: readonly Worked[]): string =>
  [
    'Working',
    ...lines.flatMap((line) => [
      `  ${line.what}`,
      `     ${line.formula}`,
      `     ${line.worked}`,
      ...(line.source === undefined ? [] : [`     source: ${line.source}`]),
    ]),
  ].join('\n');
