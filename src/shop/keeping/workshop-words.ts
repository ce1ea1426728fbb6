import { megabytes } from '../archive/carried-words.ts';
import { counted } from '../phrase.ts';
import type { StoreFacts } from '../store.ts';

/** What the server tells of the workshop it keeps: `GET /api/workshop`. */
export interface WorkshopTold {
  readonly version: string;
  readonly store: StoreFacts;
  readonly photos: { readonly count: number; readonly bytes: number };
  readonly backups?: {
    readonly on: boolean;
    readonly every_h: number;
    readonly keep: number;
    readonly last?: {
      readonly number: number;
      readonly at: string;
      readonly bytes: number;
      readonly entries: number;
      readonly photos: number;
      readonly damaged_photos: number;
    };
    readonly failed?: { readonly at: string; readonly why: string };
  };
}

/** A row of the workshop's page: what, and how it stands. */
export interface WorkshopRow {
  readonly label: string;
  readonly words: string;
}

/** The page's rows. @param moment  how a time is shown */
export function workshopRows(
  { version, store, photos, backups }: WorkshopTold,
  moment: (iso: string) => string,
): WorkshopRow[] {
  const last = backups?.last;
  const lastWords = last
    ? `number ${last.number}, ${moment(last.at)}: ${counted(last.entries, 'entry', 'entries')} and ${counted(last.photos, 'photo')}, read back and counted`
    : 'none yet';
  const every = backups && `every ${backups.every_h} hours; the newest ${backups.keep} stay`;
  return [
    { label: 'Waywright', words: `version ${version}` },
    {
      label: 'Kept in',
      words:
        store.kind === 'SQLite'
          ? `one SQLite file, ${megabytes(store.bytes)}`
          : `PostgreSQL, ${megabytes(store.bytes)}`,
    },
    {
      label: 'Holds',
      words: `${counted(store.jobs, 'job')}, ${counted(store.entries, 'entry', 'entries')} of their ledgers, ${store.kit_entries} of the kit`,
    },
    { label: 'Photos', words: photos.count === 0 ? 'none' : `${photos.count}, ${megabytes(photos.bytes)}` },
    { label: 'Last backup', words: lastWords },
    { label: 'Backups', words: backups?.on ? every! : 'not made by this server' },
  ];
}

/** What a person should see to; none when all is well. */
export function workshopCares({ backups }: WorkshopTold, moment: (iso: string) => string): string[] {
  const cares: string[] = [];
  if (backups?.failed)
    cares.push(
      `The backup of ${moment(backups.failed.at)} was not made: ${backups.failed.why}. Earlier ones are as they were.`,
    );
  const hurt = backups?.last?.damaged_photos ?? 0;
  if (hurt > 0)
    cares.push(
      `${counted(hurt, 'photo')} could not be backed up, being damaged: waywright workshop check names them.`,
    );
  if (backups && !backups.on && !backups.last)
    cares.push('Nobody makes backups: waywright backup --to FOLDER makes one.');
  return cares;
}
