import type { Worked } from '../../shop/worked.ts';
import type { Doors } from './doors.ts';

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

/** How an answer is asked to be told. */
export interface Told {
  readonly json?: boolean;
  readonly working?: boolean;
}

/** Tells an answer as text or as one JSON document, with its working where that was asked for. */
export function tell<Answer extends object>(
  doors: Pick<Doors, 'say'>,
  asked: Told,
  answer: Answer,
  text: (answer: Answer) => string,
  working: () => readonly Worked[],
): void {
  const lines = asked.working ? working() : undefined;
  doors.say(
    asked.json
      ? JSON.stringify(lines ? { ...answer, working: lines } : answer, null, 1)
      : withWorking(text(answer), lines),
  );
}

/** What a verb says, and below it the working where it was asked for. */
export const withWorking = (text: string, lines: readonly Worked[] | undefined): string =>
  lines ? `${text}\n\n${workingText(lines)}` : text;
