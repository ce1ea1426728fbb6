import type { Compilable, Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/**
 * What is to be done in one transaction, written once for every database: each query is yielded, its rows come back. Driven at
 * once where the database answers at once (SQLite), and with waiting in between where it is elsewhere (PostgreSQL).
 */
export type Work<T> = Generator<Compilable, T, readonly unknown[]>;

/** What differs between the databases that a workshop may be in. */
export interface Books {
  /** Writes the queries. */
  readonly db: Kysely<Tables>;
  /** Holds the ledgers of jobs, or the kit's, until the transaction ends, so that two writers cannot count the same place. */
  readonly hold: (ledger: { readonly jobs: readonly string[] } | 'jobs' | 'kit') => Work<void>;
}

/** Rows of a query. */
export function* rows<R>(query: Compilable<R>): Generator<Compilable, R[], readonly unknown[]> {
  return (yield query) as R[];
}

/** Carries work out where every answer comes at once. */
export function atOnce<T>(work: Work<T>, answer: (query: Compilable) => readonly unknown[]): T {
  let step = work.next();
  while (!step.done) step = work.next(answer(step.value));
  return step.value;
}

/** Carries work out where answers are waited for; what a query fails with, the work fails with. */
export async function inTurn<T>(
  work: Work<T>,
  answer: (query: Compilable) => Promise<readonly unknown[]>,
): Promise<T> {
  let step = work.next();
  while (!step.done) step = work.next(await answer(step.value));
  return step.value;
}
