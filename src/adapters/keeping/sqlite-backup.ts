import Database from 'better-sqlite3';
import { Fault, type Store } from '../../shop/store.ts';
import { openSqlite } from '../store/sqlite.ts';

/** All pages in one step: a step that is one of many begins anew whenever someone writes in between. */
const allAtOnce = 0x7fffffff;

/**
 * Copies a workshop's file while it is used, by SQLite's online backup, as it was at one moment; looks the copy through and opens
 * it to be read.
 * @throws Fault  'damaged'
 */
export async function sqliteCopy(file: string, to: string): Promise<Store> {
  const from = new Database(file, { readonly: true, fileMustExist: true });
  try {
    await from.backup(to, { progress: () => allAtOnce });
  } finally {
    from.close();
  }
  const copy = new Database(to);
  try {
    // One file, without a log beside it, so that it can be carried away as it is.
    copy.pragma('journal_mode = DELETE');
    const told = wrongWith(copy, 'integrity_check');
    if (told)
      throw new Fault(
        'damaged',
        `${file} is damaged (${told}): no backup was made of it; keep it as it is, and restore the last backup`,
      );
  } finally {
    copy.close();
  }
  return openSqlite(to, { readOnly: true });
}

/** What SQLite finds wrong with a file, or undefined. */
export function wrongWith(
  database: Database.Database,
  check: 'integrity_check' | 'quick_check',
): string | undefined {
  const told = database.pragma(`${check}(1)`, { simple: true }) as string;
  return told === 'ok' ? undefined : told.split('\n')[0];
}
