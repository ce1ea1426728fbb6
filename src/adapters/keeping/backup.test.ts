import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Cluster, newCluster } from '../../../tests/fixture/cluster.ts';
import { filled, newPlace } from '../../../tests/fixture/whole-workshop.ts';
import { backupName, dueIn_ms, tooMany } from '../../shop/keeping/backup.ts';
import { workshopSum } from '../../shop/keeping/workshop-sum.ts';
import { openWorkshop } from '../workshop/open-workshop.ts';
import { placeAt } from '../workshop/place.ts';
import { backupsIn, makeBackup } from './backup-folder.ts';
import { checkWorkshop, exportWorkshop, fileIsWhole, wayBack, withWorkshop } from './keeping.ts';
import { restoreWorkshop } from './restore.ts';

let cluster: Cluster;
beforeAll(async () => {
  cluster = await newCluster();
}, 60_000);
afterAll(() => cluster.stop());

const newFolder = () => join(mkdtempSync(join(tmpdir(), 'waywright-backups-')), 'backups');
const asked = (folder: string, keep = 14, now = '2031-11-25T14:32:00Z') => ({
  folder,
  keep,
  now,
  program: '0.1.0',
});
const note = (id: string) => ({ kind: 'note' as const, text: id, id, at: '2031-11-25T14:32:00Z' });

describe.each(['SQLite', 'PostgreSQL'] as const)('a backup of a workshop in %s', (kind) => {
  const place = async () => {
    const own = newPlace();
    return kind === 'SQLite' ? own : placeAt(await cluster.database(), own.folder);
  };

  it('restored into an empty place equals the original by hash, every entry and photo', async () => {
    const shop = await filled(await place());
    const before = await workshopSum(shop);
    const folder = newFolder();
    const record = await makeBackup(shop, asked(folder));
    expect(record).toMatchObject({ number: 1, store: kind, sum: before, damaged_photos: [] });
    // What comes after is not in it.
    await shop.store.append('zebra', note('late'));
    for (const goal of [newPlace(), placeAt(await cluster.database(), newPlace().folder)]) {
      const { sum } = await restoreWorkshop(join(folder, record.file), goal, false);
      expect(sum).toEqual(before);
      await withWorkshop(goal, async ({ photos }) => {
        for (const hash of shop.hashes)
          expect((await photos.open(hash))?.bytes).toEqual((await shop.photos.open(hash))?.bytes);
      });
    }
    await shop.close();
  });

  it('made while entries are written, it is one moment whole: each ledger a beginning without a gap', async () => {
    const shop = await filled(await place());
    let writing = true;
    let written = 0;
    const hand = (async () => {
      for (; writing; written++) {
        await shop.store.append('zebra', note(`n${written}`));
        await new Promise((wait) => setImmediate(wait));
      }
    })();
    const folder = newFolder();
    while (written < 20) await new Promise((wait) => setTimeout(wait, 2));
    const record = await makeBackup(shop, asked(folder));
    writing = false;
    await hand;
    const goal = newPlace();
    await restoreWorkshop(join(folder, record.file), goal, false);
    await withWorkshop(goal, async ({ store }) => {
      const [kept, all] = [(await store.entries('zebra'))!, (await shop.store.entries('zebra'))!];
      expect(kept.length).toBeGreaterThan(20);
      expect(kept).toEqual(all.slice(0, kept.length));
    });
    await shop.close();
  });

  it('changed by one byte, it is refused before anything is written', async () => {
    const shop = await filled(await place());
    const folder = newFolder();
    const { file } = await makeBackup(shop, asked(folder));
    await shop.close();
    const bytes = readFileSync(join(folder, file));
    bytes[bytes.length >> 1]! ^= 1;
    writeFileSync(join(folder, file), bytes);
    const goal = newPlace();
    await expect(restoreWorkshop(join(folder, file), goal, false)).rejects.toMatchObject({ code: 'damaged' });
    expect(readdirSync(goal.folder)).toEqual([]);
  });

  it('the whole workshop as one open file goes round, and gives the same bytes again', async () => {
    const shop = await filled(await place());
    const [one, two] = [join(shop.place.folder, 'one.zip'), join(shop.place.folder, 'two.zip')];
    const sum = await exportWorkshop(shop.place, one);
    expect(sum).toEqual(await workshopSum(shop));
    const goal = newPlace();
    expect((await restoreWorkshop(one, goal, false)).sum).toEqual(sum);
    await exportWorkshop(goal, two);
    expect(readFileSync(two).equals(readFileSync(one))).toBe(true);
    expect(await checkWorkshop(goal)).toMatchObject({ sum, damaged: [], unnamed: 0 });
    await shop.close();
  });
});

describe('keeping safe', () => {
  it('a torn file is told with the way back, which brings back the backup and keeps the torn file', async () => {
    const shop = await filled();
    const before = await workshopSum(shop);
    const folder = join(shop.place.folder, 'backups');
    await makeBackup(shop, asked(folder));
    await shop.close();
    const { at } = shop.place;
    truncateSync(at, statSync(at).size >> 1);
    expect(() => fileIsWhole(shop.place)).toThrow(expect.objectContaining({ code: 'damaged' }));
    const words = await wayBack(folder);
    expect(words).toContain('2031-11-25T14:32:00Z');
    const file = /restore (\S+) --replace/.exec(words)![1]!;
    await expect(restoreWorkshop(file, shop.place, false)).rejects.toThrow();
    const { sum, aside } = await restoreWorkshop(file, shop.place, true);
    expect(sum).toEqual(before);
    expect(statSync(aside!).size).toBeGreaterThan(0);
    expect(() => fileIsWhole(shop.place)).not.toThrow();
  });

  it('replacing is refused while another program has the file open; alone, what was there is set aside whole', async () => {
    const shop = await filled();
    const folder = newFolder();
    const { file } = await makeBackup(shop, asked(folder));
    await shop.store.append('zebra', note('after'));
    await expect(restoreWorkshop(join(folder, file), shop.place, true)).rejects.toMatchObject({
      code: 'busy',
      message: expect.stringContaining('stop the server first'),
    });
    expect(await shop.store.entries('zebra')).toHaveLength(2);
    await shop.close();
    await expect(restoreWorkshop(join(folder, file), shop.place, false)).rejects.toThrow(
      /"zebra" with 2 entries/,
    );
    const { aside } = await restoreWorkshop(join(folder, file), shop.place, true);
    const old = await openWorkshop({ ...shop.place, at: aside! });
    expect((await old.store.entries('zebra'))!.map(({ id }) => id)).toEqual(['zebra-made', 'after']);
    await old.close();
    await withWorkshop(shop.place, async ({ store }) => expect(await store.entries('zebra')).toHaveLength(1));
  });

  it('the newest stay by their number, though the clock was set back; two at once take two numbers', async () => {
    const shop = await filled();
    const folder = newFolder();
    for (const now of ['2031-11-25T14:32:00Z', '2031-11-26T14:32:00Z', '2019-01-01T00:00:00Z'])
      await makeBackup(shop, asked(folder, 2, now));
    expect((await backupsIn(folder)).map(({ at }) => at)).toEqual([
      '2019-01-01T00:00:00Z',
      '2031-11-26T14:32:00Z',
    ]);
    const both = await Promise.all([makeBackup(shop, asked(folder)), makeBackup(shop, asked(folder))]);
    expect(both.map(({ number }) => number).sort()).toEqual([4, 5]);
    expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
    await shop.close();
    const plan = { every_h: 24, keep: 2 };
    expect(dueIn_ms(undefined, '2031-11-25T14:32:00Z', plan)).toBe(0);
    expect(dueIn_ms('2031-11-25T14:32:00Z', '2031-11-25T15:32:00Z', plan)).toBe(23 * 3_600_000);
    expect(dueIn_ms('2031-11-25T14:32:00Z', '2019-01-01T00:00:00Z', plan)).toBe(0);
    expect(dueIn_ms('2031-11-25T14:32:00Z', '2031-12-25T15:32:00Z', plan)).toBe(0);
    expect(tooMany([{ number: 3 }, { number: 12 }, { number: 9 }], 2)).toEqual([{ number: 3 }]);
    expect(backupName(12, '2031-11-25T14:32:00.123Z')).toBe('000012-20311125T143200Z');
  });

  it('a folder that may not be written is said to be so', async () => {
    const shop = await filled();
    const folder = mkdtempSync(join(tmpdir(), 'waywright-backups-'));
    chmodSync(folder, 0o555);
    // The system's own user may write anywhere: become nobody for the attempt.
    const own = process.geteuid?.();
    if (own === 0) process.seteuid!(65_534);
    try {
      await expect(makeBackup(shop, asked(folder))).rejects.toMatchObject({ code: 'read only' });
    } finally {
      if (own === 0) process.seteuid!(0);
    }
    await shop.close();
  });

  it('a disk without room gets no backup and says how much is wanted; what was there stays, nothing half is left', async () => {
    const shop = await filled();
    const folder = newFolder();
    await makeBackup(shop, asked(folder));
    const before = readdirSync(folder);
    await expect(makeBackup(shop, { ...asked(folder), room: async () => 64_000_000 })).rejects.toMatchObject({
      code: 'disk full',
      message: expect.stringMatching(/has 64 MB left, 65 MB are wanted/),
    });
    expect(readdirSync(folder)).toEqual(before);
    // Full in the middle of it, as the system tells it.
    const full = Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
    const photos = { ...shop.photos, open: () => Promise.reject(full) };
    rmSync(join(folder, 'photos'), { recursive: true });
    await expect(makeBackup({ ...shop, photos }, asked(folder))).rejects.toMatchObject({ code: 'disk full' });
    expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
    expect(await backupsIn(folder)).toHaveLength(1);
    await shop.close();
  });

  it('a photo that is damaged or lacking is named by the check and by the backup', async () => {
    const shop = await filled();
    const [hurt, gone] = shop.hashes as [string, string];
    const file = (hash: string) => join(shop.place.photos, hash.slice(0, 2), `${hash}.jpeg`);
    writeFileSync(file(hurt), 'something else');
    rmSync(file(gone));
    expect(await checkWorkshop(shop.place)).toMatchObject({ damaged: [hurt], sum: { missing: [gone] } });
    const record = await makeBackup(shop, asked(newFolder()));
    expect(record.damaged_photos).toEqual([hurt]);
    expect(record.sum.missing).toEqual([hurt, gone].sort());
    await shop.close();
  });

  it('a record or a file that was cut short is no backup, and an archive of one job is no workshop', async () => {
    const shop = await filled();
    const folder = newFolder();
    const { file } = await makeBackup(shop, asked(folder));
    await makeBackup(shop, asked(folder));
    truncateSync(join(folder, file), 100);
    writeFileSync(join(folder, file.replace('.db', '.json').replace('000001', '000007')), '{');
    expect((await backupsIn(folder)).map(({ number }) => number)).toEqual([2]);
    const letter = join(shop.place.folder, 'letter.txt');
    writeFileSync(letter, 'this is a letter, and not a database at all; '.repeat(40));
    await expect(restoreWorkshop(letter, newPlace(), false)).rejects.toMatchObject({
      code: 'not a workshop',
    });
    await shop.close();
  });
});
