import { Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import type { ArchivePart } from '../../shop/archive/archive.ts';

/** 1 January 1980, the first day that ZIP knows: the same job gives the same bytes. */
const firstDay = new Date(1980, 0, 1);

/**
 * Parts as a ZIP file within ISO/IEC 21320-1 (document container files), piece by piece: one part at a time is fetched, and let go
 * when it is out. Photos are packed already, so nothing is deflated. The same parts give the same bytes.
 */
export function zipOf(parts: readonly ArchivePart[]): AsyncIterable<Uint8Array> {
  const file = new ZipFile();
  for (const part of parts)
    file.addReadStreamLazy(
      part.name,
      { compress: false, mtime: firstDay, forceDosTimestamp: true },
      (hand) => {
        part.bytes().then(
          (bytes) => hand(null, Readable.from([bytes])),
          (failure: unknown) => hand(failure, Readable.from([])),
        );
      },
    );
  const out = file.outputStream as Readable;
  // A part that cannot be fetched ends the whole archive: whoever takes it in hears of it and keeps nothing.
  file.once('error', (failure) =>
    out.destroy(failure instanceof Error ? failure : new Error(String(failure))),
  );
  file.end();
  return out;
}
