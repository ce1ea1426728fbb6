import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { jobFile } from '../../contract/job-file.ts';
import type { SentKitEntry } from '../../contract/kit-entry.ts';
import { importJob } from '../../shop/keep-job.ts';
import { openSqlite } from './sqlite.ts';

const newFile = (): string => join(mkdtempSync(join(tmpdir(), 'waywright-')), 'workshop.db');
const put = (n: number, name = `dial ${n}`): SentKitEntry => ({
  kind: 'put',
  item: `item-${n}`,
  id: `entry-${n}`,
  at: '2031-11-25T14:32:00Z',
  thing: { kind: 'indicator', name, graduation_um: 1, repeatability_um: 0.5 },
});

describe('the kit in the workshop’s file', () => {
  it('keeps an entry once, over a new opening, and refuses to change or drop one', async () => {
    const file = newFile();
    const store = await openSqlite(file);
    expect(await store.kit()).toEqual([]);
    expect(await store.keepKit([put(1)])).toEqual({ kind: 'kept', seq: 1, again: false });
    expect(await store.keepKit([put(2)])).toEqual({ kind: 'kept', seq: 2, again: false });
    expect(await store.keepKit([put(1)])).toEqual({ kind: 'kept', seq: 1, again: true });
    expect(await store.keepKit([put(1, 'another')])).toEqual({ kind: 'conflict' });
    await store.close();
    const again = await openSqlite(file);
    expect(await again.kit()).toEqual([
      { ...put(1), seq: 1 },
      { ...put(2), seq: 2 },
    ]);
    await again.close();
    const raw = new Database(file);
    expect(() => raw.exec("update kit_entry set deed = '{}'")).toThrow(/append-only/);
    expect(() => raw.exec('delete from kit_entry')).toThrow(/append-only/);
    raw.close();
  });

  it('takes many, all or none', async () => {
    const store = await openSqlite(newFile());
    await store.keepKit([put(1)]);
    expect(await store.keepKit([put(2), put(1, 'another')])).toEqual({ kind: 'conflict' });
    expect((await store.kit()).length).toBe(1);
    expect(await store.keepKit([put(1), put(2), put(3)])).toEqual({ kind: 'kept', seq: 3, again: false });
    expect(await store.keepKit([put(1), put(2), put(3)])).toMatchObject({ kind: 'kept', again: true });
    await store.close();
  });

  it('a workshop from before there was a kit keeps all it has and gets one', async () => {
    const file = newFile();
    const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
    const store = await openSqlite(file);
    await importJob(store, demo);
    await store.close();
    const raw = new Database(file);
    raw.exec('drop table kit_entry');
    raw.pragma('user_version = 1');
    raw.close();
    const again = await openSqlite(file);
    expect(await again.entries(demo.id)).toEqual(demo.entries);
    expect(await again.keepKit([put(1)])).toMatchObject({ kind: 'kept', seq: 1 });
    await again.close();
  });

  it('an entry touched by another hand is told as damaged', async () => {
    const file = newFile();
    const store = await openSqlite(file);
    await store.keepKit([put(1)]);
    await store.close();
    const raw = new Database(file);
    raw.exec('drop trigger kit_kept');
    raw.exec(`update kit_entry set deed = '{"kind": "put"}'`);
    raw.close();
    const again = await openSqlite(file);
    await expect(again.kit()).rejects.toMatchObject({ code: 'damaged' });
    await again.close();
  });
});
