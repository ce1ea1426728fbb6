import type { Archives } from '../../shop/archive/archive.ts';
import { heldFile } from './held-file.ts';
import { openZip } from './zip-read.ts';
import { zipOf } from './zip-write.ts';

/** ZIP archives; what is sent is laid beside the workshop. */
export const zipArchives = (folder: string): Archives => ({
  packed: zipOf,
  open: openZip,
  hold: (stream) => heldFile(folder, stream),
});
