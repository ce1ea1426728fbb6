import { type SentEntry, storedEntry } from '../../contract/entry.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import { Fault, type JobLine, type Kept, type Store, type StoreFacts } from '../../shop/store.ts';
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

const rowOf = (job: string, entry: SentEntry, seq: number): Row => ({
  job,
  seq,
  id: entry.id,
  at: entry.at,
  kind: entry.kind,
  deed: deedOf(entry),
});

const isSame = (row: Row, entry: SentEntry): boolean =>
  row.id === entry.id && row.at === entry.at && row.deed === deedOf(entry);

const rowsOf = ({ db }: Books, job: string, after = 0) =>
  rows(db.selectFrom('entry').selectAll().where('job', '=', job).where('seq', '>', after).orderBy('seq'));

/** Entries of a job in order, those after a place when one is given, or undefined when there is no such job. */
export function* jobEntries(books: Books, job: string, after = 0): Work<readonly Entry[] | undefined> {
  const there = yield* rowsOf(books, job, after);
  if (there.length > 0) return there.map(entryOf);
  // Nothing after a place is no proof that there is no such job.
  const { db } = books;
  const known = after > 0 ? yield* rows(db.selectFrom('job').select('id').where('id', '=', job)) : [];
  return known.length > 0 ? [] : undefined;
}

/** Every job, without its ledger, in the order in which they were made. */
export function* jobLines({ db }: Books): Work<JobLine[]> {
  const counts = yield* rows(
    db
      .selectFrom('entry')
      .innerJoin('job', 'job.id', 'entry.job')
      .select(({ fn }) => [
        'entry.job',
        // A count is a 64-bit number, which PostgreSQL hands over as text.
        fn.countAll<number | string>().as('entries'),
        fn.max<number>('entry.seq').as('last'),
      ])
      .groupBy(['entry.job', 'job.place'])
      .orderBy('job.place'),
  );
  const lines: JobLine[] = [];
  for (const { job, entries, last } of counts) {
    const ends = yield* rows(
      db.selectFrom('entry').selectAll().where('job', '=', job).where('seq', 'in', [1, last]).orderBy('seq'),
    );
    lines.push({ id: job, made: entryOf(ends[0]!), entries: Number(entries), changed: ends.at(-1)!.at });
  }
  return lines;
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
  yield* hold({ job });
  const there = yield* rowsOf(books, job);
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

/** What would become of an entry that is appended; nothing is written, and the ledger stays held. */
function* appendPlace({ db, hold }: Books, job: string, entry: SentEntry): Work<Kept> {
  yield* hold({ job });
  const [there] = yield* rows(
    db.selectFrom('entry').selectAll().where('job', '=', job).where('id', '=', entry.id),
  );
  if (there)
    return isSame(there, entry) ? { kind: 'kept', seq: there.seq, again: true } : { kind: 'conflict' };
  const [last] = yield* rows(
    db
      .selectFrom('entry')
      .select(({ fn }) => fn.max<number | null>('seq').as('seq'))
      .where('job', '=', job),
  );
  const before = last?.seq ?? null;
  return before === null ? { kind: 'no such job' } : { kind: 'kept', seq: before + 1, again: false };
}

/** Appends an entry; sent twice, it is kept once. */
export function* appendEntry(books: Books, job: string, entry: SentEntry): Work<Kept> {
  const kept = yield* appendPlace(books, job, entry);
  if (kept.kind === 'kept' && !kept.again)
    yield* rows(books.db.insertInto('entry').values(rowOf(job, entry, kept.seq)));
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
  const told = yield* appendPlace(books, also.job, also.entry);
  if (told.kind !== 'kept') return told;
  const made = yield* makeJob(books, job, entries);
  if (made.kind === 'kept') yield* appendEntry(books, also.job, also.entry);
  return made;
}
