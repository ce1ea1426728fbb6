import { type CompiledQuery, type Kysely, sql } from 'kysely';
import type { Kept } from '../../shop/store.ts';
import { type Appended, nameOf, rowOf } from './job-rows.ts';
import { postgresSchema } from './migrations.ts';
import type { Tables } from './tables.ts';

const entryTable = sql.id(postgresSchema, 'entry');

/**
 * Appends new entries behind the last of their ledgers in one statement, which is one way there and back and one wait for the disk.
 * It holds no ledger: where another wrote the same place first, or an entry is there already, the database refuses all of them
 * (unique_violation) and nothing is written.
 */
export function appendNew(db: Kysely<Tables>, all: readonly Appended[]): CompiledQuery<Place> {
  const places = new Map<string, number>();
  const rows = all.map(({ job, entry }) => {
    const nth = (places.get(job) ?? 0) + 1;
    places.set(job, nth);
    return rowOf(job, entry, nth);
  });
  const column = (name: keyof (typeof rows)[number]) => sql.val(rows.map((row) => row[name]));
  return sql<Place>`
    insert into ${entryTable} (job, seq, id, at, kind, deed)
    select new.job, last.seq + new.nth, new.id, new.at, new.kind, new.deed
    from unnest(${column('job')}::text[], ${column('seq')}::int[], ${column('id')}::text[], ${column('at')}::text[], ${column('kind')}::text[], ${column('deed')}::text[])
      as new (job, nth, id, at, kind, deed)
    cross join lateral (select max(seq) as seq from ${entryTable} where job = new.job) as last
    where last.seq is not null
    returning job, id, seq`.compile(db);
}

/** Where an entry stands now. */
export interface Place {
  readonly job: string;
  readonly id: string;
  readonly seq: number;
}

/** What became of each; one that stands nowhere is of a job that there is not. */
export function keptAt(all: readonly Appended[], places: readonly Place[]): Kept[] {
  const seqs = new Map(places.map((place) => [nameOf(place), place.seq]));
  return all.map(({ job, entry }) => {
    const seq = seqs.get(nameOf({ job, id: entry.id }));
    return seq === undefined ? { kind: 'no such job' } : { kind: 'kept', seq, again: false };
  });
}
