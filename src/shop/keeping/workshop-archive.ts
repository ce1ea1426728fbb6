import { createHash } from 'node:crypto';
import { z } from 'zod';
import { entryId, storedEntry } from '../../contract/entry.ts';
import { storedKitEntry } from '../../contract/kit-entry.ts';
import { BadInput, checked, parsedJson } from '../../contract/refusal.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import type { KitEntry } from '../../core/ledger/kit-ledger.ts';
import { type ArchiveFile, type ArchivePart, archiveLimits, photoName } from '../archive/archive.ts';
import { photoFormats } from '../print/photo.ts';
import type { PhotoStore, StoredPhoto } from '../print/photo-store.ts';
import { Fault } from '../store.ts';
import { kitText, ledgerText, type Readable, type WorkshopSum } from './workshop-sum.ts';

/** The archive's own list: what is in it, by count and hash. */
export const listName = 'workshop.json';
const kitName = 'kit.json';
const jobPlace = (id: string): string => `jobs/${id}.json`;

const sha = z.string().regex(/^[0-9a-f]{64}$/);
const count = z.int().min(0);

/** @see WorkshopSum */
export const sumSchema = z.strictObject({
  jobs: z.array(z.strictObject({ id: entryId, entries: count, sha256: sha })).max(100_000),
  kit: z.strictObject({ entries: count, sha256: sha }),
  photos: z.array(z.strictObject({ hash: sha, format: z.enum(photoFormats), bytes: count })).max(1_000_000),
  missing: z.array(sha),
});

const listSchema = z.strictObject({
  format: z.literal('waywright-workshop'),
  version: z.literal(1),
  /** Whether the photos are in the archive, or lie in a folder beside it as in a backup. */
  photos_inside: z.boolean(),
  ...sumSchema.shape,
});

const ledgerSchema = z.strictObject({
  format: z.literal('waywright-job'),
  version: z.literal(1),
  id: entryId,
  entries: z.array(z.unknown()).min(1),
});
const kitSchema = z.strictObject({
  format: z.literal('waywright-kit'),
  version: z.literal(1),
  entries: z.array(z.unknown()),
});

const tooLarge = (found: string): BadInput =>
  new BadInput([
    {
      path: 'file',
      found,
      expected: `at most ${archiveLimits.bytes} bytes and ${archiveLimits.files} files in one archive; waywright backup --to FOLDER has no such limit`,
    },
  ]);

/**
 * A workshop as the parts of one open archive, in an order and with bytes that are the same for the same workshop.
 * @param sum     of the workshop as it is now; ledgers that went on since are written as far as the sum says
 * @param inside  whether photos go in; in a backup they lie beside, each once for all backups
 * @throws BadInput  more than one archive may hold
 */
export function workshopParts(from: Readable, sum: WorkshopSum, inside = true): readonly ArchivePart[] {
  const photos = inside ? sum.photos : [];
  const bytes = photos.reduce((all, photo) => all + photo.bytes, 0);
  if (bytes > archiveLimits.bytes - 2 * archiveLimits.job_bytes) throw tooLarge(`${bytes} bytes of photos`);
  const files = sum.jobs.length + photos.length + 2;
  if (files > archiveLimits.files) throw tooLarge(`${files} files`);
  const written = (text: string) => new TextEncoder().encode(text);
  const list = { format: 'waywright-workshop', version: 1, photos_inside: inside, ...sum };
  return [
    { name: listName, bytes: async () => written(`${JSON.stringify(list, null, 1)}\n`) },
    {
      name: kitName,
      bytes: async () => written(kitText((await from.store.kit()).slice(0, sum.kit.entries))),
    },
    ...sum.jobs.map(({ id, entries }) => ({
      name: jobPlace(id),
      bytes: async () => written(ledgerText(id, ((await from.store.entries(id)) ?? []).slice(0, entries))),
    })),
    ...photos.map(({ hash, format }) => ({
      name: photoName(hash, format),
      bytes: async () => {
        const photo = await from.photos.open(hash);
        if (!photo) throw new Fault('damaged', `the photo ${hash} went away while it was written`);
        return photo.bytes;
      },
    })),
  ];
}

/** An archive of a workshop, open to be read like one. */
export interface ArchivedWorkshop extends Readable {
  readonly sum: WorkshopSum;
}

/**
 * Opens an archive of a workshop. Each file in it is held to the list when it is read.
 * @param beside  where the photos are when they are not in the archive
 * @throws BadInput  naming the file in it
 */
export async function archivedWorkshop(
  files: readonly ArchiveFile[],
  beside?: Pick<PhotoStore, 'all' | 'open'>,
): Promise<ArchivedWorkshop> {
  const byName = new Map(files.map((file) => [file.name, file]));
  const refused = (path: string, found: string, expected: string) =>
    new BadInput([{ path, found, expected }]);
  const bytesOf = async (name: string): Promise<Uint8Array> => {
    const file = byName.get(name);
    if (!file) throw refused(name, 'nothing in the archive', 'the file that the list names');
    return await file.bytes();
  };
  /** A JSON file of the archive, held to its hash in the list. */
  async function held(name: string, sha256?: string): Promise<unknown> {
    const bytes = await bytesOf(name);
    const is = createHash('sha256').update(bytes).digest('hex');
    if (sha256 !== undefined && is !== sha256)
      throw refused(name, `bytes whose SHA-256 is ${is}`, `${sha256}, as ${listName} says`);
    return parsedJson(new TextDecoder().decode(bytes));
  }
  if (!byName.has(listName))
    throw refused(
      'file',
      `an archive without ${listName}`,
      'a whole workshop; one job is brought in with: job import',
    );
  const {
    format: _f,
    version: _v,
    photos_inside: inside,
    ...sum
  } = checked(listSchema, await held(listName));
  const photosIn = new Map(sum.photos.map((photo) => [photo.hash, photo]));
  const lying = beside ?? { all: async () => [], open: async () => undefined };
  return {
    sum,
    store: {
      jobs: async () => sum.jobs,
      entries: async (id) => {
        const job = sum.jobs.find((one) => one.id === id);
        if (!job) return undefined;
        const name = jobPlace(id);
        return orderly(name, checked(ledgerSchema, await held(name, job.sha256)).entries.map(storedEntry));
      },
      kit: async () =>
        orderly<KitEntry>(
          kitName,
          checked(kitSchema, await held(kitName, sum.kit.sha256)).entries.map(storedKitEntry),
        ),
    },
    photos: inside
      ? {
          all: async () => sum.photos,
          open: async (hash): Promise<StoredPhoto | undefined> => {
            const photo = photosIn.get(hash);
            return photo && { format: photo.format, bytes: await bytesOf(photoName(hash, photo.format)) };
          },
        }
      : {
          all: async () => (await lying.all()).filter(({ hash }) => photosIn.has(hash)),
          open: lying.open,
        },
  };
}

/** @throws BadInput  entries that do not stand in order, or one id twice */
function orderly<E extends Entry | KitEntry>(name: string, entries: readonly E[]): readonly E[] {
  const ids = new Set<string>();
  entries.forEach((entry, k) => {
    const wrong = entry.seq === k + 1 ? (ids.has(entry.id) ? 'id' : undefined) : 'seq';
    if (wrong)
      throw new BadInput([
        {
          path: `${name} entries[${k}].${wrong}`,
          found: JSON.stringify(entry[wrong as 'id']),
          expected: 'entries in order, without gaps, each id once',
        },
      ]);
    ids.add(entry.id);
  });
  return entries;
}
