import { createHash, randomBytes } from 'node:crypto';
import { access, open, readdir, readFile, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { photoFormats } from '../../shop/print/photo.ts';
import type { PhotoLine, PhotoStore, StoredPhoto } from '../../shop/print/photo-store.ts';
import { Fault } from '../../shop/store.ts';
import { makeFolder } from '../file/make-folder.ts';
import { worded } from '../store/sqlite-faults.ts';
import { isHash, nameOf } from './name.ts';

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** So much of a photo is on its way to the disk at a time: an entry that comes meanwhile waits for this and not for the whole of it. */
const piece_bytes = 512 * 1024;

/**
 * Photos as files `ab/abcd….jpeg` of a folder. A file is written beside its place, brought to the disk and only then moved
 * there, so that one under its own name is whole whatever happens.
 */
export function photoFolder(folder: string): PhotoStore {
  const place = (hash: string) => join(folder, hash.slice(0, 2));

  async function found(hash: string): Promise<{ file: string; format: StoredPhoto['format'] } | undefined> {
    for (const format of photoFormats) {
      const file = join(place(hash), `${hash}.${format}`);
      const there = await access(file).then(
        () => true,
        () => false,
      );
      if (there) return { file, format };
    }
    return undefined;
  }

  return {
    keep: async ({ bytes, format }) => {
      const hash = hashOf(bytes);
      const before = await found(hash);
      if (before && hashOf(await readFile(before.file)) === hash) return { hash, again: true };
      const file = join(place(hash), `${hash}.${format}`);
      const beside = `${file}.${randomBytes(4).toString('hex')}.part`;
      try {
        makeFolder(place(hash));
        const handle = await open(beside, 'wx');
        try {
          for (let from = 0; from < bytes.length; from += piece_bytes) {
            await handle.writeFile(bytes.subarray(from, from + piece_bytes));
            await handle.datasync();
          }
          await handle.sync();
        } finally {
          await handle.close();
        }
        await rename(beside, file);
        await syncFolder(place(hash));
      } catch (failure) {
        await unlink(beside).catch(() => undefined);
        throw worded(failure, file);
      }
      return { hash, again: false };
    },
    open: async (hash) => {
      const there = isHash(hash) ? await found(hash) : undefined;
      if (!there) return undefined;
      const bytes = await readFile(there.file);
      if (hashOf(bytes) !== hash)
        throw new Fault(
          'damaged',
          `${there.file} is no longer the photo that was kept; send the photo again if you still have it`,
        );
      return { bytes, format: there.format };
    },
    about: async (hash) => {
      const there = isHash(hash) ? await found(hash) : undefined;
      return there && { format: there.format, bytes: (await stat(there.file)).size };
    },
    all: async () => {
      const lines: PhotoLine[] = [];
      for (const drawer of (await listed(folder)).filter((name) => /^[0-9a-f]{2}$/.test(name)))
        for (const name of await listed(join(folder, drawer))) {
          const [hash = '', ending = ''] = name.split('.');
          const format = photoFormats.find((one) => one === ending);
          if (!format || name !== `${hash}.${format}` || !isHash(hash) || !hash.startsWith(drawer)) continue;
          lines.push({ hash, format, bytes: (await stat(join(folder, drawer, name))).size });
        }
      return lines;
    },
    nameOf,
  };
}

/** Names in a folder, in order; none where there is no such folder yet. */
async function listed(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (failure) {
    if ((failure as { code?: string }).code === 'ENOENT') return [];
    throw failure;
  }
}

/** The new name itself is durable only once its folder is; some systems cannot do that, and need not. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
