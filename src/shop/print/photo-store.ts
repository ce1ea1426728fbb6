import type { PhotoFormat } from './photo.ts';

export interface StoredPhoto {
  readonly bytes: Uint8Array;
  readonly format: PhotoFormat;
}

/** A photo without its bytes: its SHA-256, its kind, how many bytes it has. */
export interface PhotoLine {
  readonly hash: string;
  readonly format: PhotoFormat;
  readonly bytes: number;
}

/** Where photos are kept: as they were sent, each under the SHA-256 of its bytes, 64 hex figures. */
export interface PhotoStore {
  /** Answers once the photo is durable; `again`: it was there already. */
  readonly keep: (photo: StoredPhoto) => Promise<{ readonly hash: string; readonly again: boolean }>;
  /**
   * The photo, or undefined when there is none of this name.
   * @throws Fault  'damaged': its bytes are no longer those that were kept
   */
  readonly open: (hash: string) => Promise<StoredPhoto | undefined>;
  /** How long it is and of which kind, by its file alone: its bytes are not read. Undefined when there is none of this name. */
  readonly about: (
    hash: string,
  ) => Promise<{ readonly format: PhotoFormat; readonly bytes: number } | undefined>;
  /** The name these bytes would be kept under, and their kind by the first of them; nothing is kept. */
  readonly nameOf: (
    bytes: Uint8Array,
  ) => Promise<{ readonly hash: string; readonly format: PhotoFormat | undefined }>;
  /** Every photo that is kept, by its hash in order, whether an entry names it or not; its bytes are not read. */
  readonly all: () => Promise<readonly PhotoLine[]>;
}
