import { type Compilable, type Kysely, sql } from 'kysely';
import type { Tables } from './tables.ts';

/** One step of the schema; steps are numbered from 1 without a gap and never changed once they are out. */
export interface Migration {
  readonly number: number;
  readonly statements: (db: Kysely<Tables>) => readonly Compilable[];
}

/** The ledger is append-only; the database itself refuses anything else. */
const guard =
  (name: string, event: 'update' | 'delete', table: keyof Tables = 'entry') =>
  (db: Kysely<Tables>) => ({
    compile: () =>
      sql`create trigger ${sql.ref(name)} before ${sql.raw(event)} on ${sql.ref(table)} begin select raise(abort, 'the ledger is append-only'); end`.compile(
        db,
      ),
  });

export const migrations: readonly Migration[] = [
  {
    number: 1,
    statements: (db) => [
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
      guard('entry_kept', 'update')(db),
      guard('entry_stays', 'delete')(db),
    ],
  },
  {
    // The workshop's kit: a ledger of its own, for it belongs to no job.
    number: 2,
    statements: (db) => [
      db.schema
        .createTable('kit_entry')
        .addColumn('seq', 'integer', (column) => column.primaryKey())
        .addColumn('id', 'text', (column) => column.notNull().unique())
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('kind', 'text', (column) => column.notNull())
        .addColumn('deed', 'text', (column) => column.notNull()),
      guard('kit_kept', 'update', 'kit_entry')(db),
      guard('kit_stays', 'delete', 'kit_entry')(db),
    ],
  },
];

/** Whether the numbers run 1, 2, 3 … @throws RangeError with the first that does not */
export function checkGaps(steps: readonly Migration[]): void {
  steps.forEach((step, i) => {
    if (step.number !== i + 1) throw new RangeError(`migration ${step.number} stands at place ${i + 1}`);
  });
}
