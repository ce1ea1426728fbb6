import type { Entry } from '../../core/ledger/entry.ts';
import { type PhotoFormat, photoFormats, photoLimits } from '../print/photo.ts';

/** One file of an archive: its name in it, its length, and its bytes when they are asked for. */
export interface ArchiveFile {
  readonly name: string;
  readonly size: number;
  /**
   * Unpacked; never more than `size` bytes.
   * @throws BadInput  naming the file: cut off, or not as long as the archive says
   */
  readonly bytes: () => Promise<Uint8Array>;
}

/** A file to be put into an archive, fetched when its turn comes, so that one at a time is in memory. */
export interface ArchivePart {
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array>;
}

export const archiveLimits = {
  /** The whole archive. ZIP without its 64-bit extension holds less than 4 GiB. */
  bytes: 4_000_000_000,
  /** The job's own file within it: years of entries. */
  job_bytes: 16 * 1024 * 1024,
  /** One photo. */
  photo_bytes: photoLimits.bytes,
  files: 10_000,
} as const;

/** The job's own file within the archive. */
export const jobName = 'job.json';

export const photoName = (hash: string, format: PhotoFormat): string => `photos/${hash}.${format}`;

/** `photos/ab12….jpeg` → the SHA-256 that it says its bytes have; undefined for any other name. */
export const hashNamed = (name: string): string | undefined =>
  new RegExp(`^photos/([0-9a-f]{64})\\.(?:${photoFormats.join('|')})$`).exec(name)?.[1];

/** Photos that a ledger names, by the SHA-256 of their bytes, in the order in which they were first named; undone ones too. */
export const photosNamed = (entries: readonly Entry[]): readonly string[] => [
  ...new Set(entries.flatMap((entry) => (entry.kind === 'print photographed' ? [entry.photo] : []))),
];

/** What a photo is called in a refusal: the beginning of its hash, as in its file's name. */
export const photoPath = (hash: string): string => `photos/${hash}`;

/** An archive on the disk, looked into by its directory. */
export interface OpenArchive {
  readonly files: readonly ArchiveFile[];
  readonly close: () => Promise<void>;
}

/** A sent archive that lies on the disk until it is let go. */
export interface HeldFile {
  readonly path: string;
  readonly letGo: () => Promise<void>;
}

/** How archives are made and opened. */
export interface Archives {
  /** Parts as one file, piece by piece. */
  readonly packed: (parts: readonly ArchivePart[]) => AsyncIterable<Uint8Array>;
  /** @throws BadInput  no whole archive */
  readonly open: (path: string) => Promise<OpenArchive>;
  /**
   * Lays what is sent on the disk without holding it in memory.
   * @throws BadInput  larger than an archive may be
   * @throws Fault     the disk is full
   */
  readonly hold: (stream: AsyncIterable<Uint8Array>) => Promise<HeldFile>;
}
