import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, readdir, readFile, rename, rm, stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { BadInput } from '../../contract/refusal.ts';
import { type BackupRecord, backupName, backupRecord, tooMany } from '../../shop/keeping/backup.ts';
import { workshopSum } from '../../shop/keeping/workshop-sum.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { Fault } from '../../shop/store.ts';
import { makeFolder } from '../file/make-folder.ts';
import { photoFolder } from '../photo/folder.ts';
import { forceToDisk } from '../store/sqlite-copy.ts';
import { worded } from '../store/sqlite-faults.ts';
import type { OpenWorkshop } from '../workshop/open-workshop.ts';
import { archiveCopy } from './archive-copy.ts';
import { sqliteCopy } from './sqlite-backup.ts';

export interface BackupAsked {
  /** Where backups are kept; made when it is not there. */
  readonly folder: string;
  /** How many stay; older ones are let go once the new one is whole. */
  readonly keep: number;
  /** ISO 8601. */
  readonly now: string;
  readonly program: string;
  /** Room that a folder's disk has left, bytes; the system is asked when left out. */
  readonly room?: (folder: string) => Promise<number>;
}

async function roomLeft(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
}

/** Photos of all backups, each once. */
export const backupPhotos = (folder: string): PhotoStore => photoFolder(join(folder, 'photos'));

/** Room that a backup leaves on its disk, so that it never takes from the workshop what an entry needs, bytes. */
const spare_bytes = 64_000_000;

/** Whole backups of a folder, newest first; a record that cannot be read counts as none. */
export async function backupsIn(folder: string): Promise<BackupRecord[]> {
  const records: BackupRecord[] = [];
  for (const name of await namesIn(folder)) {
    if (!/^\d{6,}-\w+\.json$/.test(name)) continue;
    try {
      const record = backupRecord(await readFile(join(folder, name), 'utf8'));
      if ((await stat(join(folder, record.file))).size === record.bytes) records.push(record);
    } catch (failure) {
      if (!(failure instanceof BadInput) && (failure as { code?: string }).code !== 'ENOENT') throw failure;
    }
  }
  return records.sort((a, b) => b.number - a.number);
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (failure) {
    if ((failure as { code?: string }).code === 'ENOENT') return [];
    throw failure;
  }
}

export async function fileHash(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of createReadStream(file)) hash.update(piece as Buffer);
  return hash.digest('hex');
}

/**
 * Makes a backup while the workshop is used: a copy of one moment, looked through and counted before it gets its name; photos are
 * copied once for all backups. Whatever fails, earlier backups stay as they are and nothing half stays.
 * @throws Fault  'disk full', 'read only', 'damaged'
 */
export async function makeBackup(workshop: OpenWorkshop, asked: BackupAsked): Promise<BackupRecord> {
  const { folder } = asked;
  let part: string | undefined;
  try {
    makeFolder(folder);
    const claimed = await claimNumber(folder);
    part = claimed.part;
    await hasRoom(workshop, folder, await (asked.room ?? roomLeft)(folder));
    // Ledgers before photos: photos are kept before the entries that name them, so none can be lacking.
    const inFile =
      workshop.place.kind === 'SQLite'
        ? await sqliteCopy(workshop.place.at, part)
        : await archiveCopy(workshop, part);
    const copies = backupPhotos(folder);
    const damaged = await copyPhotos(workshop.photos, copies);
    const sum = await workshopSum({ store: inFile, photos: copies }).finally(() => inFile.close());
    forceToDisk(part);
    const name = backupName(claimed.number, asked.now);
    const record: BackupRecord = {
      format: 'waywright-backup',
      version: 1,
      number: claimed.number,
      at: asked.now,
      program: asked.program,
      store: workshop.place.kind,
      file: `${name}${workshop.place.kind === 'SQLite' ? '.db' : '.zip'}`,
      bytes: (await stat(part)).size,
      sha256: await fileHash(part),
      sum,
      damaged_photos: damaged,
    };
    await rename(part, join(folder, record.file));
    await writeWhole(join(folder, `${name}.json`), `${JSON.stringify(record, null, 1)}\n`);
    forceToDisk(folder);
    await letGo(folder, asked.keep);
    return record;
  } catch (failure) {
    if (part) await letGoPart(part);
    throw worded(failure, folder);
  }
}

const letGoPart = async (part: string): Promise<void> => {
  for (const ending of ['', '-wal', '-shm', '-journal']) await rm(`${part}${ending}`, { force: true });
};

/** The next number, taken by making the file that is to bear it, so that two at once take two. */
async function claimNumber(folder: string): Promise<{ readonly number: number; readonly part: string }> {
  const numbers = (await namesIn(folder)).map((name) => Number(/^(\d{6,})[-.]/.exec(name)?.[1] ?? 0));
  for (let number = Math.max(0, ...numbers) + 1; ; number++) {
    const part = join(folder, `${String(number).padStart(6, '0')}.part`);
    try {
      await (await open(part, 'wx')).close();
      return { number, part };
    } catch (failure) {
      if ((failure as { code?: string }).code !== 'EEXIST') throw failure;
    }
  }
}

async function hasRoom({ store, photos }: OpenWorkshop, folder: string, room: number): Promise<void> {
  const there = new Set((await backupPhotos(folder).all()).map(({ hash }) => hash));
  const fresh = (await photos.all()).filter(({ hash }) => !there.has(hash));
  const { bytes } = await store.facts();
  const wanted = bytes + fresh.reduce((all, photo) => all + photo.bytes, 0) + spare_bytes;
  if (room < wanted)
    throw new Fault(
      'disk full',
      `no backup was made: the disk of ${folder} has ${Math.floor(room / 1e6)} MB left, ${Math.ceil(wanted / 1e6)} MB are wanted; make room, or name another disk with --to or WAYWRIGHT_BACKUP`,
    );
}

/** Copies what is not there yet; answers with those whose bytes are no longer what was kept. */
async function copyPhotos(from: PhotoStore, to: PhotoStore): Promise<string[]> {
  const damaged: string[] = [];
  for (const { hash, bytes } of await from.all()) {
    if ((await to.about(hash))?.bytes === bytes) continue;
    try {
      const photo = await from.open(hash);
      if (photo) await to.keep(photo);
    } catch (failure) {
      if (!(failure instanceof Fault && failure.code === 'damaged')) throw failure;
      damaged.push(hash);
    }
  }
  return damaged;
}

async function writeWhole(file: string, text: string): Promise<void> {
  const handle = await open(`${file}.part`, 'w');
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await rename(`${file}.part`, file);
}

/** The record goes first: without it, a file is no backup any more. */
async function letGo(folder: string, keep: number): Promise<void> {
  for (const { file } of tooMany(await backupsIn(folder), Math.max(1, keep))) {
    await rm(join(folder, file.replace(/\.\w+$/, '.json')), { force: true });
    await rm(join(folder, file), { force: true });
  }
}
