import { createWriteStream, existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import Database from 'better-sqlite3';
import { BadInput } from '../../contract/refusal.ts';
import { photosNamed } from '../../shop/archive/archive.ts';
import type { BackupPlan } from '../../shop/keeping/backup.ts';
import { type Carried, carryWorkshop } from '../../shop/keeping/carry.ts';
import { workshopParts } from '../../shop/keeping/workshop-archive.ts';
import { type WorkshopSum, workshopSum } from '../../shop/keeping/workshop-sum.ts';
import { Fault } from '../../shop/store.ts';
import { zipOf } from '../archive/zip-write.ts';
import { besideFirst } from '../file/beside-first.ts';
import { forceToDisk } from '../store/sqlite-copy.ts';
import { worded } from '../store/sqlite-faults.ts';
import { type OpenWorkshop, openWorkshop } from '../workshop/open-workshop.ts';
import { placeAt, type WorkshopPlace } from '../workshop/place.ts';
import { backupsIn } from './backup-folder.ts';
import { wrongWith } from './sqlite-backup.ts';

/** Opens a workshop for as long as the work takes. */
export async function withWorkshop<T>(
  place: WorkshopPlace,
  work: (workshop: OpenWorkshop) => Promise<T>,
): Promise<T> {
  const workshop = await openWorkshop(place);
  try {
    return await work(workshop);
  } finally {
    await workshop.close();
  }
}

/**
 * Carries a workshop to a file or a database and holds what arrived to what was sent. What it was carried from stays as it is.
 * @throws BadInput  the target holds something else
 * @throws Fault     both are the same, or one cannot be opened
 */
export async function moveWorkshop(
  from: WorkshopPlace,
  to: string,
): Promise<Carried & { readonly words: string }> {
  const target = placeAt(to, from.folder);
  if (target.at === from.at) throw new Fault('busy', `${target.words}: the workshop is there already`);
  return withWorkshop(from, (source) =>
    withWorkshop(target, async (goal) => ({
      ...(await carryWorkshop(source, goal)),
      words: target.words,
    })),
  );
}

/** Writes a whole workshop into one open archive, whole or not at all. @throws BadInput  more than one archive may hold */
export const exportWorkshop = (place: WorkshopPlace, file: string): Promise<WorkshopSum> =>
  withWorkshop(place, async (workshop) => {
    try {
      const sum = await workshopSum(workshop);
      await besideFirst(file, async (beside) => {
        await pipeline(zipOf(workshopParts(workshop, sum)), createWriteStream(beside));
        forceToDisk(beside);
      });
      return sum;
    } catch (failure) {
      throw worded(failure, file);
    }
  });

export interface Checked {
  readonly sum: WorkshopSum;
  readonly damaged: readonly string[];
  /** Kept, and named by no entry: a phone was lost between its photo and its entry. */
  readonly unnamed: number;
}

/** Reads all that a workshop holds: the file, every entry, every photo. @throws Fault 'damaged' */
export async function checkWorkshop(place: WorkshopPlace): Promise<Checked> {
  fileIsWhole(place, 'integrity_check');
  return withWorkshop(place, async (workshop) => {
    const sum = await workshopSum(workshop);
    const damaged: string[] = [];
    for (const { hash } of sum.photos)
      try {
        await workshop.photos.open(hash);
      } catch (failure) {
        if (!(failure instanceof Fault && failure.code === 'damaged')) throw failure;
        damaged.push(hash);
      }
    const named = new Set<string>();
    for (const { id } of sum.jobs)
      for (const hash of photosNamed((await workshop.store.entries(id)) ?? [])) named.add(hash);
    return { sum, damaged, unnamed: sum.photos.filter(({ hash }) => !named.has(hash)).length };
  });
}

/**
 * Looks a workshop's file through before it is used; one that is not there yet is whole, and a database looks after itself.
 * @throws Fault  'damaged'
 */
export function fileIsWhole(
  place: WorkshopPlace,
  check: 'integrity_check' | 'quick_check' = 'quick_check',
): void {
  if (place.kind !== 'SQLite' || !existsSync(place.at)) return;
  try {
    const database = new Database(place.at, { readonly: true });
    try {
      const told = wrongWith(database, check);
      if (told) throw new Fault('damaged', `${place.at} is damaged (${told}); it was left as it is: keep it`);
    } finally {
      database.close();
    }
  } catch (failure) {
    throw worded(failure, place.at);
  }
}

/** What to do about a damaged workshop: the newest backup, and the words that bring it back. */
export async function wayBack(folder: string): Promise<string> {
  const [newest] = await backupsIn(folder).catch(() => []);
  if (!newest)
    return `There is no backup in ${folder}. If there is one elsewhere: waywright restore FILE --replace`;
  return `The newest backup is of ${newest.at}. To go back to it, what is damaged being set aside and not lost:\n  waywright restore ${join(folder, newest.file)} --replace`;
}

export interface BackupSettings extends BackupPlan {
  readonly folder: string;
  readonly on: boolean;
}

/**
 * `WAYWRIGHT_BACKUP`: the folder, or "off"; backups/ beside the workshop when left out. `WAYWRIGHT_BACKUP_HOURS`: how often, 24.
 * `WAYWRIGHT_BACKUP_KEEP`: how many stay, 14.
 * @throws BadInput  naming what is not a number
 */
export function backupSettings(place: WorkshopPlace, env = process.env): BackupSettings {
  const number = (name: string, usual: number, least: number): number => {
    const typed = env[name];
    if (typed === undefined || typed === '') return usual;
    const value = Number(typed);
    if (!(value >= least && value <= 100_000))
      throw new BadInput([
        { path: name, found: JSON.stringify(typed), expected: `a number from ${least} to 100000` },
      ]);
    return value;
  };
  const named = env.WAYWRIGHT_BACKUP ?? '';
  return {
    on: named !== 'off',
    folder: named === '' || named === 'off' ? join(place.folder, 'backups') : resolve(named),
    every_h: number('WAYWRIGHT_BACKUP_HOURS', 24, 0.01),
    keep: Math.floor(number('WAYWRIGHT_BACKUP_KEEP', 14, 1)),
  };
}
