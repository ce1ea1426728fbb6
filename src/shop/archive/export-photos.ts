import { jobFileText } from '../../contract/job-file.ts';
import { BadInput, type Issue } from '../../contract/refusal.ts';
import { exportJob } from '../keep-job.ts';
import { counted } from '../phrase.ts';
import type { PhotoStore } from '../print/photo-store.ts';
import { Fault, type Store } from '../store.ts';
import { type ArchivePart, archiveLimits, jobName, photoName, photoPath, photosNamed } from './archive.ts';
import { megabytes, type PhotosHere } from './carried-words.ts';

/** A job's photos as the folder lists them, without reading them; undefined when there is no such job. */
export async function photosHere(
  store: Store,
  photos: PhotoStore,
  id: string,
): Promise<PhotosHere | undefined> {
  const entries = await store.entries(id);
  if (!entries) return undefined;
  const here: { hash: string; bytes: number }[] = [];
  const missing: string[] = [];
  for (const hash of photosNamed(entries)) {
    const found = await photos.about(hash);
    if (found) here.push({ hash, bytes: found.bytes });
    else missing.push(hash);
  }
  return { photos: here, bytes: here.reduce((sum, one) => sum + one.bytes, 0), missing };
}

/** A job with its photos, ready to be written one part after another. */
export interface JobWithPhotos {
  readonly entries: number;
  readonly photos: number;
  /** Photos that the ledger names and that are left out, since they are not here any more or no longer what was kept. */
  readonly left_out: readonly string[];
  readonly parts: readonly ArchivePart[];
}

/**
 * A job with its photos. Every photo is read and held to its hash before the first is handed out, one at a time.
 *
 * @param partial  leave out what is missing or damaged, rather than refuse
 * @param stop     whoever asked wants it no longer: heard before each photo
 * @returns        undefined when there is no such job
 * @throws what `stop` says; BadInput  naming each photo that is missing or damaged, or all of them where they are too large for one file
 */
export async function jobWithPhotos(
  store: Store,
  photos: PhotoStore,
  id: string,
  partial = false,
  stop?: AbortSignal,
): Promise<JobWithPhotos | undefined> {
  const file = await exportJob(store, id);
  if (!file) return undefined;
  const parts: ArchivePart[] = [];
  const issues: Issue[] = [];
  const leftOut: string[] = [];
  let bytes = 0;
  for (const hash of photosNamed(file.entries)) {
    stop?.throwIfAborted();
    const photo = await openWhole(photos, hash);
    if (typeof photo === 'string') {
      leftOut.push(hash);
      issues.push({ path: photoPath(hash), found: photo, expected: elseways });
      continue;
    }
    bytes += photo.bytes.length;
    parts.push({
      name: photoName(hash, photo.format),
      bytes: async () => {
        const again = await photos.open(hash);
        if (!again) throw new Fault('damaged', `the photo ${hash} went away while it was written`);
        return again.bytes;
      },
    });
  }
  if (issues.length && !partial) throw new BadInput(issues);
  const most = archiveLimits.bytes - 2 * archiveLimits.job_bytes;
  if (bytes > most || parts.length >= archiveLimits.files)
    throw new BadInput([
      {
        path: 'photos',
        found: `${counted(parts.length, 'photo')}, ${megabytes(bytes)}`,
        expected: `at most ${archiveLimits.files - 1} photos and ${megabytes(most)} in one file; export the job without photos and copy the photos folder`,
      },
    ]);
  return {
    entries: file.entries.length,
    photos: parts.length,
    left_out: leftOut,
    parts: [{ name: jobName, bytes: async () => new TextEncoder().encode(jobFileText(file)) }, ...parts],
  };
}

const elseways = 'the photo as it was sent, or an export that leaves out what is not here';

/** The photo, or what is the matter with it. */
async function openWhole(photos: PhotoStore, hash: string) {
  try {
    return (await photos.open(hash)) ?? 'not in this workshop';
  } catch (failure) {
    if (failure instanceof Fault && failure.code === 'damaged') return 'no longer the bytes that were kept';
    throw failure;
  }
}
