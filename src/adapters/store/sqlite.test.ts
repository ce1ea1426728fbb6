import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { jobFile } from '../../contract/job-file.ts';
import { importJob } from '../../shop/keep-job.ts';
import { checkGaps, migrations } from './migrations.ts';
import { openSqlite } from './sqlite.ts';

const newFile = (): string => join(mkdtempSync(join(tmpdir(), 'waywright-')), 'workshop.db');
const demo = () => jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
const note = (n: number, text = `note ${n}`) => ({
  kind: 'note' as const,
  text,
  id: `n${n}`,
  at: '2031-11-25T14:32:00Z',
});

describe('the workshop in one file', () => {
  it('holds every entry over a new opening, and refuses to change or drop one', async () => {
    const file = newFile();
    const store = await openSqlite(file);
    await importJob(store, demo());
    const kept = await store.append(demo().id, note(1));
    await store.close();
    const again = await openSqlite(file);
    expect((await again.entries(demo().id))!.at(-1)).toEqual({
      ...note(1),
      seq: kept.kind === 'kept' ? kept.seq : 0,
    });
    await again.close();
    const raw = new Database(file);
    expect(() => raw.exec("update entry set deed = '{}'")).toThrow(/append-only/);
    expect(() => raw.exec('delete from entry')).toThrow(/append-only/);
    raw.close();
  });

  it('is kept with a write-ahead log, forced to the disk at each entry', async () => {
    const file = newFile();
    const store = await openSqlite(file);
    const raw = new Database(file, { readonly: true });
    expect(raw.pragma('journal_mode', { simple: true })).toBe('wal');
    raw.close();
    await store.close();
  });

  it('a full disk loses nothing and says so', async () => {
    const file = newFile();
    const store = await openSqlite(file, { mostPages: 24 });
    await importJob(store, { ...demo(), entries: demo().entries.slice(0, 1) });
    let kept = 0;
    let refused: unknown;
    for (let n = 1; n < 200 && !refused; n++)
      try {
        await store.append(demo().id, note(n, 'long '.repeat(200)));
        kept = n;
      } catch (failure) {
        refused = failure;
      }
    expect(refused).toMatchObject({ name: 'Fault', code: 'disk full' });
    expect(kept).toBeGreaterThan(3);
    expect(await store.entries(demo().id)).toHaveLength(1 + kept);
    await store.close();
  });

  it('leaves alone a file that is no workshop', async () => {
    const text = newFile();
    writeFileSync(text, 'this is a letter, and not a database at all; '.repeat(40));
    await expect(openSqlite(text)).rejects.toMatchObject({ code: 'not a workshop' });
    expect(readFileSync(text, 'utf8')).toMatch(/^this is a letter/);
    const foreign = newFile();
    const raw = new Database(foreign);
    raw.exec('create table recipe (name text)');
    raw.close();
    await expect(openSqlite(foreign)).rejects.toMatchObject({ code: 'not a workshop' });
  });

  it('leaves alone a workshop of a newer version', async () => {
    const file = newFile();
    await (await openSqlite(file)).close();
    const raw = new Database(file);
    raw.pragma(`user_version = ${migrations.length + 1}`);
    raw.close();
    await expect(openSqlite(file)).rejects.toMatchObject({ code: 'newer workshop' });
  });

  it('migrations run from 1 without a gap, and a gap is seen', () => {
    expect(() => checkGaps(migrations)).not.toThrow();
    expect(() => checkGaps([migrations[0]!, { ...migrations[0]!, number: 3 }])).toThrow(/migration 3/);
  });
});
