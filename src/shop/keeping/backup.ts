import { z } from 'zod';
import { checked, parsedJson } from '../../contract/refusal.ts';
import { sumSchema } from './workshop-archive.ts';
import type { WorkshopSum } from './workshop-sum.ts';

/** What is known of a backup, kept beside it; written last, so that a backup with it is whole. */
export interface BackupRecord {
  readonly format: 'waywright-backup';
  readonly version: 1;
  /** One more than the last in its folder: clocks may be set back, this is not. */
  readonly number: number;
  /** ISO 8601, by the clock of the machine that made it. */
  readonly at: string;
  /** The program's version. */
  readonly program: string;
  readonly store: 'SQLite' | 'PostgreSQL';
  /** The file beside the record: a SQLite workshop, or an archive of the ledgers. */
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly sum: WorkshopSum;
  /** Photos that were damaged at their place and are not in the backup. */
  readonly damaged_photos: readonly string[];
}

const sha = z.string().regex(/^[0-9a-f]{64}$/);
const schema = z.strictObject({
  format: z.literal('waywright-backup'),
  version: z.literal(1),
  number: z.int().min(1),
  at: z.iso.datetime({ offset: true }),
  program: z.string(),
  store: z.enum(['SQLite', 'PostgreSQL']),
  file: z.string().regex(/^[0-9A-Za-z.-]+$/),
  bytes: z.int().min(0),
  sha256: sha,
  sum: sumSchema,
  damaged_photos: z.array(sha),
});

/** @throws BadInput */
export const backupRecord = (text: string): BackupRecord => checked(schema, parsedJson(text));

/** `000012-20311125T143200Z`: in the order of their names they stand in the order in which they were made. */
export const backupName = (number: number, at: string): string =>
  `${String(number).padStart(6, '0')}-${at.slice(0, 19).replace(/[-:]/g, '')}Z`;

/** When backups are made, and how many are kept. */
export interface BackupPlan {
  readonly every_h: number;
  readonly keep: number;
}

/**
 * How long until the next is due, ms; 0: now. One that lies in the future says that the clock was set back since: then one is
 * made at once, rather than none until the clock has caught up.
 */
export function dueIn_ms(last: string | undefined, now: string, { every_h }: BackupPlan): number {
  if (last === undefined) return 0;
  const since = Date.parse(now) - Date.parse(last);
  return since < 0 ? 0 : Math.max(0, every_h * 3_600_000 - since);
}

/** Those that are let go when the newest `keep` stay: by their numbers, never by the clock. */
export const tooMany = <B extends { readonly number: number }>(backups: readonly B[], keep: number): B[] =>
  [...backups].sort((a, b) => b.number - a.number).slice(keep);
