import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import type { SentEntry } from '../../contract/entry.ts';
import { storedEntry } from '../../contract/entry.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import { Fault, type JobLine, type Kept, type Store } from '../../shop/store.ts';
import { checkGaps, migrations } from './migrations.ts';
import type { Tables } from './tables.ts';

/** Marks the file as ours, so that another program's database is not written into ("WAYW"). */
const applicationId = 0x57415957;

/** How long a write waits for another process that holds the file, ms. */
const patience_ms = 5_000;

type Row = Tables['entry'];

/** A workshop in one SQLite file: write-ahead log, and every commit forced to the disk before it is answered. */
export async function openSqlite(file: string, limits: { readonly mostPages?: number } = {}): Promise<Store> {
  const database = open(file);
  // A bound on the file's size, for shops that want one; beyond it the answer is "disk full".
  if (limits.mostPages !== undefined) database.pragma(`max_page_count = ${limits.mostPages}`);
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
  try {
    await migrate(database, db);
  } catch (failure) {
    database.close();
    throw worded(failure, file);
  }
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (failure) {
      throw worded(failure, file);
    }
  };
  return {
    jobs: () => guarded(() => jobLines(db)),
    entries: (job) => guarded(() => entriesOf(db, job)),
    make: (job, entries) => guarded(() => make(db, job, entries)),
    append: (job, entry) => guarded(() => append(db, job, entry)),
    close: () => db.destroy(),
  };
}

function open(file: string): Database.Database {
  try {
    mkdirSync(dirname(file), { recursive: true });
    const database = new Database(file, { timeout: patience_ms });
    const id = database.pragma('application_id', { simple: true });
    const empty = database.prepare('select count(*) as n from sqlite_master').get() as { n: number };
    if (id !== applicationId && (id !== 0 || empty.n > 0)) {
      database.close();
      throw new Fault(
        'not a workshop',
        `${file} is a database of something else; give another file or folder`,
      );
    }
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    if (id === 0) database.pragma(`application_id = ${applicationId}`);
    return database;
  } catch (failure) {
    throw worded(failure, file);
  }
}

async function migrate(database: Database.Database, db: Kysely<Tables>): Promise<void> {
  checkGaps(migrations);
  const done = database.pragma('user_version', { simple: true }) as number;
  if (done > migrations.length)
    throw new Fault(
      'newer workshop',
      `the workshop was written by a newer version (schema ${done}; this one knows ${migrations.length}); nothing was changed`,
    );
  for (const step of migrations.slice(done)) {
    await db.transaction().execute(async (transaction) => {
      await step.up(transaction as unknown as Kysely<Tables>);
      database.pragma(`user_version = ${step.number}`);
    });
  }
}

const deedOf = (entry: SentEntry | Entry): string => {
  const { id: _id, at: _at, seq: _seq, ...deed } = entry as Entry;
  return JSON.stringify(deed);
};

/** Held to the schema on the way out too: a file touched by another hand must not reach the sums. */
const entryOf = (row: Row): Entry =>
  storedEntry({ ...JSON.parse(row.deed), id: row.id, at: row.at, seq: row.seq });

async function entriesOf(db: Kysely<Tables>, job: string): Promise<readonly Entry[] | undefined> {
  const rows = await db.selectFrom('entry').selectAll().where('job', '=', job).orderBy('seq').execute();
  return rows.length === 0 ? undefined : rows.map(entryOf);
}

async function jobLines(db: Kysely<Tables>): Promise<JobLine[]> {
  const rows = await db
    .selectFrom('job')
    .innerJoin('entry as made', (join) => join.onRef('made.job', '=', 'job.id').on('made.seq', '=', 1))
    .innerJoin(
      (query) =>
        query
          .selectFrom('entry')
          .select((column) => [
            'job',
            column.fn.max<number>('seq').as('last'),
            column.fn.countAll<number>().as('entries'),
          ])
          .groupBy('job')
          .as('count'),
      (join) => join.onRef('count.job', '=', 'job.id'),
    )
    .innerJoin('entry as last', (join) =>
      join.onRef('last.job', '=', 'job.id').onRef('last.seq', '=', 'count.last'),
    )
    .select([
      'made.job',
      'made.seq',
      'made.id',
      'made.at',
      'made.kind',
      'made.deed',
      'count.entries',
      'last.at as changed',
    ])
    .orderBy('job.place')
    .execute();
  return rows.map(({ entries, changed, ...made }) => ({
    id: made.job,
    made: entryOf(made),
    entries: Number(entries),
    changed,
  }));
}

const rowOf = (job: string, entry: SentEntry, seq: number): Row => ({
  job,
  seq,
  id: entry.id,
  at: entry.at,
  kind: entry.kind,
  deed: deedOf(entry),
});

const make = (db: Kysely<Tables>, job: string, entries: readonly Entry[]): Promise<Kept> =>
  db.transaction().execute(async (transaction) => {
    const there = await transaction
      .selectFrom('entry')
      .selectAll()
      .where('job', '=', job)
      .orderBy('seq')
      .execute();
    // The same beginning is the same job: what is new in either is kept, and a request sent again changes nothing.
    const shared = Math.min(there.length, entries.length);
    if (entries.slice(0, shared).some((entry, k) => !isSame(there[k]!, entry))) return { kind: 'conflict' };
    if (there.length > 0) {
      for (const entry of entries.slice(shared))
        await transaction
          .insertInto('entry')
          .values(rowOf(job, entry, entry.seq))
          .execute();
      return {
        kind: 'kept',
        seq: Math.max(there.length, entries.length),
        again: entries.length <= there.length,
      };
    }
    const { last } = await transaction
      .selectFrom('job')
      .select((column) => column.fn.coalesce(column.fn.max<number>('place'), column.lit(0)).as('last'))
      .executeTakeFirstOrThrow();
    await transaction
      .insertInto('job')
      .values({ id: job, place: Number(last) + 1 })
      .execute();
    for (const entry of entries)
      await transaction
        .insertInto('entry')
        .values(rowOf(job, entry, entry.seq))
        .execute();
    return { kind: 'kept', seq: entries.length, again: false };
  });

const isSame = (row: Row, entry: SentEntry): boolean =>
  row.id === entry.id && row.at === entry.at && row.deed === deedOf(entry);

const append = (db: Kysely<Tables>, job: string, entry: SentEntry): Promise<Kept> =>
  db.transaction().execute(async (transaction) => {
    const there = await transaction
      .selectFrom('entry')
      .selectAll()
      .where('job', '=', job)
      .where('id', '=', entry.id)
      .executeTakeFirst();
    if (there)
      return isSame(there, entry) ? { kind: 'kept', seq: there.seq, again: true } : { kind: 'conflict' };
    const { last } = await transaction
      .selectFrom('entry')
      .select((column) => column.fn.max<number | null>('seq').as('last'))
      .where('job', '=', job)
      .executeTakeFirstOrThrow();
    if (last === null) return { kind: 'no such job' };
    const seq = Number(last) + 1;
    await transaction
      .insertInto('entry')
      .values(rowOf(job, entry, seq))
      .execute();
    return { kind: 'kept', seq, again: false };
  });

/** SQLite's codes in words that say what to do. */
function worded(failure: unknown, file: string): unknown {
  const code = (failure as { code?: string }).code ?? '';
  if (code.startsWith('SQLITE_FULL') || code === 'ENOSPC')
    return new Fault(
      'disk full',
      `the disk is full: nothing was written to ${file}; make room and try again`,
    );
  if (
    code.startsWith('SQLITE_READONLY') ||
    code.startsWith('SQLITE_CANTOPEN') ||
    code === 'EACCES' ||
    code === 'EROFS'
  )
    return new Fault(
      'read only',
      `${file} cannot be written; check the folder's permissions or set WAYWRIGHT_DATA`,
    );
  if (code.startsWith('SQLITE_NOTADB'))
    return new Fault('not a workshop', `${file} is not a database; give another file or folder`);
  if (code.startsWith('SQLITE_CORRUPT'))
    return new Fault('damaged', `${file} is damaged; keep it, and restore the last copy beside it`);
  if (code.startsWith('SQLITE_BUSY'))
    return new Fault('busy', `${file} is held by another program; nothing was written`);
  return failure;
}
