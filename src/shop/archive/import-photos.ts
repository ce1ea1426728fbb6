import { importQuery, type JobFile, jobFile } from '../../contract/job-file.ts';
import { BadInput, type Issue, parsedJson } from '../../contract/refusal.ts';
import { importJob } from '../keep-job.ts';
import type { PhotoFormat } from '../print/photo.ts';
import type { PhotoStore } from '../print/photo-store.ts';
import type { Kept, Store } from '../store.ts';
import { type ArchiveFile, archiveLimits, hashNamed, jobName, photoPath, photosNamed } from './archive.ts';
import type { PhotosTaken } from './carried-words.ts';

export interface JobTaken {
  readonly id: string;
  readonly kept: Kept;
  readonly entries: number;
  readonly photos: PhotosTaken;
}

interface PhotoIn {
  readonly hash: string;
  readonly file: ArchiveFile;
  readonly format: PhotoFormat;
}

const refused = (path: string, found: string, expected: string): Issue => ({ path, found, expected });

/**
 * Brings a job in with its photos. All is looked through before anything is kept, one photo in memory at a time; photos are kept
 * first, so that a job is never in the workshop without a photo that its archive held.
 *
 * @param files  what the archive holds
 * @param as     another id for the job
 * @param stop   whoever sends it wants it no longer: heard before each photo and before the job, which is then not in the workshop
 * @throws what `stop` says; BadInput  naming the job's entry, or each photo that is not what its name says, is too large, or that no entry names
 */
export async function takeWithPhotos(
  store: Store,
  photos: PhotoStore,
  files: readonly ArchiveFile[],
  as?: string,
  stop?: AbortSignal,
): Promise<JobTaken> {
  const file = await jobIn(files);
  const { as: id = file.id } = importQuery(as === undefined ? {} : { as });
  const named = photosNamed(file.entries);
  const whole = await lookThrough(photos, files, new Set(named), stop);
  const entries = file.entries.length;
  const none = { taken: 0, here: 0, missing: [] };
  if (await standsInTheWay(store, id, file)) return { id, kept: { kind: 'conflict' }, entries, photos: none };
  let [taken, here] = [0, 0];
  for (const one of whole) {
    stop?.throwIfAborted();
    const { again } = await photos.keep({ bytes: await one.file.bytes(), format: one.format });
    if (again) here++;
    else taken++;
  }
  const inArchive = new Set(whole.map(({ hash }) => hash));
  const missing: string[] = [];
  for (const hash of named) {
    if (inArchive.has(hash)) continue;
    if (await photos.about(hash)) here++;
    else missing.push(hash);
  }
  stop?.throwIfAborted();
  return {
    id,
    kept: await importJob(store, { ...file, id }),
    entries,
    photos: { taken, here, missing },
  };
}

/** The job's own file. @throws BadInput */
async function jobIn(files: readonly ArchiveFile[]): Promise<JobFile> {
  const one = files.find(({ name }) => name === jobName);
  if (!one)
    throw new BadInput([refused('file', `an archive without ${jobName}`, 'a job exported with its photos')]);
  if (one.size > archiveLimits.job_bytes)
    throw new BadInput([refused(jobName, `${one.size} bytes`, `at most ${archiveLimits.job_bytes} bytes`)]);
  try {
    return jobFile(parsedJson(new TextDecoder().decode(await one.bytes())));
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    throw new BadInput(
      failure.issues.map((issue) => ({
        ...issue,
        path: issue.path === '' || issue.path === jobName ? jobName : `${jobName} ${issue.path}`,
      })),
    );
  }
}

/** Every photo read once and held to its name; what is wrong with any of them is said at once. @throws BadInput */
async function lookThrough(
  photos: PhotoStore,
  files: readonly ArchiveFile[],
  named: ReadonlySet<string>,
  stop?: AbortSignal,
): Promise<PhotoIn[]> {
  const whole: PhotoIn[] = [];
  const issues: Issue[] = [];
  const seen = new Set<string>();
  for (const file of files) {
    if (file.name === jobName || file.name === 'photos/') continue;
    stop?.throwIfAborted();
    const hash = hashNamed(file.name);
    const issue =
      hash === undefined
        ? refused(
            shortName(file.name),
            'a file of another name',
            `${jobName} and photos/SHA256.jpeg and the like alone`,
          )
        : await wrongWith(photos, file, hash, named, seen);
    if (issue && 'format' in issue) whole.push({ hash: hash!, file, format: issue.format });
    else if (issue) issues.push(issue);
  }
  if (issues.length) throw new BadInput(issues.slice(0, 50));
  return whole;
}

const shortName = (name: string): string => JSON.stringify(name.slice(0, 80));

async function wrongWith(
  photos: PhotoStore,
  file: ArchiveFile,
  hash: string,
  named: ReadonlySet<string>,
  seen: Set<string>,
): Promise<Issue | { readonly format: PhotoFormat }> {
  const path = photoPath(hash);
  if (!named.has(hash)) return refused(path, 'a photo that no entry names', 'only photos of this job');
  if (seen.has(hash)) return refused(path, 'the photo twice', 'each photo once');
  seen.add(hash);
  if (file.size > archiveLimits.photo_bytes)
    return refused(path, `${file.size} bytes`, `at most ${archiveLimits.photo_bytes} bytes`);
  let bytes: Uint8Array;
  try {
    bytes = await file.bytes();
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues[0]!;
    throw failure;
  }
  const is = await photos.nameOf(bytes);
  if (is.hash !== hash)
    return refused(
      path,
      `bytes whose SHA-256 is ${is.hash}`,
      'the bytes that its name says: this photo was changed or damaged',
    );
  if (is.format === undefined)
    return refused(
      path,
      'something that does not begin as a picture does',
      'a JPEG, PNG, WebP, TIFF or HEIF photo',
    );
  return { format: is.format };
}

/** A job of this id with other entries in these places: nothing of the archive is to be kept. */
async function standsInTheWay(store: Store, id: string, file: JobFile): Promise<boolean> {
  const before = (await store.entries(id)) ?? [];
  return before.some((entry, k) => file.entries[k] !== undefined && file.entries[k].id !== entry.id);
}
