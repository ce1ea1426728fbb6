import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type Database from 'better-sqlite3';

/** Where the copy goes that is made before the schema is changed: the first name that is free, so that none is written over. */
function freeName(file: string, schema: number): string {
  const name = `${file}.schema-${schema}`;
  for (let n = 1; ; n++) {
    const one = n === 1 ? name : `${name}-${n}`;
    if (!existsSync(one)) return one;
  }
}

/** What a file holds, or a folder lists, is durable when this returns. */
export function forceToDisk(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } catch (failure) {
    // Some systems cannot do that to a folder, and need not.
    if ((failure as { code?: string }).code !== 'EINVAL') throw failure;
  } finally {
    closeSync(handle);
  }
}

/**
 * A whole copy of the workshop as it was, beside it, before its schema is changed. Fails as a full disk does, and then nothing of
 * the schema has been changed.
 */
export function keepBeforeUpgrade(database: Database.Database, file: string, schema: number): void {
  const copy = freeName(file, schema);
  const part = `${copy}.part-${process.pid}`;
  try {
    database.prepare('vacuum into ?').run(part);
    forceToDisk(part);
    renameSync(part, copy);
    forceToDisk(dirname(file));
  } catch (failure) {
    rmSync(part, { force: true });
    throw failure;
  }
}
