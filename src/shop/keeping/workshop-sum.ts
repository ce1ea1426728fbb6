import { createHash } from 'node:crypto';
import { jobFileText } from '../../contract/job-file.ts';
import type { Entry } from '../../core/ledger/entry.ts';
import type { KitEntry } from '../../core/ledger/kit-ledger.ts';
import { photosNamed } from '../archive/archive.ts';
import { counted } from '../phrase.ts';
import type { PhotoLine, PhotoStore } from '../print/photo-store.ts';
import type { Store } from '../store.ts';

/** A workshop that is read: one that is kept, a backup, or an archive. */
export interface Readable {
  readonly store: Pick<Store, 'jobs' | 'entries' | 'kit'> | ReadLedgers;
  readonly photos: Pick<PhotoStore, 'all' | 'open'>;
}

/** The part of a store that says which jobs there are, for what has no more than that. */
export interface ReadLedgers extends Pick<Store, 'entries' | 'kit'> {
  readonly jobs: () => Promise<readonly { readonly id: string }[]>;
}

/** What a workshop holds, by count and hash. */
export interface WorkshopSum {
  /** In the order in which they were made; `sha256` is that of the job's file (docs/job-file.md). */
  readonly jobs: readonly { readonly id: string; readonly entries: number; readonly sha256: string }[];
  readonly kit: { readonly entries: number; readonly sha256: string };
  /** By their hash, in order. */
  readonly photos: readonly PhotoLine[];
  /** Photos that an entry names and that are not kept here. */
  readonly missing: readonly string[];
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** The text of a job's own file: its hash is the job's. */
export const ledgerText = (id: string, entries: readonly Entry[]): string =>
  jobFileText({ format: 'waywright-job', version: 1, id, entries });

/** The text of the kit's own file. */
export const kitText = (entries: readonly KitEntry[]): string =>
  `${JSON.stringify({ format: 'waywright-kit', version: 1, entries }, null, 1)}\n`;

/**
 * Counts and hashes all that a workshop holds, one job in memory at a time. Every entry is read and held to its schema; photos are
 * listed, not read.
 * @throws Fault  'damaged', naming the entry
 */
export async function workshopSum({ store, photos }: Readable): Promise<WorkshopSum> {
  const jobs: { id: string; entries: number; sha256: string }[] = [];
  const named = new Set<string>();
  for (const { id } of await store.jobs()) {
    const entries = (await store.entries(id)) ?? [];
    for (const hash of photosNamed(entries)) named.add(hash);
    jobs.push({ id, entries: entries.length, sha256: sha256(ledgerText(id, entries)) });
  }
  const kit = await store.kit();
  const kept = await photos.all();
  const here = new Set(kept.map(({ hash }) => hash));
  return {
    jobs,
    kit: { entries: kit.length, sha256: sha256(kitText(kit)) },
    photos: [...kept].sort((a, b) => (a.hash < b.hash ? -1 : 1)),
    missing: [...named].filter((hash) => !here.has(hash)).sort(),
  };
}

export const entriesIn = (sum: WorkshopSum): number =>
  sum.jobs.reduce((all, job) => all + job.entries, 0) + sum.kit.entries;

/** One hash for all the ledgers of a workshop: jobs in order, then the kit. */
export const ledgersHash = ({ jobs, kit }: WorkshopSum): string =>
  sha256([...jobs.map((job) => `${job.id} ${job.sha256}`), kit.sha256].join('\n'));

/** What a workshop holds, in words. */
export function sumWords(sum: WorkshopSum): string {
  const bytes = sum.photos.reduce((all, photo) => all + photo.bytes, 0);
  return `${counted(sum.jobs.length, 'job')}, ${counted(entriesIn(sum), 'entry', 'entries')}, ${counted(sum.photos.length, 'photo')} (${(bytes / 1e6).toFixed(1)} MB)`;
}

/** Where a workshop is not what it should be, in words; none when they are the same. Order of jobs counts. */
export function differences(should: WorkshopSum, is: WorkshopSum): string[] {
  const found: string[] = [];
  const there = new Map(is.jobs.map((job) => [job.id, job]));
  for (const job of should.jobs) {
    const one = there.get(job.id);
    there.delete(job.id);
    if (!one) found.push(`job ${job.id} is lacking`);
    else if (one.sha256 !== job.sha256)
      found.push(
        `job ${job.id} has ${counted(one.entries, 'entry', 'entries')}, SHA-256 ${one.sha256.slice(0, 12)}; expected ${job.entries}, ${job.sha256.slice(0, 12)}`,
      );
  }
  for (const id of there.keys()) found.push(`job ${id} is more than expected`);
  if (found.length === 0 && should.jobs.some((job, k) => is.jobs[k]!.id !== job.id))
    found.push('the jobs stand in another order');
  if (should.kit.sha256 !== is.kit.sha256)
    found.push(
      `the kit has ${counted(is.kit.entries, 'entry', 'entries')}; expected ${should.kit.entries}, the same`,
    );
  const photos = new Map(is.photos.map((photo) => [photo.hash, photo]));
  for (const photo of should.photos)
    if (photos.get(photo.hash)?.bytes !== photo.bytes) found.push(`photo ${photo.hash} is lacking`);
  return found;
}
