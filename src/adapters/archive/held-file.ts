import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { BadInput } from '../../contract/refusal.ts';
import { archiveLimits, type HeldFile } from '../../shop/archive/archive.ts';
import { makeFolder } from '../file/make-folder.ts';
import { worded } from '../store/sqlite-faults.ts';

/**
 * Lays what is sent on the disk without holding it in memory.
 * @param beside  the workshop's folder: it lies on the disk that photos go to
 * @throws BadInput  more than `most_bytes`
 * @throws Fault     the disk is full, or the folder cannot be written
 */
export async function heldFile(
  beside: string,
  stream: AsyncIterable<Uint8Array>,
  most_bytes: number = archiveLimits.bytes,
): Promise<HeldFile> {
  let folder: string | undefined;
  const letGo = async () => {
    if (folder) await rm(folder, { recursive: true, force: true });
  };
  try {
    makeFolder(beside);
    folder = await mkdtemp(join(beside, '.sent-'));
    const path = join(folder, 'sent.zip');
    await pipeline(stream, (source) => within(source, most_bytes), createWriteStream(path));
    return { path, letGo };
  } catch (failure) {
    await letGo();
    throw worded(failure, beside);
  }
}

/** @throws BadInput  as soon as there is more than that */
async function* within(source: AsyncIterable<Uint8Array>, most_bytes: number): AsyncGenerator<Uint8Array> {
  let bytes = 0;
  for await (const chunk of source) {
    bytes += chunk.length;
    if (bytes > most_bytes)
      throw new BadInput([
        { path: 'file', found: `more than ${most_bytes} bytes`, expected: `at most ${most_bytes} bytes` },
      ]);
    yield chunk;
  }
}
