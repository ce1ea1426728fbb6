import { open } from 'node:fs/promises';
import { buffer } from 'node:stream/consumers';
import { crc32 } from 'node:zlib';
import { type Entry, openPromise, type ZipFile } from 'yauzl';
import { BadInput } from '../../contract/refusal.ts';
import { type ArchiveFile, archiveLimits, type OpenArchive } from '../../shop/archive/archive.ts';

const refused = (path: string, found: string, expected: string): BadInput =>
  new BadInput([{ path: path.slice(0, 100), found, expected }]);

const broken = (found: string): BadInput =>
  refused('file', found, 'a whole ZIP file, as a job is exported with its photos');

/** How a file begins: with its first file, or with the directory where it holds none (APPNOTE 4.3.7, 4.3.16). */
const marks = [0x04034b50, 0x06054b50];

/** Whether a file begins as a ZIP file does. */
export async function isZip(path: string): Promise<boolean> {
  const handle = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(4), 0, 4, 0);
    return bytesRead === 4 && marks.includes(buffer.readUInt32LE());
  } finally {
    await handle.close();
  }
}

/**
 * Opens a ZIP file by its directory. Only what the directory lists is ever read, and of each no more than it says.
 * @throws BadInput  naming `file`, or a file in it: cut off, encrypted, in another way of packing, one name twice
 */
export async function openZip(path: string): Promise<OpenArchive> {
  const zip = await openPromise(path, { lazyEntries: true, autoClose: false, strictFileNames: true }).catch(
    told,
  );
  const close = async () => zip.close();
  try {
    return { files: await listed(zip), close };
  } catch (failure) {
    await close();
    throw failure;
  }
}

/** What the library found of the whole file, in our words. */
function told(failure: unknown): never {
  const code = (failure as NodeJS.ErrnoException).code;
  if (failure instanceof BadInput || code !== undefined) throw failure;
  const said = failure instanceof Error ? failure.message : String(failure);
  throw broken(
    /not found|EOF/.test(said)
      ? 'no directory at its end: it is cut off'
      : `a directory that is damaged: ${said}`,
  );
}

async function listed(zip: ZipFile): Promise<ArchiveFile[]> {
  if (zip.fileSize > archiveLimits.bytes) throw broken(`${zip.fileSize} bytes`);
  if (zip.entryCount > archiveLimits.files) throw broken(`${zip.entryCount} files`);
  const files = new Map<string, ArchiveFile>();
  try {
    for await (const entry of zip.eachEntry()) {
      const name = entry.fileName;
      if (files.has(name)) throw refused(name, 'one name twice', 'each file once');
      if (entry.isEncrypted()) throw refused(name, 'a file that is encrypted', 'one that can be read');
      if (!entry.canDecodeFileData())
        throw refused(name, `packing method ${entry.compressionMethod}`, 'stored (0) or deflated (8)');
      files.set(name, { name, size: entry.uncompressedSize, bytes: () => unpacked(zip, entry) });
    }
  } catch (failure) {
    told(failure);
  }
  return [...files.values()];
}

/** The whole of one file: never more than the directory says, which is held to the limits before a byte is fetched. */
async function unpacked(zip: ZipFile, entry: Entry): Promise<Buffer> {
  const { fileName: name, uncompressedSize: size, compressedSize: packed } = entry;
  const most = Math.max(archiveLimits.photo_bytes, archiveLimits.job_bytes);
  if (size > most || packed > most + 65_536)
    throw refused(name, `${Math.max(size, packed)} bytes`, `at most ${most} bytes`);
  let bytes: Buffer;
  try {
    bytes = await buffer(await zip.openReadStreamPromise(entry));
  } catch (failure) {
    if ((failure as NodeJS.ErrnoException).syscall !== undefined) throw failure;
    throw refused(name, 'packed bytes that cannot be unpacked to the length they say', 'a whole file');
  }
  // The library checks lengths and leaves this sum to us.
  if (crc32(bytes) !== entry.crc32)
    throw refused(
      name,
      'bytes that are not those the archive was made of',
      'a whole file: this one is damaged',
    );
  return bytes;
}
