import type Database from 'better-sqlite3';
import type { Compilable, Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Kysely writes the queries; better-sqlite3 runs them at once, so that a transaction is one unbroken call. */
export interface Tool {
  readonly database: Database.Database;
  readonly db: Kysely<Tables>;
  readonly all: <R>(query: Compilable<R>) => R[];
  readonly run: (query: Compilable) => void;
}
