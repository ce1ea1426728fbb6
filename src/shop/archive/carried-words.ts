import { counted } from '../phrase.ts';

/** A job's photos as they lie in the workshop. */
export interface PhotosHere {
  /** Those that are here, in the order in which the ledger names them. */
  readonly photos: readonly { readonly hash: string; readonly bytes: number }[];
  /** Sum of their lengths. */
  readonly bytes: number;
  /** Named in the ledger and not here: the job came without them. */
  readonly missing: readonly string[];
}

/** What became of the photos of a job that was brought in. */
export interface PhotosTaken {
  /** Put into the workshop now. */
  readonly taken: number;
  /** Here already, byte for byte. */
  readonly here: number;
  /** Named in the ledger, and neither in the archive nor here. */
  readonly missing: readonly string[];
}

/** "12 photos taken in, 3 were here already; 1 is missing: ab12…". Nothing where the job has none. */
export function photosTakenWords({ taken, here, missing }: PhotosTaken): string {
  const said = [
    taken ? `${counted(taken, 'photo')} taken in` : '',
    here ? `${here === 1 ? '1 photo was' : `${here} photos were`} here already` : '',
    missing.length ? missingWords(missing) : '',
  ];
  return said.filter(Boolean).join('; ');
}

/** "2 photos are not in the file and not here: ab12cd34…, 99ffee00…". */
export const missingWords = (missing: readonly string[]): string =>
  `${missing.length === 1 ? '1 photo is' : `${missing.length} photos are`} neither in the file nor here: ${missing
    .slice(0, 6)
    .map((hash) => `${hash.slice(0, 12)}…`)
    .join(', ')}${missing.length > 6 ? ' and others' : ''}`;

/** "48 MB", "0.4 MB": decimal megabytes. */
export const megabytes = (bytes: number): string => {
  const mb = bytes / 1e6;
  return `${mb < 10 ? mb.toFixed(1) : String(Math.round(mb))}\u00a0MB`;
};

/** "Export with its 12 photos, 48 MB". */
export const exportWords = ({ photos, bytes, missing }: PhotosHere): string =>
  `Export with its ${missing.length ? `${photos.length} photos that are here` : counted(photos.length, 'photo')}, ${megabytes(bytes)}`;
