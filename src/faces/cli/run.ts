import { Command, CommanderError } from 'commander';
import type { Doors } from './doors.ts';
import { exitCodes, Leave } from './leave.ts';

/** Adds one verb, or a few, to the command line. */
export type Register = (program: Command, doors: Doors) => void;

const about =
  'Brings worn machine slideways back to true by hand scraping: how far out and how sure, where to scrape and how many passes, and when to stop. Every verb says more with --help.';

/**
 * Runs the command line.
 * @param words  what stands after the program's name
 * @returns      the exit code: 0 answered, 2 bad input, 3 no answer exists
 */
export async function run<Needs extends Pick<Doors, 'say' | 'complain'>>(
  words: readonly string[],
  doors: Needs,
  verbs: readonly ((program: Command, doors: Needs) => void)[],
  version: string,
): Promise<number> {
  const program = new Command('waywright')
    .description(about)
    .version(version)
    .exitOverride()
    .showHelpAfterError();
  program.configureOutput({
    writeOut: (text) => doors.say(text.trimEnd()),
    writeErr: (text) => doors.complain(text.trimEnd()),
  });
  for (const register of verbs) register(program, doors);
  try {
    await program.parseAsync(words, { from: 'user' });
    return exitCodes.answered;
  } catch (failure) {
    if (failure instanceof Leave) return failure.code;
    if (failure instanceof CommanderError)
      return failure.exitCode === 0 ? exitCodes.answered : exitCodes.badInput;
    throw failure;
  }
}
