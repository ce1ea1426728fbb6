import { randomBytes } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { joined } from '../../../tests/fixture/job-photos.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { ArchivePart } from '../../shop/archive/archive.ts';
import { isZip, openZip } from './zip-read.ts';
import { zipOf } from './zip-write.ts';

const folder = mkdtempSync(join(tmpdir(), 'waywright-zip-'));
const part = (name: string, bytes: Uint8Array): ArchivePart => ({ name, bytes: async () => bytes });
const onDisk = (bytes: Uint8Array): string => {
  const path = join(folder, `${randomBytes(6).toString('hex')}.zip`);
  writeFileSync(path, bytes);
  return path;
};

/** All that a ZIP holds, as our reader finds it. */
async function read(bytes: Uint8Array): Promise<Record<string, Uint8Array>> {
  const open = await openZip(onDisk(bytes));
  try {
    const found: [string, Uint8Array][] = [];
    for (const file of open.files) found.push([file.name, await file.bytes()]);
    return Object.fromEntries(found);
  } finally {
    await open.close();
  }
}

const text = new TextEncoder();
const some = { 'job.json': text.encode('{"a":1}\n'), 'photos/ü.jpeg': new Uint8Array(randomBytes(70_000)) };
const same = (a: Record<string, Uint8Array>, b: Record<string, Uint8Array>) => {
  expect(Object.keys(a)).toEqual(Object.keys(b));
  for (const [name, bytes] of Object.entries(b)) expect(Buffer.from(a[name]!).equals(bytes)).toBe(true);
};
const ours = (files: Record<string, Uint8Array>) =>
  joined(zipOf(Object.entries(files).map(([name, bytes]) => part(name, bytes))));

describe('ZIP files', () => {
  it('what is written here is read by a general library, and the other way round, stored or deflated', async () => {
    same(unzipSync(await ours(some)), some);
    same(await read(zipSync(some, { level: 0 })), some);
    same(await read(zipSync(some, { level: 9 })), some);
    same(await read(await ours(some)), some);
    same(await read(await ours({})), {});
  });

  it('the same parts give the same bytes', async () => {
    expect((await ours(some)).equals(await ours(some))).toBe(true);
  });

  it('parts are fetched as they are taken: never more than two stand ahead of what is out', async () => {
    const asked: number[] = [];
    const size = 300_000;
    const parts = [0, 1, 2, 3, 4, 5].map((k) => ({
      name: `photos/${k}`,
      bytes: async () => {
        asked.push(k);
        return new Uint8Array(size);
      },
    }));
    let out = 0;
    for await (const piece of zipOf(parts)) {
      expect(asked.length).toBeLessThanOrEqual(Math.floor(out / size) + 2);
      out += piece.length;
      await new Promise((turn) => setTimeout(turn, 2));
    }
    expect(asked).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('a part that cannot be fetched ends the archive with its own word', async () => {
    const parts = [
      part('a', new Uint8Array(3)),
      {
        name: 'b',
        bytes: async () => {
          throw new Error('photo b is gone');
        },
      },
    ];
    await expect(joined(zipOf(parts))).rejects.toThrow('photo b is gone');
  });

  it('is told by how it begins', async () => {
    expect(await isZip(onDisk(await ours(some)))).toBe(true);
    expect(await isZip(onDisk(await ours({})))).toBe(true);
    expect(await isZip(onDisk(text.encode('{"format":1}')))).toBe(false);
    expect(await isZip(onDisk(new Uint8Array(0)))).toBe(false);
  });

  it('cut off anywhere, it is refused', async () => {
    const whole = await ours(some);
    for (const share of [0, 0.001, 0.3, 0.9, 0.9999]) {
      const cut = whole.subarray(0, Math.floor(whole.length * share));
      await expect(read(cut)).rejects.toThrow(/^file: .*cut off/);
    }
  });

  it('a changed byte of a file is refused by its name', async () => {
    const whole = await ours(some);
    whole[whole.indexOf('{"a":1}')] = 0x5b;
    await expect(read(whole)).rejects.toThrow(/^job\.json: bytes that are not those/);
  });

  it('a file that unpacks to more than it says is cut at what it says, and refused', async () => {
    const bomb = Buffer.from(zipSync({ 'job.json': new Uint8Array(45_000_000) }, { level: 9 }));
    expect(bomb.length).toBeLessThan(100_000);
    // It says 10 bytes in the directory.
    bomb.writeUInt32LE(10, bomb.lastIndexOf(Buffer.from('PK\x01\x02', 'latin1')) + 24);
    await expect(read(bomb)).rejects.toThrow(/^job\.json: packed bytes that cannot be unpacked/);
  });

  it('one that says more than is taken is refused before it is unpacked', async () => {
    const bomb = Buffer.from(zipSync({ 'job.json': new Uint8Array(45_000_000) }, { level: 9 }));
    await expect(read(bomb)).rejects.toThrow(/^job\.json: 45000000 bytes; expected at most/);
  });

  it('encrypted files and one name twice are refused', async () => {
    const locked = Buffer.from(zipSync(some, { level: 9 }));
    locked.writeUInt16LE(1, locked.lastIndexOf(Buffer.from('PK\x01\x02', 'latin1')) + 8);
    await expect(read(locked)).rejects.toThrow('encrypted');
    const twice = joined(zipOf([part('a', new Uint8Array(3)), part('a', new Uint8Array(3))]));
    await expect(read(await twice)).rejects.toThrow('one name twice');
  });

  it('whatever is changed in it, it is read as it was, or refused in words', async () => {
    const whole = await ours({ 'job.json': text.encode('{"a":1}\n'), 'photos/b': new Uint8Array(40) });
    const change = fc.tuple(fc.nat(whole.length - 1), fc.integer({ min: 0, max: 255 }));
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 4 }), async (changes) => {
        const spoiled = Buffer.from(whole);
        for (const [at, to] of changes) spoiled[at] = to;
        try {
          const files = await read(spoiled);
          for (const bytes of Object.values(files)) expect(bytes.length).toBeLessThanOrEqual(40);
        } catch (failure) {
          expect(failure).toBeInstanceOf(BadInput);
        }
      }),
      { numRuns: 400, seed: 20311126 },
    );
  });
});
