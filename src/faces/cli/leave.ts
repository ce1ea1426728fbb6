/** Exit codes of every verb. */
export const exitCodes = { answered: 0, badInput: 2, noAnswer: 3 } as const;

/** Ends a verb with a code; caught where the command line begins. */
export class Leave extends Error {
  readonly code: number;
  constructor(code: number) {
    super(`leave with ${code}`);
    this.name = 'Leave';
    this.code = code;
  }
}
