import { sql } from 'kysely';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { type DeviceLine, deviceLine } from '../../contract/share.ts';
import type { DeviceLog } from '../../shop/share/devices.ts';
import { Fault } from '../../shop/store.ts';
import { postgresSchema } from '../store/migrations.ts';
import { postgresDatabase } from '../store/postgres.ts';
import { worded } from '../store/postgres-faults.ts';
import { lockClass, locks } from '../store/postgres-locks.ts';

/** Looked at before every request: its own, so that it waits for no photo. */
const connections = 2;

/**
 * Devices in the workshop's PostgreSQL database, which all its servers share: let in at one, a device is in at each.
 * @param url  a workshop that has been opened once, so that its tables are there
 */
export function deviceTable(url: string): DeviceLog & { readonly close: () => Promise<void> } {
  const database = postgresDatabase(url, connections);
  const ours = database.withSchema(postgresSchema);
  let last = 0;
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (failure) {
      throw worded(failure, url);
    }
  };
  return {
    news: () =>
      guarded(async () => {
        const rows = await ours
          .selectFrom('device_line')
          .select(['n', 'line'])
          .where('n', '>', last)
          .orderBy('n')
          .execute();
        const lines = rows.map(({ n, line }) => lineOf(n, line));
        last = rows.at(-1)?.n ?? last;
        return { lines };
      }),
    add: (line) =>
      guarded(() =>
        database.transaction().execute(async (transaction) => {
          // One after the other, so that whoever has read a line has read every one before it.
          await sql`select pg_advisory_xact_lock(${sql.lit(lockClass)}::int, ${sql.lit(locks.devices)}::int)`.execute(
            transaction,
          );
          const lines = transaction.withSchema(postgresSchema);
          const { n } = await lines
            .selectFrom('device_line')
            .select(({ fn }) => fn.coalesce(fn.max<number>('n'), sql.lit(0)).as('n'))
            .executeTakeFirstOrThrow();
          const device = 'id' in line ? line.id : null;
          await lines
            .insertInto('device_line')
            .values({ n: n + 1, kind: line.kind, device, line: JSON.stringify(line) })
            .execute();
          // When a device was here before it was here last is of no use; the newest line stays, so that no number comes twice.
          if (line.kind === 'seen')
            await lines
              .deleteFrom('device_line')
              .where('kind', '=', 'seen')
              .where('device', '=', device)
              .where('n', '<=', n)
              .execute();
        }),
      ),
    close: () => database.destroy(),
  };
}

/** A line that cannot be read might be one that keeps somebody out. */
function lineOf(n: number, text: string): DeviceLine {
  try {
    return deviceLine(parsedJson(text));
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    throw new Fault(
      'damaged',
      `line ${n} of the devices in the database cannot be read (${failure.message}); nobody is let in by it. Empty the table waywright.device_line and let the devices in again`,
    );
  }
}
