import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { type Compilable, Kysely, SqliteDialect } from 'kysely';
import { type SentEntry, storedEntry } from '../../contract/entry.ts';
import type { SentKitEntry } from '../../contract/kit-entry.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import { Fault, type JobLine, type Kept, type Store } from '../../shop/store.ts';
import { appendKit, kitEntries } from './kit-rows.ts';
import { checkGaps, migrations } from './migrations.ts';
import { worded } from './sqlite-faults.ts';
import type { Tables } from './tables.ts';
import type { Tool } from './tool.ts';

/** Marks the file as ours, so that another program's database is not written into ("WAYW"). */
const applicationId = 0x57415957;

/** How long a write waits for another process that holds the file, ms. */
const patience_ms = 5_000;

type Row = Tables['entry'];

/**
 * A workshop in one SQLite file: write-ahead log, and every commit forced to the disk before it is answered.
 * @throws Fault  the file cannot be opened, is of something else, or of a newer version
 */
export async function openSqlite(file: string, limits: { readonly mostPages?: number } = {}): Promise<Store> {
  const guarded = <T>(work: () => T): T => {
    try {
      return work();
    } catch (failure) {
      throw worded(failure, file);
    }
  };
  const tool = guarded(() => open(file));
  const { database } = tool;
  // A bound on the file's size, for shops that want one; beyond it the answer is "disk full".
  if (limits.mostPages !== undefined) database.pragma(`max_page_count = ${limits.mostPages}`);
  const make = database.transaction((job: string, entries: readonly Entry[]) => makeJob(tool, job, entries));
  const append = database.transaction((job: string, entry: SentEntry) => appendEntry(tool, job, entry));
  const keepKit = database.transaction((entries: readonly SentKitEntry[]) => appendKit(tool, entries));
  return {
    jobs: async () => guarded(() => jobLines(tool)),
    entries: async (job) => guarded(() => entriesOf(tool, job)),
    // Immediate: the file is taken for writing before anything is read, so that two processes cannot meet half way.
    make: async (job, entries) => guarded(() => make.immediate(job, entries)),
    append: async (job, entry) => guarded(() => append.immediate(job, entry)),
    kit: async () => guarded(() => kitEntries(tool)),
    keepKit: async (entries) => guarded(() => keepKit.immediate(entries)),
    close: async () => {
      database.close();
    },
  };
}

function open(file: string): Tool {
  mkdirSync(dirname(file), { recursive: true });
  const database = new Database(file, { timeout: patience_ms });
  try {
    const id = database.pragma('application_id', { simple: true });
    const { n } = database.prepare('select count(*) as n from sqlite_master').get() as { n: number };
    if (id !== applicationId && (id !== 0 || n > 0))
      throw new Fault(
        'not a workshop',
        `${file} is a database of something else; give another file or folder`,
      );
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    if (id === 0) database.pragma(`application_id = ${applicationId}`);
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
    const tool: Tool = {
      database,
      db,
      all: <R>(query: Compilable<R>) => {
        const { sql, parameters } = query.compile();
        return database.prepare(sql).all(...parameters) as R[];
      },
      run: (query) => {
        const { sql, parameters } = query.compile();
        database.prepare(sql).run(...parameters);
      },
    };
    migrate(tool);
    return tool;
  } catch (failure) {
    database.close();
    throw failure;
  }
}

function migrate({ database, db, run }: Tool): void {
  checkGaps(migrations);
  const done = database.pragma('user_version', { simple: true }) as number;
  if (done > migrations.length)
    throw new Fault(
      'newer workshop',
      `the workshop was written by a newer version (schema ${done}; this one knows ${migrations.length}); nothing was changed`,
    );
  for (const step of migrations.slice(done))
    database
      .transaction(() => {
        // Another program may have made the step while this one waited for its turn.
        if ((database.pragma('user_version', { simple: true }) as number) >= step.number) return;
        for (const statement of step.statements(db)) run(statement);
        database.pragma(`user_version = ${step.number}`);
      })
      .immediate();
}

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

const rowsOf = ({ all, db }: Tool, job: string): Row[] =>
  all(db.selectFrom('entry').selectAll().where('job', '=', job).orderBy('seq'));

function entriesOf(tool: Tool, job: string): readonly Entry[] | undefined {
  const rows = rowsOf(tool, job);
  return rows.length === 0 ? undefined : rows.map(entryOf);
}

function jobLines({ all, db }: Tool): JobLine[] {
  const counts = all(
    db
      .selectFrom('entry')
      .innerJoin('job', 'job.id', 'entry.job')
      .select(({ fn }) => [
        'entry.job',
        fn.countAll<number>().as('entries'),
        fn.max<number>('entry.seq').as('last'),
      ])
      .groupBy('entry.job')
      .orderBy('job.place'),
  );
  return counts.map(({ job, entries, last }) => {
    const ends = all(
      db.selectFrom('entry').selectAll().where('job', '=', job).where('seq', 'in', [1, last]).orderBy('seq'),
    );
    return { id: job, made: entryOf(ends[0]!), entries, changed: ends.at(-1)!.at };
  });
}

function makeJob(tool: Tool, job: string, entries: readonly Entry[]): Kept {
  const { all, run, db } = tool;
  const there = rowsOf(tool, job);
  // The same beginning is the same job: what is new in either is kept, and a request sent again changes nothing.
  const shared = Math.min(there.length, entries.length);
  if (entries.slice(0, shared).some((entry, k) => !isSame(there[k]!, entry))) return { kind: 'conflict' };
  if (there.length === 0) {
    const [{ last }] = all(
      db.selectFrom('job').select(({ fn }) => fn.max<number | null>('place').as('last')),
    ) as [{ last: number | null }];
    run(db.insertInto('job').values({ id: job, place: (last ?? 0) + 1 }));
  }
  for (const entry of entries.slice(shared)) run(db.insertInto('entry').values(rowOf(job, entry, entry.seq)));
  return {
    kind: 'kept',
    seq: Math.max(there.length, entries.length),
    again: there.length > 0 && entries.length <= there.length,
  };
}

function appendEntry({ all, run, db }: Tool, job: string, entry: SentEntry): Kept {
  const [there] = all(db.selectFrom('entry').selectAll().where('job', '=', job).where('id', '=', entry.id));
  if (there)
    return isSame(there, entry) ? { kind: 'kept', seq: there.seq, again: true } : { kind: 'conflict' };
  const [{ last }] = all(
    db
      .selectFrom('entry')
      .select(({ fn }) => fn.max<number | null>('seq').as('last'))
      .where('job', '=', job),
  ) as [{ last: number | null }];
  if (last === null) return { kind: 'no such job' };
  run(db.insertInto('entry').values(rowOf(job, entry, last + 1)));
  return { kind: 'kept', seq: last + 1, again: false };
}
