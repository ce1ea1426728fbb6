import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { Fault } from '../../shop/store.ts';

/**
 * Makes a folder and those above it that are not there yet, one at a time: the system's own way of making many never ends on a disk that
 * answers "not there" to the making itself, as /proc does.
 * @throws Fault  'read only', where no folder can be; else as the system says it
 */
export function makeFolder(folder: string): void {
  const whole = resolve(folder);
  if (isFolder(whole)) return;
  const above = dirname(whole);
  if (above !== whole) makeFolder(above);
  try {
    mkdirSync(whole);
  } catch (failure) {
    const { code } = failure as { code?: string };
    // Another program may have made it meanwhile.
    if (code === 'EEXIST' && isFolder(whole)) return;
    // A full disk and what may not be written have words of their own.
    if (code !== 'EEXIST' && code !== 'ENOTDIR' && code !== 'ENOENT') throw failure;
    throw new Fault(
      'read only',
      code === 'ENOENT'
        ? `the folder ${whole} cannot be made: this is no disk; name another`
        : `${whole} cannot be made a folder: a file stands there or on the way; name another`,
    );
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}
