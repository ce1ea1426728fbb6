import { mkdtemp, readdir, readFile, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { photoFolder } from './folder.ts';

const newFolder = () => mkdtemp(join(tmpdir(), 'waywright-photos-'));
// FIPS 180-2, appendix B.1: the SHA-256 of "abc".
const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const photo = { bytes: Buffer.from('abc'), format: 'jpeg' as const };

const filesIn = async (folder: string): Promise<string[]> =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((one) => one.isFile())
    .map((one) => one.name);

describe('photos in a folder', () => {
  it('are kept once, by their bytes, and come back as they were', async () => {
    const folder = await newFolder();
    const photos = photoFolder(join(folder, 'not', 'yet', 'there'));
    expect(await photos.open(abc)).toBeUndefined();
    expect(await photos.keep(photo)).toEqual({ hash: abc, again: false });
    expect(await photos.keep(photo)).toEqual({ hash: abc, again: true });
    expect(await photos.open(abc)).toEqual(photo);
    expect(await filesIn(folder)).toEqual([`${abc}.jpeg`]);
  });

  it('many at once of the same bytes leave one whole file and no pieces', async () => {
    const folder = await newFolder();
    const photos = photoFolder(folder);
    const bytes = Buffer.alloc(300_000, 7);
    const kept = await Promise.all(Array.from({ length: 12 }, () => photos.keep({ bytes, format: 'png' })));
    const { hash } = kept[0]!;
    expect(await filesIn(folder)).toEqual([`${hash}.png`]);
    expect(bytes.equals((await photos.open(hash))!.bytes)).toBe(true);
  });

  it('a name that is no hash finds nothing, wherever it leads', async () => {
    const folder = await newFolder();
    await writeFile(join(folder, 'secret.jpeg'), 'x');
    const photos = photoFolder(join(folder, 'photos'));
    for (const name of ['../secret', '..%2fsecret', abc.toUpperCase(), '', `${abc}/..`])
      expect(await photos.open(name)).toBeUndefined();
  });

  it('a file that was cut short is told, and sending it again mends it', async () => {
    const folder = await newFolder();
    const photos = photoFolder(folder);
    await photos.keep(photo);
    const file = join(folder, 'ba', `${abc}.jpeg`);
    await truncate(file, 2);
    await expect(photos.open(abc)).rejects.toMatchObject({ name: 'Fault', code: 'damaged' });
    expect(await photos.keep(photo)).toEqual({ hash: abc, again: false });
    expect(await readFile(file, 'utf8')).toBe('abc');
  });

  it('where nothing can be written it fails, and leaves no piece behind', async () => {
    const folder = await newFolder();
    const file = join(folder, 'a-file');
    await writeFile(file, 'in the way');
    await expect(photoFolder(file).keep(photo)).rejects.toThrow('a file stands there');
    expect(await filesIn(folder)).toEqual(['a-file']);
  });
});
