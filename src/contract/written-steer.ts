import type { SteerInput } from '../core/observe/round.ts';

/** An input as the contract writes it: passes of a round by pad, with `spot` among them. The inverse of `steerInput`; apart from it, so that a page writes without what checks. */
export const writtenSteerInput = (input: SteerInput): unknown => ({
  ...input,
  rounds: input.rounds.map(({ scraped, ...round }) => ({
    ...round,
    ...(scraped ? { scraped: { ...scraped.passes, ...(scraped.spot ? { spot: true } : {}) } } : {}),
  })),
});
