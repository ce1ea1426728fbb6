/**
 * What is used of ZIP: the subset that ISO/IEC 21320-1 (document container files) lays down. Files stored as they are or deflated,
 * in one volume, with names in UTF-8; no encryption, no 64-bit extension. Photos are packed already, so nothing is deflated here.
 * Numbers are little-endian; the layouts are those of the ZIP application note (APPNOTE), 4.3.
 */
export const zip = {
  /** Before each file: signature and length without the name. */
  local: { mark: 0x04034b50, length: 30 },
  /** In the directory at the end. */
  entry: { mark: 0x02014b50, length: 46 },
  /** Where the directory is. */
  end: { mark: 0x06054b50, length: 22 },
  stored: 0,
  deflated: 8,
  /** Bit 11 of the flags: the name is UTF-8; bit 0: encrypted. */
  utf8: 0x0800,
  encrypted: 0x0001,
  version: 20,
  /** 1 January 1980, the first day it knows: the same job gives the same bytes. */
  date: 0x0021,
  /** Stands where the 64-bit extension has the number. */
  elsewhere: 0xffffffff,
} as const;

const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** So much is summed before others get their turn: a few milliseconds. */
const stride = 1 << 20;

/** CRC-32 as ISO 3309 and ZIP have it, in strides between which others get their turn. */
export async function crc32(bytes: Uint8Array): Promise<number> {
  let c = 0xffffffff;
  for (let from = 0; from < bytes.length; from += stride) {
    if (from > 0) await new Promise<void>((done) => setImmediate(done));
    const to = Math.min(bytes.length, from + stride);
    for (let i = from; i < to; i++) c = table[(c ^ bytes[i]!) & 0xff]! ^ (c >>> 8);
  }
  return (c ^ 0xffffffff) >>> 0;
}
