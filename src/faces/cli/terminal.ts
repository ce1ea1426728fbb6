import type { Doors } from './doors.ts';

/** Standard output and standard error. */
export const terminal: Pick<Doors, 'say' | 'complain' | 'progress'> = {
  say: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
  progress: (text) => {
    // Back to the line's beginning, and what stood there wiped; a file or a pipe gets none of it.
    if (process.stderr.isTTY) process.stderr.write(`\r${text}\u001b[K`);
  },
};
