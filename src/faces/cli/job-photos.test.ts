import { createWriteStream, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import {
  demoJob,
  newWorkshop,
  noisePhoto,
  sha256,
  type Workshop,
  withPhotos,
} from '../../../tests/fixture/job-photos.ts';
import { isZip, openZip } from '../../adapters/archive/zip-read.ts';
import { zipOf } from '../../adapters/archive/zip-write.ts';
import type { Doors } from './doors.ts';
import { registerJob } from './job.ts';
import { run } from './run.ts';

const { id } = demoJob();

/** The command line on a workshop. */
async function waywright({ store, photos }: Workshop, ...words: string[]) {
  const [out, err]: [string[], string[]] = [[], []];
  const doors = {
    readText: async (file: string) => readFileSync(file, 'utf8'),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    withStore: (work: (kept: typeof store) => unknown) => work(store),
  } as unknown as Doors;
  const verbs = [
    registerJob({
      photos: async () => photos,
      packed: zipOf,
      open: openZip,
      isArchive: isZip,
      writePieces: (file, pieces) => pipeline(pieces, createWriteStream(file)),
    }),
  ];
  const code = await run(words, doors, verbs, '0');
  return { code, out: out.join('\n'), err: err.join('\n') };
}

it('a job goes from one workshop to another with its photos by the command line', async () => {
  const [from, to] = [await newWorkshop(), await newWorkshop()];
  const photo = noisePhoto(9_000);
  const [hash] = await withPhotos(from, [photo]);
  const file = join(from.folder, 'saddle.zip');
  const plain = await waywright(from, 'job', 'export', id);
  expect(JSON.parse(plain.out)).toMatchObject({ format: 'waywright-job', id });
  expect(plain.err).toBe('1 photo not in it: with --photos --out FILE.zip they come along');
  const nowhere = await waywright(from, 'job', 'export', id, '--photos');
  expect([nowhere.code, nowhere.err]).toEqual([
    2,
    '--out: nothing; expected a file for the job and its photos, as --out saddle.zip',
  ]);
  const written = await waywright(from, 'job', 'export', id, '--photos', '--out', file);
  expect(written).toEqual({
    code: 0,
    out: `${id} written to ${file}, ${demoJob().entries.length + 1} entries and 1 photo`,
    err: '',
  });
  const taken = await waywright(to, 'job', 'import', file);
  expect(taken).toEqual({
    code: 0,
    out: `${id} taken in, ${demoJob().entries.length + 1} entries\n1 photo taken in`,
    err: '',
  });
  expect(sha256((await to.photos.open(hash!))!.bytes)).toBe(sha256(photo));
  const again = await waywright(to, 'job', 'import', file, '--json');
  expect(JSON.parse(again.out)).toMatchObject({ again: true, photos: { taken: 0, here: 1, missing: [] } });
});

it('what is wrong with an archive is said by the photo’s name, and leaves with 2', async () => {
  const [from, to] = [await newWorkshop(), await newWorkshop()];
  const [hash] = await withPhotos(from, [noisePhoto(9_000)]);
  const file = join(from.folder, 'saddle.zip');
  await waywright(from, 'job', 'export', id, '--photos', '--out', file);
  const files = unzipSync(readFileSync(file));
  writeFileSync(file, zipSync({ ...files, [`photos/${hash}.jpeg`]: noisePhoto(9_000) }));
  const { code, err } = await waywright(to, 'job', 'import', file);
  expect(code).toBe(2);
  expect(err).toContain(`${file}: photos/${hash}: bytes whose SHA-256 is`);
  expect(await to.store.jobs()).toEqual([]);
  const half = await waywright(from, 'job', 'export', id, '--partial', '--out', file);
  expect([half.code, half.err]).toEqual([2, '--partial: without --photos; expected both']);
});
