import { chmodSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { SentEntry } from '../../contract/entry.ts';
import { jobFile } from '../../contract/job-file.ts';
import { openSqlite } from './sqlite.ts';

const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
const made = demo.entries[0]!;
const newFolder = () => mkdtempSync(join(tmpdir(), 'waywright-store-'));
const newFile = () => join(newFolder(), 'workshop.db');

const note = (id: string, text: string): SentEntry => ({
  kind: 'note',
  text,
  id,
  at: '2031-11-25T14:32:00+01:00',
});

describe('a file that another hand has been at', () => {
  it('a spoiled entry is named, and never reaches the sums', async () => {
    const file = newFile();
    const store = await openSqlite(file);
    await store.make(demo.id, [made]);
    await store.append(demo.id, note('n1', 'oil'));
    await store.close();
    const database = new Database(file);
    database.exec('drop trigger entry_kept');
    database.exec(`update entry set deed = '{"kind":"note","text":7}' where seq = 2`);
    database.close();
    const again = await openSqlite(file);
    await expect(again.entries(demo.id)).rejects.toMatchObject({
      name: 'Fault',
      code: 'damaged',
      message: expect.stringContaining('entry 2 of job "demo-saddle"'),
    });
    await again.close();
  });

  it('a folder that may not be written is said to be so, and what to do', async () => {
    const folder = newFolder();
    chmodSync(folder, 0o555);
    // The system's own user may write anywhere: become nobody for the attempt.
    const own = process.geteuid?.();
    if (own === 0) process.seteuid!(65_534);
    try {
      for (const file of [join(folder, 'workshop.db'), join(folder, 'deeper', 'workshop.db')])
        await expect(openSqlite(file)).rejects.toMatchObject({
          name: 'Fault',
          code: 'read only',
          message: expect.stringContaining('WAYWRIGHT_DATA'),
        });
    } finally {
      if (own === 0) process.seteuid!(0);
    }
  });

  it('what a full disk did not take is not there by half', async () => {
    const store = await openSqlite(newFile(), { mostPages: 24 });
    await store.make(demo.id, [made]);
    const large = { ...demo, entries: [...demo.entries] };
    for (let k = 0; k < 40; k++)
      large.entries.push({ ...note(`n${k}`, 'x'.repeat(4_000)), seq: large.entries.length + 1 });
    await expect(store.make('second', large.entries)).rejects.toMatchObject({ code: 'disk full' });
    expect(await store.entries('second')).toBeUndefined();
    expect((await store.jobs()).map((line) => line.id)).toEqual([demo.id]);
    expect(await store.append(demo.id, note('n1', 'oil'))).toMatchObject({ kind: 'kept', seq: 2 });
    await store.close();
  });
});
