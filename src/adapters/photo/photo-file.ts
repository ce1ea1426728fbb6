import { open } from 'node:fs/promises';
import { photoLimits } from '../../shop/print/photo.ts';

/** A photo's bytes; of a file beyond the limit only as much as shows that it is. */
export async function photoFile(file: string): Promise<Uint8Array> {
  const handle = await open(file, 'r');
  try {
    const { size } = await handle.stat();
    if (size <= photoLimits.bytes) return await handle.readFile();
    const { buffer } = await handle.read({ buffer: Buffer.alloc(photoLimits.bytes + 1) });
    return buffer;
  } finally {
    await handle.close();
  }
}
