import { statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { type Compilable, Kysely, SqliteDialect } from 'kysely';
import { Fault, type Kept, type Store } from '../../shop/store.ts';
import { makeFolder } from '../file/make-folder.ts';
import { gathered } from './gathered.ts';
import { type Appended, appendEntries, counts, jobEntries, jobLines, makeTold } from './job-rows.ts';
import { appendKit, kitEntries } from './kit-rows.ts';
import { checkGaps, type Migration, migrations } from './migrations.ts';
import { keepBeforeUpgrade } from './sqlite-copy.ts';
import { worded } from './sqlite-faults.ts';
import type { Tables } from './tables.ts';
import { atOnce, type Books, type Work } from './work.ts';

/** Marks the file as ours, so that another program's database is not written into ("WAYW"). */
const applicationId = 0x57415957;

/** How long a write waits for another process that holds the file, ms. */
const patience_ms = 5_000;

/** Statements that are kept ready; a list of values of another length is another statement. */
const mostStatements = 200;

interface Tool extends Books {
  readonly database: Database.Database;
  readonly answer: (query: Compilable) => readonly unknown[];
}

/** What tests and careful shops set. */
export interface SqliteOptions {
  /** A bound on the file's size, in pages of 4096 bytes; beyond it the answer is "disk full". */
  readonly mostPages?: number;
  /** To be read and nothing else: a backup stays as it was made, to the byte. */
  readonly readOnly?: boolean;
  /** Steps of the schema; this version's own when left out. */
  readonly steps?: readonly Migration[];
}

/** For whoever gathers entries before they come here. */
export interface SqliteStore extends Store {
  /** Appends all or none, in one transaction; answers in the same order. */
  readonly appendAll: (all: readonly Appended[]) => Promise<readonly Kept[]>;
}

/**
 * A workshop in one SQLite file: write-ahead log, and every commit forced to the disk before it is answered.
 * @throws Fault  the file cannot be opened, is of something else, or of a newer version
 */
export async function openSqlite(file: string, options: SqliteOptions = {}): Promise<SqliteStore> {
  const guarded = <T>(work: () => T): T => {
    try {
      return work();
    } catch (failure) {
      throw worded(failure, file);
    }
  };
  const tool = guarded(() => open(file, options));
  const { database, answer } = tool;
  if (options.mostPages !== undefined) database.pragma(`max_page_count = ${options.mostPages}`);
  const run = database.transaction((work: Work<unknown>) => atOnce(work, answer));
  // What is read is one moment's; a write takes the file before it reads, so that two programs cannot meet half way.
  const read = async <T>(work: Work<T>): Promise<T> => guarded(() => run.deferred(work) as T);
  const write = async <T>(work: Work<T>): Promise<T> => guarded(() => run.immediate(work) as T);
  const appendAll = (all: readonly Appended[]) => write(appendEntries(tool, all));
  const append = gathered(appendAll);
  return {
    jobs: () => read(jobLines(tool)),
    // One query is one moment's by itself.
    entries: async (job, after) => guarded(() => atOnce(jobEntries(tool, job, after), answer)),
    make: (job, entries, also) => write(makeTold(tool, job, entries, also)),
    append: (job, entry) => append({ job, entry }),
    appendAll,
    kit: () => read(kitEntries(tool)),
    keepKit: (entries) => write(appendKit(tool, entries)),
    facts: async () => ({
      kind: 'SQLite',
      schema: guarded(() => schemaOf(database)),
      bytes: [file, `${file}-wal`].reduce(
        (sum, one) => sum + (statSync(one, { throwIfNoEntry: false })?.size ?? 0),
        0,
      ),
      ...(await read(counts(tool))),
    }),
    close: async () => {
      database.close();
    },
  };
}

function open(file: string, { readOnly = false, steps = migrations }: SqliteOptions): Tool {
  if (!readOnly) makeFolder(dirname(file));
  const database = new Database(file, { timeout: patience_ms, readonly: readOnly });
  try {
    const id = database.pragma('application_id', { simple: true });
    const { n } = database.prepare('select count(*) as n from sqlite_master').get() as { n: number };
    if (id !== applicationId && (id !== 0 || n > 0))
      throw new Fault(
        'not a workshop',
        `${file} is a database of something else; give another file or folder`,
      );
    if (!readOnly) {
      database.pragma('journal_mode = WAL');
      database.pragma('synchronous = FULL');
      database.pragma('foreign_keys = ON');
    }
    if (id === 0 && !readOnly) database.pragma(`application_id = ${applicationId}`);
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
    const statements = new Map<string, Database.Statement>();
    const prepared = (sql: string): Database.Statement => {
      const there = statements.get(sql) ?? database.prepare(sql);
      if (statements.size >= mostStatements) statements.clear();
      statements.set(sql, there);
      return there;
    };
    const tool: Tool = {
      database,
      db,
      // The whole file is held by an immediate transaction.
      *hold() {},
      answer: (query) => {
        const { sql, parameters } = query.compile();
        const statement = prepared(sql);
        if (statement.reader) return statement.all(...parameters);
        statement.run(...parameters);
        return [];
      },
    };
    migrate(tool, file, steps, readOnly);
    return tool;
  } catch (failure) {
    database.close();
    throw failure;
  }
}

const schemaOf = (database: Database.Database): number =>
  database.pragma('user_version', { simple: true }) as number;

function migrate(
  { database, db, answer }: Tool,
  file: string,
  steps: readonly Migration[],
  readOnly: boolean,
): void {
  checkGaps(steps);
  const done = schemaOf(database);
  if (done > steps.length)
    throw new Fault(
      'newer workshop',
      `the workshop was written by a newer version (schema ${done}; this one knows ${steps.length}); nothing was changed`,
    );
  if (readOnly) return;
  if (done > 0 && done < steps.length) keepBeforeUpgrade(database, file, done);
  for (const step of steps.slice(done))
    database
      .transaction(() => {
        // Another program may have made the step while this one waited for its turn.
        if (schemaOf(database) >= step.number) return;
        for (const statement of step.statements(db, 'sqlite')) answer(statement);
        database.pragma(`user_version = ${step.number}`);
      })
      .immediate();
}
