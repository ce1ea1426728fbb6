import { createHash } from 'node:crypto';
import type { PhotoFormat } from '../../shop/print/photo.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { Fault } from '../../shop/store.ts';
import { postgresSchema } from '../store/migrations.ts';
import { postgresDatabase } from '../store/postgres.ts';
import { worded } from '../store/postgres-faults.ts';
import { isHash, nameOf } from './name.ts';

/** Few: a photo is large, and each connection holds one in memory at a time. */
const connections = 2;

/**
 * Photos in the workshop's PostgreSQL database, which all servers share. The database holds each to its SHA-256 and lets none go.
 * @param url  a workshop that has been opened once, so that its tables are there
 */
export function photoTable(url: string): PhotoStore & { readonly close: () => Promise<void> } {
  const database = postgresDatabase(url, connections);
  const ours = database.withSchema(postgresSchema);
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (failure) {
      throw worded(failure, url);
    }
  };
  const about = ours
    .selectFrom('photo')
    .select(({ fn }) => ['hash', 'format', fn<number>('octet_length', ['bytes']).as('bytes')]);

  return {
    keep: ({ bytes, format }) =>
      guarded(async () => {
        const hash = createHash('sha256').update(bytes).digest('hex');
        const { numInsertedOrUpdatedRows } = await ours
          .insertInto('photo')
          .values({ hash, format, bytes: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength) })
          .onConflict((one) => one.column('hash').doNothing())
          .executeTakeFirstOrThrow();
        return { hash, again: numInsertedOrUpdatedRows === 0n };
      }),
    open: (hash) =>
      guarded(async () => {
        if (!isHash(hash)) return undefined;
        const photo = await ours
          .selectFrom('photo')
          .select(['format', 'bytes'])
          .where('hash', '=', hash)
          .executeTakeFirst();
        if (!photo) return undefined;
        if ((await nameOf(photo.bytes)).hash !== hash)
          throw new Fault(
            'damaged',
            `the photo ${hash} in the database is no longer the one that was kept; restore it from a backup`,
          );
        return { bytes: photo.bytes, format: photo.format as PhotoFormat };
      }),
    about: (hash) =>
      guarded(async () => {
        if (!isHash(hash)) return undefined;
        const line = await about.where('hash', '=', hash).executeTakeFirst();
        return line && { format: line.format as PhotoFormat, bytes: line.bytes };
      }),
    all: () =>
      guarded(async () =>
        (await about.orderBy('hash').execute()).map((line) => ({
          ...line,
          format: line.format as PhotoFormat,
        })),
      ),
    nameOf,
    close: () => database.destroy(),
  };
}
