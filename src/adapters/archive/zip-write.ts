import type { ArchivePart } from '../../shop/archive/archive.ts';
import { crc32, zip } from './zip-form.ts';

interface Written {
  readonly name: Buffer;
  readonly crc: number;
  readonly size: number;
  readonly at: number;
}

/** What the header before a file and its line in the directory have in common, from "version needed" on. */
function common({ name, crc, size }: Omit<Written, 'at'>): Buffer {
  const form = Buffer.alloc(26);
  form.writeUInt16LE(zip.version, 0);
  form.writeUInt16LE(zip.utf8, 2);
  form.writeUInt16LE(zip.stored, 4);
  form.writeUInt16LE(0, 6);
  form.writeUInt16LE(zip.date, 8);
  form.writeUInt32LE(crc, 10);
  form.writeUInt32LE(size, 14);
  form.writeUInt32LE(size, 18);
  form.writeUInt16LE(name.length, 22);
  return form;
}

const marked = (mark: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(mark);
  return bytes;
};

/** A file's line in the directory. */
function line(file: Written): Buffer {
  const made = Buffer.alloc(2);
  made.writeUInt16LE(zip.version);
  const rest = Buffer.alloc(14);
  rest.writeUInt32LE(file.at, 10);
  return Buffer.concat([marked(zip.entry.mark), made, common(file), rest, file.name]);
}

/** Parts as a ZIP file, piece by piece: one part at a time is fetched, and let go when it is out. The same parts give the same bytes. */
export async function* zipOf(parts: readonly ArchivePart[]): AsyncGenerator<Uint8Array> {
  const written: Written[] = [];
  let at = 0;
  for (const part of parts) {
    const bytes = await part.bytes();
    const file = { name: Buffer.from(part.name), crc: await crc32(bytes), size: bytes.length, at };
    const head = Buffer.concat([marked(zip.local.mark), common(file), file.name]);
    yield head;
    yield bytes;
    at += head.length + bytes.length;
    written.push(file);
  }
  const directory = Buffer.concat(written.map(line));
  const end = Buffer.alloc(zip.end.length);
  end.writeUInt32LE(zip.end.mark, 0);
  end.writeUInt16LE(written.length, 8);
  end.writeUInt16LE(written.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  yield Buffer.concat([directory, end]);
}
