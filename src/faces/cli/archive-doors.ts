import type { Archives } from '../../shop/archive/archive.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';

/** What jobs with photos need of the world; tests hand them their own. */
export interface ArchiveDoors extends Pick<Archives, 'packed' | 'open'> {
  readonly photos: () => Promise<PhotoStore>;
  /** Whether a file begins as an archive does; `-`, standard input, does not count as one. */
  readonly isArchive: (file: string) => Promise<boolean>;
  /** Writes a file whole or not at all, piece by piece. */
  readonly writePieces: (file: string, pieces: AsyncIterable<Uint8Array>) => Promise<void>;
}
