import { existsSync } from 'node:fs';
import { copyFile, mkdtemp, readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { BadInput } from '../../contract/refusal.ts';
import { type BackupRecord, backupRecord } from '../../shop/keeping/backup.ts';
import { type Carried, carryWorkshop } from '../../shop/keeping/carry.ts';
import { archivedWorkshop } from '../../shop/keeping/workshop-archive.ts';
import { differences, type Readable, type WorkshopSum } from '../../shop/keeping/workshop-sum.ts';
import { Fault } from '../../shop/store.ts';
import { isZip, openZip } from '../archive/zip-read.ts';
import { openSqlite } from '../store/sqlite.ts';
import { forceToDisk } from '../store/sqlite-copy.ts';
import { worded } from '../store/sqlite-faults.ts';
import { type OpenWorkshop, openWorkshop } from '../workshop/open-workshop.ts';
import { placeAt, type WorkshopPlace } from '../workshop/place.ts';
import { backupPhotos, fileHash } from './backup-folder.ts';

export interface Restored extends Carried {
  /** Where what was there before lies now. */
  readonly aside?: string;
}

interface OpenBackup {
  readonly from: Readable;
  /** What it must hold, by its own record or list. */
  readonly should: WorkshopSum | undefined;
  readonly close: () => Promise<void>;
}

/**
 * Brings a workshop back from a backup or from an archive of a whole workshop, and holds all that arrived to the hashes that were
 * taken when it was made. In a file: the whole is made ready beside and put in place in one step. In a database: it must be empty,
 * or hold nothing but a beginning of the same.
 *
 * @param replace  what is in the file now is set aside under a name of its own, not written over
 * @throws BadInput  the target holds something else
 * @throws Fault     the backup is damaged, or a server has the workshop open
 */
export async function restoreWorkshop(
  file: string,
  place: WorkshopPlace,
  replace: boolean,
): Promise<Restored> {
  if (replace && place.kind === 'PostgreSQL')
    throw new Fault(
      'busy',
      'a database is not replaced: make a new one (createdb), name it in DATABASE_URL, and restore into that',
    );
  const backup = await openBackup(file, place.folder);
  try {
    const fresh = place.kind === 'SQLite' && (replace || !existsSync(place.at));
    return fresh ? await putInPlace(backup, place) : await fill(backup, place);
  } finally {
    await backup.close();
  }
}

async function fill(backup: OpenBackup, place: WorkshopPlace): Promise<Restored> {
  const workshop = await openWorkshop(place);
  try {
    return await carried(backup, workshop, 'own');
  } finally {
    await workshop.close();
  }
}

async function carried(
  { from, should }: OpenBackup,
  to: Pick<OpenWorkshop, 'store' | 'photos'>,
  shelf: 'own' | 'shared',
): Promise<Carried> {
  const done = await carryWorkshop(from, to, shelf);
  const wrong = should ? differences({ ...should, photos: [] }, done.sum) : [];
  if (wrong.length > 0)
    throw new Fault(
      'damaged',
      `the backup does not hold what its record says: ${wrong.slice(0, 5).join('; ')}`,
    );
  return done;
}

async function putInPlace(backup: OpenBackup, place: WorkshopPlace): Promise<Restored> {
  const fresh = `${place.at}.restoring-${process.pid}`;
  try {
    const workshop = await openWorkshop({ ...placeAt(fresh, place.folder), photos: place.photos });
    const done = await carried(backup, workshop, 'shared').finally(() => workshop.close());
    const aside = existsSync(place.at) ? await setAside(place.at) : undefined;
    forceToDisk(fresh);
    await rename(fresh, place.at);
    forceToDisk(dirname(place.at));
    return { ...done, ...(aside === undefined ? {} : { aside }) };
  } catch (failure) {
    for (const ending of endings) await rm(`${fresh}${ending}`, { force: true });
    throw worded(failure, place.at);
  }
}

const endings = ['', '-wal', '-shm'] as const;

/** Gives a file that nobody has open another name. @throws Fault 'busy' */
async function setAside(file: string): Promise<string> {
  aloneWith(file);
  let aside = `${file}.aside`;
  for (let n = 2; existsSync(aside); n++) aside = `${file}.aside-${n}`;
  for (const ending of endings)
    if (existsSync(`${file}${ending}`)) await rename(`${file}${ending}`, `${aside}${ending}`);
  return aside;
}

/** How long another program may take to let the file go, ms. */
const patience_ms = 1_000;

/**
 * SQLite leaves the write-ahead log only for whoever has the file alone, and takes what is in the log into the file. A file that is
 * damaged cannot be asked, and is no use to another program either.
 * @throws Fault 'busy'
 */
function aloneWith(file: string): void {
  const busy = new Fault(
    'busy',
    `${file} is open in another program: stop the server first (Ctrl+C), then send the same again; nothing was changed`,
  );
  try {
    const database = new Database(file, { timeout: patience_ms });
    try {
      if (database.pragma('journal_mode = DELETE', { simple: true }) !== 'delete') throw busy;
    } finally {
      database.close();
    }
  } catch (failure) {
    if (failure === busy) throw busy;
    const { code = '' } = failure as { code?: string };
    if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) throw busy;
    if (!code.startsWith('SQLITE_')) throw failure;
  }
}

async function recordOf(file: string): Promise<BackupRecord | undefined> {
  const name = file.replace(/\.\w+$/, '.json');
  if (name === file || !existsSync(name)) return undefined;
  try {
    return backupRecord(await readFile(name, 'utf8'));
  } catch (failure) {
    if (failure instanceof BadInput) return undefined;
    throw failure;
  }
}

/** @param folder  where a copy may lie while it is read: the backup itself is not touched */
async function openBackup(file: string, folder: string): Promise<OpenBackup> {
  const record = await recordOf(file);
  if (record && (await fileHash(file)) !== record.sha256)
    throw new Fault(
      'damaged',
      `${file} is not the file that was backed up: its SHA-256 is another. Take an older backup; nothing was changed`,
    );
  const photos = backupPhotos(dirname(file));
  if (await isZip(file)) {
    const { files, close } = await openZip(file);
    const from = await archivedWorkshop(files, photos);
    return { from, should: from.sum, close };
  }
  const held = await mkdtemp(join(existsSync(folder) ? folder : dirname(file), '.restoring-'));
  const letGo = () => rm(held, { recursive: true, force: true });
  try {
    const copy = join(held, 'workshop.db');
    await copyFile(file, copy);
    const store = await openSqlite(copy);
    return {
      from: { store, photos },
      should: record?.sum,
      close: async () => {
        await store.close();
        await letGo();
      },
    };
  } catch (failure) {
    await letGo();
    throw failure instanceof Fault ? failure : worded(failure, file);
  }
}
