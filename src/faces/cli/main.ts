#!/usr/bin/env node
import { packageVersion } from '../../adapters/file/package-root.ts';
import { Fault } from '../../shop/store.ts';
import { faultText } from './fault-text.ts';
import { exitCodes } from './leave.ts';
import { run } from './run.ts';
import { terminal } from './terminal.ts';
import { everyVerbNamed, loadVerb, verbCalled } from './verbs.ts';

// Whoever reads the output may have seen enough (`| head`): that is no failure.
process.stdout.on('error', (failure: NodeJS.ErrnoException) => {
  if (failure.code !== 'EPIPE') throw failure;
  process.exit(0);
});

/** Only the verb that is called is read from the disk, and the world's doors with it; --help and a mistyped word need neither. */
async function called(words: readonly string[]): Promise<number> {
  const version = packageVersion();
  const name = verbCalled(words);
  if (name === undefined) return run(words, terminal, [everyVerbNamed], version);
  const { doors, more } = await import('./world/main.ts');
  return run(words, doors, [await loadVerb(name, more)], version);
}

try {
  process.exitCode = await called(process.argv.slice(2));
} catch (failure) {
  const fault = failure as NodeJS.ErrnoException;
  if (!(failure instanceof Fault) && fault.code === undefined) throw failure;
  terminal.complain(faultText(fault));
  process.exitCode = exitCodes.badInput;
}
