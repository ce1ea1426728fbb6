import type { Doors } from './doors.ts';

/** Standard output and standard error. */
export const terminal: Pick<Doors, 'say' | 'complain'> = {
  say: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
};
