import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Cluster, newCluster } from '../../../tests/fixture/cluster.ts';
import { openPostgres } from '../store/postgres.ts';
import { photoTable } from './table.ts';

// FIPS 180-2, appendix B.1: the SHA-256 of "abc".
const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const photo = { bytes: Buffer.from('abc'), format: 'jpeg' as const };

let cluster: Cluster;
beforeAll(async () => {
  cluster = await newCluster();
}, 60_000);
afterAll(() => cluster.stop());

async function newTable() {
  const url = await cluster.database();
  await (await openPostgres(url)).close();
  return { url, photos: photoTable(url) };
}

describe('photos in the workshop’s database', () => {
  it('are kept once, by their bytes, and come back as they were', async () => {
    const { photos } = await newTable();
    expect(await photos.open(abc)).toBeUndefined();
    expect(await photos.keep(photo)).toEqual({ hash: abc, again: false });
    expect(await photos.keep(photo)).toEqual({ hash: abc, again: true });
    expect(await photos.open(abc)).toEqual(photo);
    expect(await photos.about(abc)).toEqual({ format: 'jpeg', bytes: 3 });
    expect(await photos.all()).toEqual([{ hash: abc, format: 'jpeg', bytes: 3 }]);
    for (const name of ['../secret', abc.toUpperCase(), '', `${abc}/..`, `${abc}' or true`])
      expect(await photos.open(name)).toBeUndefined();
    await photos.close();
  });

  it('sent by two servers at once, large ones, are one, byte for byte', async () => {
    const { url, photos } = await newTable();
    const others = photoTable(url);
    const bytes = Buffer.alloc(9_000_000, 7);
    const kept = await Promise.all([photos, others, photos].map((one) => one.keep({ bytes, format: 'png' })));
    expect(kept.filter(({ again }) => !again)).toHaveLength(1);
    expect(await photos.all()).toEqual([{ hash: kept[0]!.hash, format: 'png', bytes: bytes.length }]);
    expect(bytes.equals((await others.open(kept[0]!.hash))!.bytes)).toBe(true);
    await photos.close();
    await others.close();
  });
});
