import { BadInput, issueText } from '../../contract/refusal.ts';
import type { Template } from '../../contract/template.ts';
import type { NoAnswer } from '../../core/plan/problem.ts';
import type { Solve } from '../../core/plan/program.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { noAnswerWords } from '../../shop/no-answer-words.ts';
import type { Store } from '../../shop/store.ts';
import { exitCodes, Leave } from './leave.ts';

/** What the command line needs of the world; tests hand it their own. */
export interface Doors {
  /** The text of a file; `-` is standard input. */
  readonly readText: (file: string) => Promise<string>;
  /** Writes a file whole or not at all. */
  readonly writeText: (file: string, text: string) => Promise<void>;
  /** One line, or several, to standard output. */
  readonly say: (text: string) => void;
  /** To standard error. */
  readonly complain: (text: string) => void;
  /** How far long work is, one line over the one before; an empty one when it is done. Shown only to somebody who watches. */
  readonly progress?: (text: string) => void;
  readonly solve: Solve;
  /** Opens the workshop for as long as the work takes. */
  readonly withStore: <T>(work: (store: Store) => Promise<T>) => Promise<T>;
  readonly templates: () => readonly Template[];
  /** Now, ISO 8601. */
  readonly now: () => string;
}

/** Says on standard error what was wrong with what was typed, as `what: found; expected …`, and leaves with 2. */
export function refused(doors: Doors, text: string): never {
  doors.complain(text);
  throw new Leave(exitCodes.badInput);
}

/** Refuses bad input on standard error, each line with the file it came from, and leaves with 2. */
export function refuse(doors: Doors, file: string, refused: BadInput): never {
  for (const issue of refused.issues)
    doors.complain(`${file === '-' ? 'standard input' : file}: ${issueText(issue)}`);
  throw new Leave(exitCodes.badInput);
}

/** Says that no answer exists and leaves with 3. */
export function noAnswer(doors: Doors, answer: NoAnswer, system: UnitSystem = 'metric'): never {
  doors.complain(`no answer: ${noAnswerWords(answer, system)}`);
  throw new Leave(exitCodes.noAnswer);
}

/** Reads, checks and answers: the frame of every verb that takes a file. */
export async function withFile<T>(
  doors: Doors,
  file: string,
  take: (text: string) => Promise<T> | T,
): Promise<T> {
  try {
    return await take(await doors.readText(file));
  } catch (failure) {
    if (failure instanceof BadInput) refuse(doors, file, failure);
    throw failure;
  }
}
