import { BadInput, type Issue } from '../../contract/refusal.ts';
import { counted } from '../phrase.ts';
import type { PhotoStore } from '../print/photo-store.ts';
import { Fault, type Store } from '../store.ts';
import { differences, type Readable, type WorkshopSum, workshopSum } from './workshop-sum.ts';

/** A workshop that is written into. */
export interface Writable {
  readonly store: Store;
  readonly photos: PhotoStore;
}

export interface Carried {
  readonly sum: WorkshopSum;
  /** Photos whose bytes are no longer those that were kept: they stay behind. */
  readonly damaged: readonly string[];
}

const occupied = (found: string): Issue => ({
  path: 'to',
  found,
  expected: 'an empty place, or one that a carrying cut short has left',
});

/**
 * Carries a whole workshop to another place, and holds what arrived to what was sent, by count and hash. The place is to be empty;
 * one that holds nothing but a beginning of the same is carried on with, so that being cut short costs nothing. Nothing at the
 * source is changed, nothing at the target is written over.
 *
 * @param shelf  'shared' where the target's photos may be more: those of what was set aside lie among them
 * @throws BadInput  the target holds something else
 * @throws Fault     'damaged': what arrived is not what was sent; 'busy': the source was written to meanwhile
 */
export async function carryWorkshop(
  from: Readable,
  to: Writable,
  shelf: 'own' | 'shared' = 'own',
): Promise<Carried> {
  await mayBeFilled(from, to, shelf);
  const before = await workshopSum(from);
  // Photos first: a job must never be there without its photos.
  const damaged: string[] = [];
  for (const { hash, bytes } of before.photos) {
    if ((await to.photos.about(hash))?.bytes === bytes) continue;
    const photo = await wholeOf(from, to.photos, hash);
    if (photo) await to.photos.keep(photo);
    else damaged.push(hash);
  }
  for (const { id } of before.jobs) {
    const kept = await to.store.make(id, (await from.store.entries(id)) ?? []);
    if (kept.kind !== 'kept') throw new BadInput([occupied(`another job ${JSON.stringify(id)}`)]);
  }
  const kit = await from.store.kit();
  if (kit.length > 0) {
    const kept = await to.store.keepKit(kit.map(({ seq: _seq, ...entry }) => entry));
    if (kept.kind !== 'kept') throw new BadInput([occupied('another kit')]);
  }
  const arrived = await workshopSum(to);
  const readable = { ...before, photos: before.photos.filter(({ hash }) => !damaged.includes(hash)) };
  const wrong = differences(readable, arrived);
  if (wrong.length > 0) {
    if (differences(before, await workshopSum(from)).length > 0)
      throw new Fault(
        'busy',
        'the workshop was written to while it was carried; nothing is lost: stop the server and send the same again',
      );
    throw new Fault(
      'damaged',
      `what arrived is not what was sent: ${wrong.slice(0, 5).join('; ')}; keep the original and do not use the copy`,
    );
  }
  // Each photo read where it is now, and held to its hash.
  for (const { hash } of readable.photos)
    if (!(await to.photos.open(hash))) throw new Fault('damaged', `photo ${hash} did not arrive`);
  return { sum: arrived, damaged };
}

/** A photo whose bytes are those of its name, or undefined. */
async function wholeOf({ photos }: Readable, { nameOf }: PhotoStore, hash: string) {
  try {
    const photo = await photos.open(hash);
    return photo && (await nameOf(photo.bytes)).hash === hash ? photo : undefined;
  } catch (failure) {
    if (failure instanceof BadInput || (failure instanceof Fault && failure.code === 'damaged'))
      return undefined;
    throw failure;
  }
}

/** Whether all that is there is a beginning of what is to come. @throws BadInput naming what is not */
async function mayBeFilled(
  from: Readable,
  { store, photos }: Writable,
  shelf: 'own' | 'shared',
): Promise<void> {
  const issues: Issue[] = [];
  const begins = (there: readonly unknown[], comes: readonly unknown[]) =>
    there.length <= comes.length &&
    there.every((entry, k) => JSON.stringify(entry) === JSON.stringify(comes[k]));
  for (const { id, entries } of await store.jobs())
    if (!begins((await store.entries(id)) ?? [], (await from.store.entries(id)) ?? []))
      issues.push(
        occupied(`job ${JSON.stringify(id)} with ${counted(entries, 'entry', 'entries')} of its own`),
      );
  if (!begins(await store.kit(), await from.store.kit())) issues.push(occupied('a kit of its own'));
  const coming = new Set((await from.photos.all()).map(({ hash }) => hash));
  const strange = (await photos.all()).filter(({ hash }) => !coming.has(hash)).length;
  if (strange > 0 && shelf === 'own') issues.push(occupied(`${counted(strange, 'photo')} of its own`));
  if (issues.length > 0) throw new BadInput(issues.slice(0, 20));
}
