import { readdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  demoJob,
  joined,
  newWorkshop,
  noisePhoto,
  sha256,
  type Workshop,
  withPhotos,
} from '../../../tests/fixture/job-photos.ts';
import { openZip } from '../../adapters/archive/zip-read.ts';
import { zipOf } from '../../adapters/archive/zip-write.ts';
import type { ArchiveFile } from './archive.ts';
import { photosTakenWords } from './carried-words.ts';
import { jobWithPhotos, photosHere } from './export-photos.ts';
import { takeWithPhotos } from './import-photos.ts';

const id = demoJob().id;
let from: Workshop;
let to: Workshop;
beforeEach(async () => {
  [from, to] = [await newWorkshop(), await newWorkshop()];
});

const exported = async (shop: Workshop, partial = false) =>
  joined(zipOf((await jobWithPhotos(shop.store, shop.photos, id, partial))!.parts));

/** Bytes of a ZIP taken into a workshop. */
async function taken(shop: Workshop, bytes: Uint8Array, as?: string) {
  const path = join(shop.folder, 'sent.zip');
  writeFileSync(path, bytes);
  const open = await openZip(path);
  try {
    return await takeWithPhotos(shop.store, shop.photos, open.files, as);
  } finally {
    await open.close();
  }
}
const kept = (shop: Workshop) => {
  try {
    return readdirSync(join(shop.folder, 'photos'), { recursive: true, withFileTypes: true }).filter((one) =>
      one.isFile(),
    ).length;
  } catch {
    return 0;
  }
};

describe('a job carried with its photos', () => {
  it('goes round with every photo byte for byte, by its hash, and exports to the same bytes again', async () => {
    const all = [noisePhoto(60_000), noisePhoto(2_300_000), noisePhoto(7)];
    const hashes = await withPhotos(from, all);
    const bytes = await exported(from);
    // A general library finds the job file and the photos under the names of their own bytes.
    const inside = unzipSync(bytes);
    expect(Object.keys(inside)).toEqual(['job.json', ...hashes.map((hash) => `photos/${hash}.jpeg`)]);
    for (const hash of hashes) expect(sha256(inside[`photos/${hash}.jpeg`]!)).toBe(hash);
    const came = await taken(to, bytes);
    expect(came).toMatchObject({ id, kept: { kind: 'kept', again: false } });
    expect(came.photos).toEqual({ taken: 3, here: 0, missing: [] });
    for (const [k, hash] of hashes.entries())
      expect(Buffer.from((await to.photos.open(hash))!.bytes).equals(all[k]!)).toBe(true);
    expect(await to.store.entries(id)).toEqual(await from.store.entries(id));
    expect((await exported(to)).equals(bytes)).toBe(true);
    const again = await taken(to, bytes);
    expect(again.kept).toMatchObject({ again: true });
    expect(again.photos).toEqual({ taken: 0, here: 3, missing: [] });
  });

  it('stopped on the way in or out, it is heard before the next photo, and the job is not in the workshop', async () => {
    await withPhotos(from, [noisePhoto(60_000), noisePhoto(70_000), noisePhoto(80_000)]);
    const whole = (await jobWithPhotos(from.store, from.photos, id))!;
    const stop = new AbortController();
    const read: string[] = [];
    const stopping = whole.parts.map(({ name, bytes }) => ({
      name,
      size: 100_000,
      bytes: async () => {
        read.push(name);
        // The first photo is read; whoever sends it goes away meanwhile.
        if (read.length === 2) stop.abort(new Error('gone'));
        return bytes();
      },
    })) as readonly ArchiveFile[];
    await expect(takeWithPhotos(to.store, to.photos, stopping, undefined, stop.signal)).rejects.toThrow(
      'gone',
    );
    expect(read.length).toBe(2);
    expect(kept(to)).toBe(0);
    expect(await to.store.jobs()).toEqual([]);
    await expect(jobWithPhotos(from.store, from.photos, id, false, stop.signal)).rejects.toThrow('gone');
  });

  it('sixty photos are in memory one at a time, on the way out and on the way in', async () => {
    await withPhotos(
      from,
      Array.from({ length: 60 }, () => noisePhoto(2_000)),
    );
    const { parts } = (await jobWithPhotos(from.store, from.photos, id))!;
    let [open, most] = [0, 0];
    const counted = parts.map(
      (part): ArchiveFile => ({
        ...part,
        size: 2_000,
        bytes: async () => {
          open++;
          most = Math.max(most, open);
          await new Promise((done) => setImmediate(done));
          const bytes = await part.bytes();
          open--;
          return bytes;
        },
      }),
    );
    for await (const _ of zipOf(counted)) expect(open).toBeLessThanOrEqual(1);
    expect(most).toBe(1);
    const came = await takeWithPhotos(to.store, to.photos, counted);
    expect(came.photos.taken).toBe(60);
    expect(most).toBe(1);
  });

  it('a photo that is missing or damaged is refused by its name; asked for in part, the rest goes', async () => {
    const all = [noisePhoto(500), noisePhoto(600), noisePhoto(700)];
    const [gone, hurt, whole] = (await withPhotos(from, all)) as [string, string, string];
    const place = (hash: string) => join(from.folder, 'photos', hash.slice(0, 2), `${hash}.jpeg`);
    writeFileSync(place(hurt), 'something else');
    unlinkSync(place(gone));
    await expect(exported(from)).rejects.toThrow(
      new RegExp(`photos/${gone}: not in this workshop.*\nphotos/${hurt}: no longer the bytes`),
    );
    expect((await photosHere(from.store, from.photos, id))?.missing).toEqual([gone]);
    const part = (await jobWithPhotos(from.store, from.photos, id, true))!;
    expect(part.left_out).toEqual([gone, hurt]);
    const came = await taken(to, await exported(from, true));
    expect(came.photos).toEqual({ taken: 1, here: 0, missing: [gone, hurt] });
    expect(photosTakenWords(came.photos)).toContain(
      `2 photos are neither in the file nor here: ${gone.slice(0, 12)}`,
    );
    expect(await to.photos.about(whole)).toMatchObject({ bytes: 700 });
  });

  it('a changed, strange, unnamed or unreadable photo is refused by name, and nothing at all is kept', async () => {
    const [photo, other] = [noisePhoto(400), noisePhoto(400)];
    const text = Buffer.from('these bytes are no picture');
    const [hash] = await withPhotos(from, [photo]);
    const files = unzipSync(await exported(from));
    const name = `photos/${hash}.jpeg`;
    const refusal = async (changed: Record<string, Uint8Array>) => {
      await expect(taken(to, zipSync(changed))).rejects.toThrow();
      expect(await to.store.jobs()).toEqual([]);
      expect(kept(to)).toBe(0);
      return taken(to, zipSync(changed)).catch((why: Error) => why.message);
    };
    expect(await refusal({ ...files, [name]: other })).toBe(
      `photos/${hash}: bytes whose SHA-256 is ${sha256(other)}; expected the bytes that its name says: this photo was changed or damaged`,
    );
    expect(await refusal({ ...files, [`photos/${sha256(other)}.jpeg`]: other })).toContain(
      `photos/${sha256(other)}: a photo that no entry names`,
    );
    expect(await refusal({ ...files, [`photos/${hash}.png`]: photo })).toContain(
      `photos/${hash}: the photo twice`,
    );
    expect(await refusal({ ...files, '../../evil.jpeg': photo })).toContain(
      'invalid relative path: ../../evil.jpeg',
    );
    expect(await refusal({ [name]: photo })).toContain('an archive without job.json');
    expect(await refusal({ ...files, 'job.json': Buffer.from('{"format": 1}') })).toContain(
      'job.json format',
    );
    // An entry that names bytes which are no picture.
    const textHash = sha256(text);
    const job = Buffer.from(Buffer.from(files['job.json']!).toString().replace(hash!, textHash));
    expect(await refusal({ 'job.json': job, [`photos/${textHash}.jpeg`]: text })).toContain(
      `photos/${textHash}: something that does not begin as a picture does`,
    );
  });

  it('another job under the same id is a conflict, and leaves no photo behind; under another id it is taken', async () => {
    const [hash] = await withPhotos(from, [noisePhoto(300)]);
    const bytes = await exported(from);
    await withPhotos(to, []);
    const write = { kind: 'note', id: 'mine', at: '2031-11-26T09:00:00Z', text: 'ours' } as const;
    await to.store.append(id, write);
    expect((await taken(to, bytes)).kept).toEqual({ kind: 'conflict' });
    expect(kept(to)).toBe(0);
    const came = await taken(to, bytes, 'second');
    expect(came).toMatchObject({ id: 'second', kept: { kind: 'kept' } });
    expect(sha256((await to.photos.open(hash!))!.bytes)).toBe(hash);
  });

  it('a photo whose entry was undone goes along: the undo may be undone', async () => {
    const [first, second] = await withPhotos(from, [noisePhoto(300), noisePhoto(310)]);
    await from.store.append(id, { kind: 'undone', id: 'undo', at: '2031-11-26T09:00:00Z', entry: 'photo-0' });
    const came = await taken(to, await exported(from));
    expect(came.photos.taken).toBe(2);
    for (const hash of [first!, second!]) {
      const file = join(to.folder, 'photos', hash.slice(0, 2), `${hash}.jpeg`);
      expect(sha256(readFileSync(file))).toBe(hash);
    }
  });
});
