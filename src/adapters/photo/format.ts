import type { PhotoFormat } from '../../shop/print/photo.ts';

const text = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));

/** Brands of the still-picture kinds of ISO/IEC 23008-12 (HEIF) and of AV1 in it. */
const heifBrands = new Set(['heic', 'heix', 'heim', 'heis', 'mif1', 'avif', 'hevc', 'hevx', 'msf1', 'avis']);

/**
 * Which kind of picture these bytes are, by the first of them as the formats' standards lay down; undefined when of none that is taken.
 * Nothing else is handed to the decoder, so that no drawing language or document is ever opened.
 */
export function photoFormat(bytes: Uint8Array): PhotoFormat | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (text(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'png';
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP') return 'webp';
  const tiff = text(bytes, 0, 4);
  if (tiff === 'II*\0' || tiff === 'MM\0*') return 'tiff';
  if (text(bytes, 4, 8) === 'ftyp' && heifBrands.has(text(bytes, 8, 12))) return 'heif';
  return undefined;
}

/** Whether a PNG moves: it then has an `acTL` chunk before its first `IDAT` (PNG, third edition, 11.3.6.1). */
export function isAnimatedPng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 8 <= bytes.length; ) {
    const kind = text(bytes, at + 4, at + 8);
    if (kind === 'acTL') return true;
    if (kind === 'IDAT') return false;
    at += 12 + view.getUint32(at);
  }
  return false;
}
