import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../src/adapters/photo/decode.ts';
import { printAsk } from '../../src/contract/print.ts';
import { BadInput } from '../../src/contract/refusal.ts';
import { readPhoto } from '../../src/shop/print/read-photo.ts';
import { printedPhoto } from '../fixture/printed-photo.ts';

/** Numbers from 0 to 1, the same in every run (Park and Miller 1988: multiplier 16807, modulus 2³¹ − 1). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16_807 * state) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** One of the ways files go wrong: bytes changed, lost, doubled, put in, cut off, or a length field blown up. */
function spoiled(whole: Buffer, next: () => number): Buffer {
  const at = () => Math.floor(next() * whole.length);
  const out = Buffer.from(whole);
  switch (Math.floor(next() * 6)) {
    case 0:
      for (let k = 1 + Math.floor(next() * 20); k > 0; k--) out[at()] = Math.floor(next() * 256);
      return out;
    case 1: {
      // The head decides most: spoil only that.
      for (let k = 1 + Math.floor(next() * 4); k > 0; k--)
        out[Math.floor(next() * 60)] = Math.floor(next() * 256);
      return out;
    }
    case 2:
      return out.subarray(0, at());
    case 3: {
      const [a, b] = [at(), at()].sort((x, y) => x - y) as [number, number];
      return Buffer.concat([out.subarray(0, a), out.subarray(b)]);
    }
    case 4: {
      const a = at();
      return Buffer.concat([out.subarray(0, a), out.subarray(Math.max(0, a - 200), a), out.subarray(a)]);
    }
    default: {
      out.writeUInt32BE(next() < 0.5 ? 0xffff_ffff : 0x7fff_ffff, Math.min(at(), out.length - 4));
      return out;
    }
  }
}

describe('files that are spoiled', () => {
  it('a thousand of them are read or refused by name; the process lives and its memory is bounded', async () => {
    const photo = sharp(await printedPhoto()).resize(240, 160);
    const sound = await Promise.all([
      photo.clone().jpeg({ quality: 85 }).toBuffer(),
      photo
        .clone()
        .jpeg({ progressive: true })
        .withExif({ IFD0: { ImageDescription: 'a print' } })
        .toBuffer(),
      photo.clone().png().toBuffer(),
      photo.clone().webp().toBuffer(),
      photo.clone().tiff({ compression: 'lzw' }).toBuffer(),
    ]);
    const asked = printAsk({ corners: '13,14 227,19 226,130 16,125', size: '20x10', zones: 2 });
    const next = numbers(2_031);
    const before_bytes = process.memoryUsage().rss;
    let most_bytes = 0;
    const ended = { read: 0, refused: 0 };
    for (let k = 0; k < 1000; k++) {
      const bytes = spoiled(sound[k % sound.length]!, next);
      try {
        const reading = await readPhoto(bytes, asked, decodePhoto);
        expect(reading.bearing_pct).toBeGreaterThanOrEqual(0);
        expect(reading.bearing_pct).toBeLessThanOrEqual(100);
        ended.read += 1;
      } catch (failure) {
        if (!(failure instanceof BadInput)) throw failure;
        expect(['photo', 'corners[0]', 'corners[1]', 'corners[2]', 'corners[3]']).toContain(
          failure.issues[0]!.path,
        );
        ended.refused += 1;
      }
      most_bytes = Math.max(most_bytes, process.memoryUsage().rss);
    }
    expect(ended.read + ended.refused).toBe(1000);
    // Both ends are reached, or the spoiling is too coarse or too fine to tell anything.
    expect(ended.read).toBeGreaterThan(100);
    expect(ended.refused).toBeGreaterThan(300);
    expect(most_bytes - before_bytes).toBeLessThan(400e6);
  });
});
