import { Fault } from '../../shop/store.ts';

/** SQLite's and the file system's codes in words that say what to do; anything else is our own mistake and stays as it is. */
export function worded(failure: unknown, file: string): unknown {
  const code = (failure as { code?: string }).code ?? '';
  if (code.startsWith('SQLITE_FULL') || code === 'ENOSPC' || code === 'EDQUOT')
    return new Fault(
      'disk full',
      `the disk is full: nothing was written to ${file}; make room and try again`,
    );
  if (
    code.startsWith('SQLITE_READONLY') ||
    code.startsWith('SQLITE_CANTOPEN') ||
    code === 'EACCES' ||
    code === 'EROFS'
  )
    return new Fault(
      'read only',
      `${file} cannot be written; check the folder's permissions or set WAYWRIGHT_DATA`,
    );
  if (code.startsWith('SQLITE_NOTADB'))
    return new Fault('not a workshop', `${file} is not a database; give another file or folder`);
  if (code.startsWith('SQLITE_CORRUPT'))
    return new Fault('damaged', `${file} is damaged; keep it, and restore the last copy beside it`);
  if (code.startsWith('SQLITE_BUSY'))
    return new Fault('busy', `${file} is held by another program; nothing was written`);
  return failure;
}
