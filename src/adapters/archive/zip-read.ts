import { type FileHandle, open } from 'node:fs/promises';
import { promisify } from 'node:util';
import { inflateRaw } from 'node:zlib';
import { BadInput } from '../../contract/refusal.ts';
import { type ArchiveFile, archiveLimits, type OpenArchive } from '../../shop/archive/archive.ts';
import { crc32, zip } from './zip-form.ts';

const inflated = promisify(inflateRaw);

const refused = (path: string, found: string, expected: string): BadInput =>
  new BadInput([{ path, found, expected }]);

const broken = (found: string): BadInput =>
  refused('file', found, 'a whole ZIP file, as a job is exported with its photos');

/** Whether a file begins as a ZIP file does. */
export async function isZip(path: string): Promise<boolean> {
  const handle = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(4), 0, 4, 0);
    const mark = bytesRead === 4 ? buffer.readUInt32LE() : 0;
    return mark === zip.local.mark || mark === zip.end.mark;
  } finally {
    await handle.close();
  }
}

/**
 * Opens a ZIP file by its directory. Only what the directory lists is ever read, and of each no more than it says.
 * @throws BadInput  naming `file`, or a file in it: cut off, encrypted, in another way of packing, one name twice
 */
export async function openZip(path: string): Promise<OpenArchive> {
  const handle = await open(path, 'r');
  try {
    return { files: await listed(handle), close: () => handle.close() };
  } catch (failure) {
    await handle.close();
    throw failure;
  }
}

async function piece(handle: FileHandle, at: number, length: number): Promise<Buffer> {
  const bytes = Buffer.alloc(length);
  let read = 0;
  while (read < length) {
    const { bytesRead } = await handle.read(bytes, read, length - read, at + read);
    if (bytesRead === 0) break;
    read += bytesRead;
  }
  return bytes.subarray(0, read);
}

/** Longest remark that may stand after the end's record. */
const mostRemark = 0xffff;
/** A name and what may stand with it, at most. */
const mostLine = 2_000;

async function listed(handle: FileHandle): Promise<ArchiveFile[]> {
  const { size } = await handle.stat();
  if (size > archiveLimits.bytes) throw broken(`${size} bytes`);
  const tail = await piece(
    handle,
    Math.max(0, size - zip.end.length - mostRemark),
    Math.min(size, zip.end.length + mostRemark),
  );
  let at = tail.length - zip.end.length;
  while (at >= 0 && tail.readUInt32LE(at) !== zip.end.mark) at--;
  if (at < 0) throw broken('no directory at its end: it is cut off');
  const many = tail.readUInt16LE(at + 10);
  const length = tail.readUInt32LE(at + 12);
  const from = tail.readUInt32LE(at + 16);
  if (many > archiveLimits.files) throw broken(`${many} files`);
  if (from === zip.elsewhere || from + length > size || length > many * mostLine)
    throw broken('a directory that does not fit');
  const directory = await piece(handle, from, length);
  const files: ArchiveFile[] = [];
  const names = new Set<string>();
  for (let next = 0, k = 0; k < many; k++) {
    if (next + zip.entry.length > directory.length || directory.readUInt32LE(next) !== zip.entry.mark)
      throw broken('a directory that is damaged');
    const [name, extra, remark] = [28, 30, 32].map((place) => directory.readUInt16LE(next + place)) as [
      number,
      number,
      number,
    ];
    const begin = next + zip.entry.length;
    if (begin + name > directory.length) throw broken('a directory that is damaged');
    const file = one(
      handle,
      directory.subarray(next, begin),
      directory.toString('utf8', begin, begin + name),
      from,
    );
    if (names.has(file.name)) throw refused(called(file.name), 'one name twice', 'each file once');
    names.add(file.name);
    files.push(file);
    next = begin + name + extra + remark;
  }
  return files;
}

const called = (name: string): string => name.slice(0, 100);

/** @param room  where the files end and the directory begins */
function one(handle: FileHandle, line: Buffer, name: string, room: number): ArchiveFile {
  const flags = line.readUInt16LE(8);
  const way = line.readUInt16LE(10);
  const crc = line.readUInt32LE(16);
  const packed = line.readUInt32LE(20);
  const size = line.readUInt32LE(24);
  const at = line.readUInt32LE(42);
  if (flags & zip.encrypted) throw refused(called(name), 'a file that is encrypted', 'one that can be read');
  if (way !== zip.stored && way !== zip.deflated)
    throw refused(called(name), `packing method ${way}`, 'stored (0) or deflated (8)');
  if ((way === zip.stored && packed !== size) || at + zip.local.length + packed > room)
    throw refused(called(name), 'a place or a length that does not fit', 'a whole file');
  return {
    name,
    size,
    bytes: async () => {
      // Held to the limits before a byte of it is fetched.
      const most = Math.max(archiveLimits.photo_bytes, archiveLimits.job_bytes);
      if (size > most || packed > most + 65_536)
        throw refused(called(name), `${Math.max(size, packed)} bytes`, `at most ${most} bytes`);
      const head = await piece(handle, at, zip.local.length);
      if (head.length < zip.local.length || head.readUInt32LE(0) !== zip.local.mark)
        throw refused(called(name), 'nothing where the directory says it is', 'a whole file');
      const skip = zip.local.length + head.readUInt16LE(26) + head.readUInt16LE(28);
      const held = await piece(handle, at + skip, packed);
      const bytes = way === zip.stored ? held : await unpacked(held, size, name);
      if (bytes.length !== size || (await crc32(bytes)) !== crc)
        throw refused(
          called(name),
          'bytes that are not those the archive was made of',
          'a whole file: this one is damaged',
        );
      return bytes;
    },
  };
}

/** Never more than `size`, whatever is packed in it. */
async function unpacked(held: Buffer, size: number, name: string): Promise<Buffer> {
  try {
    return await inflated(held, { maxOutputLength: Math.max(1, size) });
  } catch {
    throw refused(
      called(name),
      'packed bytes that cannot be unpacked to the length they say',
      'a whole file',
    );
  }
}
