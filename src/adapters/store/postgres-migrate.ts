import { type Kysely, sql, type Transaction } from 'kysely';
import { Fault } from '../../shop/store.ts';
import { checkGaps, type Migration, postgresSchema } from './migrations.ts';
import { lockClass, locks } from './postgres-locks.ts';
import type { Tables } from './tables.ts';

const schema = sql.id(postgresSchema);
const version = sql.id(postgresSchema, 'schema_version');

/** Tables whose rows are copied before the schema is changed; photos are held to their hash and stay. */
const ledgers = ['job', 'entry', 'kit_entry'] as const;

/**
 * Brings the schema to this version, all of it in one transaction, one server at a time. A copy of the ledgers as they were stays
 * in a schema of its own.
 * @throws Fault  the schema of our name is another program's, or a newer version's
 */
export function migratePostgres(database: Kysely<Tables>, steps: readonly Migration[]): Promise<void> {
  checkGaps(steps);
  return database.transaction().execute(async (transaction) => {
    await sql`select pg_advisory_xact_lock(${sql.lit(lockClass)}::int, ${sql.lit(locks.schema)}::int)`.execute(
      transaction,
    );
    const done = await stepsDone(transaction);
    if (done > steps.length)
      throw new Fault(
        'newer workshop',
        `the workshop was written by a newer version (schema ${done}; this one knows ${steps.length}); nothing was changed`,
      );
    if (done === steps.length) return;
    if (done > 0) await keepBeforeUpgrade(transaction, done);
    for (const step of steps.slice(done)) {
      for (const statement of step.statements(transaction.withSchema(postgresSchema), 'postgres'))
        await transaction.executeQuery(statement.compile());
      await sql`insert into ${version} (number) values (${step.number})`.execute(transaction);
    }
  });
}

async function tablesIn(transaction: Transaction<Tables>, name: string): Promise<string[] | undefined> {
  const { rows: schemas } = await sql`select 1 from pg_namespace where nspname = ${name}`.execute(
    transaction,
  );
  if (schemas.length === 0) return undefined;
  const { rows: tables } = await sql<{
    name: string;
  }>`select tablename as name from pg_tables where schemaname = ${name}`.execute(transaction);
  return tables.map((table) => table.name);
}

async function stepsDone(transaction: Transaction<Tables>): Promise<number> {
  const tables = await tablesIn(transaction, postgresSchema);
  if (!tables) await sql`create schema ${schema}`.execute(transaction);
  if (!tables?.includes('schema_version')) {
    if (tables?.length)
      throw new Fault(
        'not a workshop',
        `the database has a schema "${postgresSchema}" of something else; give another database`,
      );
    await sql`create table ${version} (number integer primary key, at timestamptz not null default now())`.execute(
      transaction,
    );
  }
  const { rows } = await sql<{
    done: number | null;
  }>`select max(number) as done from ${version}`.execute(transaction);
  return rows[0]?.done ?? 0;
}

/** The ledgers as they were, in a schema whose name is free. */
async function keepBeforeUpgrade(transaction: Transaction<Tables>, done: number): Promise<void> {
  let copy = `${postgresSchema}_schema_${done}`;
  for (let n = 2; await tablesIn(transaction, copy); n++) copy = `${postgresSchema}_schema_${done}_${n}`;
  await sql`create schema ${sql.id(copy)}`.execute(transaction);
  const there = await tablesIn(transaction, postgresSchema);
  for (const table of ledgers)
    if (there?.includes(table))
      await sql`create table ${sql.id(copy, table)} as table ${sql.id(postgresSchema, table)}`.execute(
        transaction,
      );
}
