import { webcrypto } from 'node:crypto';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { photoFormat } from './format.ts';

/** Whether a text is a photo's name: a SHA-256 in lower-case hex. */
export const isHash = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);

/** Off this thread: a photo's hash must not hold up whoever else asks. */
export const nameOf: PhotoStore['nameOf'] = async (bytes) => ({
  hash: Buffer.from(await webcrypto.subtle.digest('SHA-256', bytes as BufferSource)).toString('hex'),
  format: photoFormat(bytes),
});
