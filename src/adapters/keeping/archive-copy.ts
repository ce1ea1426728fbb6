import { createWriteStream } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { archivedWorkshop, workshopParts } from '../../shop/keeping/workshop-archive.ts';
import { type Readable, type ReadLedgers, workshopSum } from '../../shop/keeping/workshop-sum.ts';
import { openZip } from '../archive/zip-read.ts';
import { zipOf } from '../archive/zip-write.ts';

/** Writes a workshop's ledgers as an open archive, and opens what was written to be read. */
export async function archiveCopy(
  from: Readable,
  to: string,
): Promise<ReadLedgers & { readonly close: () => Promise<void> }> {
  const sum = await workshopSum(from);
  await pipeline(zipOf(workshopParts(from, sum, false)), createWriteStream(to));
  const { files, close } = await openZip(to);
  const { store } = await archivedWorkshop(files);
  return { ...store, close };
}
