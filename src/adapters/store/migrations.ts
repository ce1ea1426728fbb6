import { type Compilable, type Kysely, type RawBuilder, sql } from 'kysely';
import type { Tables } from './tables.ts';

/** Databases a workshop may be in. */
export type Dialect = 'sqlite' | 'postgres';

/** One step of the schema; steps are numbered from 1 without a gap and never changed once they are out. */
export interface Migration {
  readonly number: number;
  readonly statements: (db: Kysely<Tables>, dialect: Dialect) => readonly Compilable[];
}

/** The schema of ours in a PostgreSQL database, so that nothing of another program is touched. */
export const postgresSchema = 'waywright';

const compilable = (db: Kysely<Tables>, text: RawBuilder<unknown>): Compilable => ({
  compile: () => text.compile(db),
});

const words = 'the ledger is append-only';

/** The ledger is append-only; the database itself refuses anything else. */
function guards(
  db: Kysely<Tables>,
  dialect: Dialect,
  table: keyof Tables,
  names: { readonly [event in 'update' | 'delete']?: string },
): Compilable[] {
  if (dialect === 'sqlite')
    return Object.entries(names).map(([event, name]) =>
      compilable(
        db,
        sql`create trigger ${sql.ref(name)} before ${sql.raw(event)} on ${sql.ref(table)} begin select raise(abort, ${sql.lit(words)}); end`,
      ),
    );
  const events = Object.keys(names);
  const refused = (event: string, name: string, each: 'row' | 'statement') =>
    compilable(
      db,
      sql`create trigger ${sql.ref(name)} before ${sql.raw(event)} on ${sql.id(postgresSchema, table)} for each ${sql.raw(each)} execute function ${sql.id(postgresSchema, 'refuse')}()`,
    );
  return [
    ...events.map((event) => refused(event, names[event as 'update' | 'delete']!, 'row')),
    refused('truncate', `${table}_emptied`, 'statement'),
  ];
}

/** What the guards of PostgreSQL call. */
const refuse = (db: Kysely<Tables>): Compilable =>
  compilable(
    db,
    sql`create function ${sql.id(postgresSchema, 'refuse')}() returns trigger language plpgsql as ${sql.lit(`begin raise exception '${words}'; end`)}`,
  );

export const migrations: readonly Migration[] = [
  {
    number: 1,
    statements: (db, dialect) => [
      db.schema
        .createTable('job')
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('place', 'integer', (column) => column.notNull().unique()),
      db.schema
        .createTable('entry')
        .addColumn('job', 'text', (column) => column.notNull().references('job.id'))
        .addColumn('seq', 'integer', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('kind', 'text', (column) => column.notNull())
        // The deed as it was written, JSON.
        .addColumn('deed', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('entry_place', ['job', 'seq'])
        .addUniqueConstraint('entry_id', ['job', 'id']),
      ...(dialect === 'postgres' ? [refuse(db)] : []),
      ...guards(db, dialect, 'entry', { update: 'entry_kept', delete: 'entry_stays' }),
    ],
  },
  {
    // The workshop's kit: a ledger of its own, for it belongs to no job.
    number: 2,
    statements: (db, dialect) => [
      db.schema
        .createTable('kit_entry')
        .addColumn('seq', 'integer', (column) => column.primaryKey())
        .addColumn('id', 'text', (column) => column.notNull().unique())
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('kind', 'text', (column) => column.notNull())
        .addColumn('deed', 'text', (column) => column.notNull()),
      ...guards(db, dialect, 'kit_entry', { update: 'kit_kept', delete: 'kit_stays' }),
    ],
  },
  {
    // Photos that several servers share. Beside a file they lie in a folder, and there is nothing to do.
    number: 3,
    statements: (db, dialect) =>
      dialect === 'sqlite'
        ? []
        : [
            db.schema
              .createTable('photo')
              .addColumn('hash', 'text', (column) => column.primaryKey())
              .addColumn('format', 'text', (column) => column.notNull())
              .addColumn('bytes', 'bytea', (column) => column.notNull())
              // The database itself holds a photo to the name that is its bytes' SHA-256.
              .addCheckConstraint('photo_named', sql`hash = encode(sha256(bytes), 'hex')`),
            ...guards(db, dialect, 'photo', { delete: 'photo_stays' }),
          ],
  },
  {
    // Devices that several servers let in. Beside a file they are lines of a file, so that no restored backup lets one in again.
    number: 4,
    statements: (db, dialect) =>
      dialect === 'sqlite'
        ? []
        : [
            db.schema
              .createTable('device_line')
              .addColumn('n', 'integer', (column) => column.primaryKey())
              .addColumn('kind', 'text', (column) => column.notNull())
              .addColumn('device', 'text')
              .addColumn('line', 'text', (column) => column.notNull()),
          ],
  },
];

/** Whether the numbers run 1, 2, 3 … @throws RangeError with the first that does not */
export function checkGaps(steps: readonly Migration[]): void {
  steps.forEach((step, i) => {
    if (step.number !== i + 1) throw new RangeError(`migration ${step.number} stands at place ${i + 1}`);
  });
}
