import { type SentEntry, storedEntry } from '../../contract/entry.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import { Fault, type JobLine, type Kept, type Store, type StoreFacts } from '../../shop/store.ts';
import { filled } from './filled.ts';
import type { Tables } from './tables.ts';
import { type Books, rows, type Work } from './work.ts';

type Row = Tables['entry'];

const deedOf = (entry: SentEntry | Entry): string => {
  const { id: _id, at: _at, seq: _seq, ...deed } = entry as Entry;
  return JSON.stringify(deed);
};

/** Held to the schema on the way out too: a file touched by another hand must not reach the sums. */
function entryOf(row: Row): Entry {
  try {
    return storedEntry({ ...JSON.parse(row.deed), id: row.id, at: row.at, seq: row.seq });
  } catch (failure) {
    if (!(failure instanceof BadInput || failure instanceof SyntaxError)) throw failure;
    throw new Fault(
      'damaged',
      `entry ${row.seq} of job ${JSON.stringify(row.job)} cannot be read (${failure.message}); keep the file, and bring the job in from its last export`,
    );
  }
}

export const rowOf = (job: string, entry: SentEntry, seq: number): Row => ({
  job,
  seq,
  id: entry.id,
  at: entry.at,
  kind: entry.kind,
  deed: deedOf(entry),
});

const isSame = (row: Row, entry: SentEntry): boolean =>
  row.id === entry.id && row.at === entry.at && row.deed === deedOf(entry);

const rowsAfter = filled((db, job: string, after: number) =>
  db.selectFrom('entry').selectAll().where('job', '=', job).where('seq', '>', after).orderBy('seq'),
);

/** One row for each entry after a place; one without an entry where there is none; no row where there is no such job. */
const knownAfter = filled((db, job: string, after: number) =>
  db
    .selectFrom('job')
    .leftJoin('entry', (on) => on.onRef('entry.job', '=', 'job.id').on('entry.seq', '>', after))
    .select(['job.id as job', 'entry.seq', 'entry.id', 'entry.at', 'entry.kind', 'entry.deed'])
    .where('job.id', '=', job)
    .orderBy('entry.seq'),
);

/**
 * Entries of a job in order, those after a place when one is given, or undefined when there is no such job. One query, so that it
 * is one moment's without a transaction.
 */
export function* jobEntries({ db }: Books, job: string, after = 0): Work<readonly Entry[] | undefined> {
  const there = yield* rows(knownAfter(db, job, after));
  if (there.length === 0) return undefined;
  const entries = there.filter((row): row is Row => row.seq !== null);
  // A job is made together with its first entry.
  return entries.length === 0 && after === 0 ? undefined : entries.map(entryOf);
}

/** Every job in the order in which they were made, by its last entry alone: one query, whatever the ledgers hold. */
export function* jobLines({ db }: Books): Work<JobLine[]> {
  const lasts = yield* rows(
    db
      .selectFrom('job')
      .innerJoin('entry', 'entry.job', 'job.id')
      .select(['job.id as job', 'entry.seq', 'entry.id', 'entry.at'])
      .where('entry.seq', '=', (one) =>
        one
          .selectFrom('entry as own')
          .select(({ fn }) => fn.max<number>('own.seq').as('last'))
          .whereRef('own.job', '=', 'job.id'),
      )
      .orderBy('job.place'),
  );
  // Places in a ledger run 1, 2, 3 …, so the last one is their count.
  return lasts.map(({ job, seq, id, at }) => ({ id: job, entries: seq, last: id, changed: at }));
}

/** How much is in a workshop. */
export function* counts({ db }: Books): Work<Pick<StoreFacts, 'jobs' | 'entries' | 'kit_entries'>> {
  const [row] = yield* rows(
    db.selectNoFrom((one) => [
      one
        .selectFrom('job')
        .select(({ fn }) => fn.countAll<number | string>().as('n'))
        .as('jobs'),
      one
        .selectFrom('entry')
        .select(({ fn }) => fn.countAll<number | string>().as('n'))
        .as('entries'),
      one
        .selectFrom('kit_entry')
        .select(({ fn }) => fn.countAll<number | string>().as('n'))
        .as('kit_entries'),
    ]),
  );
  return {
    jobs: Number(row?.jobs),
    entries: Number(row?.entries),
    kit_entries: Number(row?.kit_entries),
  };
}

/** Makes a job with its first entries, or gives it those that it lacks. */
export function* makeJob(books: Books, job: string, entries: readonly Entry[]): Work<Kept> {
  const { db, hold } = books;
  yield* hold('jobs');
  yield* hold({ jobs: [job] });
  const there = yield* rows(rowsAfter(db, job, 0));
  // The same beginning is the same job: what is new in either is kept, and a request sent again changes nothing.
  const shared = Math.min(there.length, entries.length);
  if (entries.slice(0, shared).some((entry, k) => !isSame(there[k]!, entry))) return { kind: 'conflict' };
  if (there.length === 0) {
    const [last] = yield* rows(
      db.selectFrom('job').select(({ fn }) => fn.max<number | null>('place').as('place')),
    );
    yield* rows(db.insertInto('job').values({ id: job, place: (last?.place ?? 0) + 1 }));
  }
  for (const entry of entries.slice(shared))
    yield* rows(db.insertInto('entry').values(rowOf(job, entry, entry.seq)));
  return {
    kind: 'kept',
    seq: Math.max(there.length, entries.length),
    again: there.length > 0 && entries.length <= there.length,
  };
}

/** An entry on its way into a ledger. */
export interface Appended {
  readonly job: string;
  readonly entry: SentEntry;
}

/** One text for the job and the entry's id, which is its own only within the job. */
export const nameOf = ({ job, id }: Pick<Row, 'job' | 'id'>): string => JSON.stringify([job, id]);

/** What would become of entries that are appended, and the rows that are new; nothing is written, and the ledgers stay held. */
function* appendPlaces({ db, hold }: Books, all: readonly Appended[]): Work<{ kept: Kept[]; fresh: Row[] }> {
  const jobs = [...new Set(all.map(({ job }) => job))];
  yield* hold({ jobs });
  const ids = [...new Set(all.map(({ entry }) => entry.id))];
  const there = new Map(
    (yield* rows(db.selectFrom('entry').selectAll().where('job', 'in', jobs).where('id', 'in', ids))).map(
      (row) => [nameOf(row), row],
    ),
  );
  const last = new Map(
    (yield* rows(
      db
        .selectFrom('entry')
        .select(({ fn }) => ['job', fn.max<number>('seq').as('seq')])
        .where('job', 'in', jobs)
        .groupBy('job'),
    )).map(({ job, seq }) => [job, seq]),
  );
  const fresh: Row[] = [];
  const kept = all.map(({ job, entry }): Kept => {
    const known = there.get(nameOf({ job, id: entry.id }));
    if (known)
      return isSame(known, entry) ? { kind: 'kept', seq: known.seq, again: true } : { kind: 'conflict' };
    const before = last.get(job);
    if (before === undefined) return { kind: 'no such job' };
    const row = rowOf(job, entry, before + 1);
    last.set(job, row.seq);
    there.set(nameOf(row), row);
    fresh.push(row);
    return { kind: 'kept', seq: row.seq, again: false };
  });
  return { kept, fresh };
}

/** Appends entries, of several jobs it may be, all or none, in the order given; one that is sent twice is kept once. */
export function* appendEntries(books: Books, all: readonly Appended[]): Work<readonly Kept[]> {
  const { kept, fresh } = yield* appendPlaces(books, all);
  if (fresh.length > 0) yield* rows(books.db.insertInto('entry').values(fresh));
  return kept;
}

/** Makes a job and appends an entry of another that tells of it: both, or neither. */
export function* makeTold(
  books: Books,
  job: string,
  entries: readonly Entry[],
  also: Parameters<Store['make']>[2],
): Work<Kept> {
  if (!also) return yield* makeJob(books, job, entries);
  yield* books.hold('jobs');
  // Looked at before anything is written: a conflict in either leaves both as they were.
  const {
    kept: [told],
  } = yield* appendPlaces(books, [also]);
  if (told!.kind !== 'kept') return told!;
  const made = yield* makeJob(books, job, entries);
  if (made.kind === 'kept') yield* appendEntries(books, [also]);
  return made;
}
