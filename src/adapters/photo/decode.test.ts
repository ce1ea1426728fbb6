import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { BadInput } from '../../contract/refusal.ts';
import { decodePhoto } from './decode.ts';

const width = 96;
const height = 72;

/** Left half red, right half blue, a green square at the top left: tells which way a picture lies. */
function flag(): Buffer {
  const rgb = Buffer.alloc(3 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const colour = x < 24 && y < 24 ? [20, 180, 30] : x < width / 2 ? [200, 30, 20] : [20, 40, 190];
      rgb.set(colour, 3 * (y * width + x));
    }
  return rgb;
}
const made = (): Sharp => sharp(flag(), { raw: { width, height, channels: 3 } });
const jpeg = (): Promise<Buffer> => made().jpeg({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer();

async function colour(bytes: Uint8Array, x: number, y: number): Promise<number[]> {
  const { picture } = await decodePhoto(bytes);
  return [...picture.rgb.subarray(3 * (y * picture.width_px + x), 3 * (y * picture.width_px + x) + 3)];
}

function near(seen: readonly number[], wanted: readonly number[], within: number): void {
  for (const [k, value] of seen.entries()) expect(Math.abs(value - wanted[k]!)).toBeLessThanOrEqual(within);
}

async function refusal(bytes: Uint8Array): Promise<string> {
  try {
    await decodePhoto(bytes);
  } catch (failure) {
    expect(failure).toBeInstanceOf(BadInput);
    const [issue] = (failure as BadInput).issues;
    expect(issue!.path).toBe('photo');
    return `${issue!.found}; ${issue!.expected}`;
  }
  throw new Error('it was taken');
}

/** A PNG's chunk with its check value as the standard asks (CRC-32, PNG third edition, annex D). */
function chunk(kind: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  let crc = 0xffffffff;
  for (const byte of body) {
    crc ^= byte;
    for (let k = 0; k < 8; k++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  const out = Buffer.alloc(12 + data.length);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(~crc >>> 0, 8 + data.length);
  return out;
}

/** A PNG that says it is this large and has next to nothing in it. */
function hollowPng(wide: number, high: number): Buffer {
  const ihdr = Buffer.alloc(13);
  ihdr.writeUInt32BE(wide, 0);
  ihdr.writeUInt32BE(high, 4);
  ihdr.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
  return Buffer.concat([
    signature,
    chunk('IHDR', ihdr),
    chunk('IDAT', Buffer.from('789c030000000001', 'hex')),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('a photo decoded', () => {
  it('JPEG, PNG, WebP, TIFF and AVIF give the same colours, 8 bits each', async () => {
    const files = {
      jpeg: await jpeg(),
      png: await made().png().toBuffer(),
      webp: await made().webp({ lossless: true }).toBuffer(),
      tiff: await made().tiff({ compression: 'lzw' }).toBuffer(),
      heif: await made().avif({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer(),
    };
    for (const [format, bytes] of Object.entries(files)) {
      const { picture, ...known } = await decodePhoto(bytes);
      expect(known).toEqual({ format, width_px: width, height_px: height, damaged: false });
      expect(picture.rgb.length).toBe(3 * width * height);
      near(await colour(bytes, 80, 60), [20, 40, 190], 12);
    }
  });

  // What each orientation does is laid down in the Exif standard (CIPA DC-008), tag 0x0112.
  it.each([
    [1, 96, 72, [10, 10]],
    [2, 96, 72, [85, 10]],
    [3, 96, 72, [85, 61]],
    [4, 96, 72, [10, 61]],
    [5, 72, 96, [10, 10]],
    [6, 72, 96, [61, 10]],
    [7, 72, 96, [61, 85]],
    [8, 72, 96, [10, 85]],
  ])('EXIF orientation %i is turned', async (orientation, wide, high, [x, y]) => {
    const bytes = await made().withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer();
    const { picture, ...known } = await decodePhoto(bytes);
    expect([picture.width_px, picture.height_px]).toEqual([wide, high]);
    expect([known.width_px, known.height_px]).toEqual([wide, high]);
    near(await colour(bytes, x!, y!), [20, 180, 30], 12);
  });

  it('16 bits, and a see-through layer: 8-bit colour, see-through is white', async () => {
    const deep = await made().toColourspace('rgb16').png().toBuffer();
    expect((await sharp(deep).metadata()).depth).toBe('ushort');
    near(await colour(deep, 80, 60), [20, 40, 190], 1);
    const rgba = Buffer.alloc(4 * width * height, 0);
    for (let i = 0; i < width * height; i++)
      rgba.set([200, 30, 20, i < (width * height) / 2 ? 255 : 0], 4 * i);
    const clear = await sharp(rgba, { raw: { width, height, channels: 4 } })
      .png()
      .toBuffer();
    expect(await colour(clear, 5, 5)).toEqual([200, 30, 20]);
    expect(await colour(clear, 5, height - 1)).toEqual([255, 255, 255]);
  });

  it('CMYK becomes the colours it stands for', async () => {
    const bytes = await made().toColourspace('cmyk').jpeg({ quality: 95 }).toBuffer();
    expect((await sharp(bytes).metadata()).space).toBe('cmyk');
    const [red, , blue] = await colour(bytes, 80, 60);
    expect(blue!).toBeGreaterThan(red! + 60);
    const [redLeft, , blueLeft] = await colour(bytes, 30, 60);
    expect(redLeft!).toBeGreaterThan(blueLeft! + 60);
  });

  it('another colour space of its own profile is brought to sRGB', async () => {
    const wide = await made().withIccProfile('p3').png().toBuffer();
    const raw = await sharp(wide, { ignoreIcc: true }).raw().toBuffer();
    // The profile narrows the numbers that are stored; decoded, they stand for the same colour again.
    expect(raw[3 * (60 * width + 30)]!).toBeLessThan(195);
    near(await colour(wide, 30, 60), [200, 30, 20], 3);
  });

  it('stray bytes that some cameras leave behind are taken, and said', async () => {
    const whole = await jpeg();
    const stray = Buffer.concat([whole.subarray(0, 20), Buffer.alloc(40, 0x11), whole.subarray(20)]);
    expect(await decodePhoto(stray)).toMatchObject({ damaged: true, width_px: width });
    near(await colour(stray, 80, 60), [20, 40, 190], 12);
  });

  it('a large EXIF block does no harm', async () => {
    const bytes = await made()
      .withExif({ IFD0: { ImageDescription: 'x'.repeat(60_000) } })
      .jpeg()
      .toBuffer();
    expect(bytes.length).toBeGreaterThan(60_000);
    expect((await decodePhoto(bytes)).damaged).toBe(false);
  });
});

describe('what is no photo of a print is refused, with the reason', () => {
  it.each<[string, () => Promise<Uint8Array> | Uint8Array, RegExp]>([
    ['nothing', () => new Uint8Array(0), /no bytes/],
    ['text', () => Buffer.from('corners: 1,2 3,4 and so on\n'.repeat(50)), /does not begin as a picture/],
    [
      'a drawing',
      () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'),
      /JPEG/,
    ],
    ['three bytes of JPEG', () => Buffer.from([0xff, 0xd8, 0xff]), /damaged or cut off/],
    ['more bytes than are taken', () => Buffer.alloc(40_000_001, 0xff), /more than 40000000 bytes/],
    ['no pixels', () => hollowPng(0, 0), /JPEG|damaged|pixels/],
    ['no width', () => hollowPng(0, 4000), /damaged|pixels/],
    ['a size that is claimed only', () => hollowPng(60_000, 60_000), /60000 × 60000 pixels; at most 60/],
    ['a claimed size within bounds', () => hollowPng(6_000, 6_000), /damaged or cut off/],
    ['a thumbnail', () => made().resize(32, 24).png().toBuffer(), /32 × 24 pixels; at least 64/],
    ['a grey JPEG', async () => made().greyscale().jpeg().toBuffer(), /blue cannot be told from metal/],
    [
      'grey saved as colour',
      async () =>
        sharp(await made().greyscale().png().toBuffer())
          .toColourspace('srgb')
          .png()
          .toBuffer(),
      /blue cannot be told from metal/,
    ],
    ['16-bit grey', async () => made().toColourspace('grey16').png().toBuffer(), /without colour/],
    ['a GIF', async () => made().gif().toBuffer(), /does not begin as a picture/],
  ])('%s', async (_, make, words) => {
    expect(await refusal(await make())).toMatch(words);
  });

  it('HEIC, which holds HEVC, says what to do on the phone', async () => {
    // An AVIF file whose brand and item type (ISO/IEC 23008-12, ISO/IEC 14496-12) say that HEVC is in it.
    const heic = await made().avif().toBuffer();
    heic.write('heic', heic.indexOf('avif'), 'latin1');
    heic.write('hvc1', heic.indexOf('av01'), 'latin1');
    expect(await refusal(heic)).toMatch(
      /^a HEIC or HEIF photo, which cannot be unpacked here; the photo as JPEG: .*“most compatible”/,
    );
  });

  it('a moving WebP, a TIFF of several pages, a moving PNG', async () => {
    const frames = sharp([await made().png().toBuffer(), await made().negate().png().toBuffer()], {
      join: { animated: true },
    });
    expect(await refusal(await frames.clone().webp().toBuffer())).toMatch(/moving/);
    expect(await refusal(await frames.clone().tiff().toBuffer())).toMatch(/several in one file/);
    const still = await made().png().toBuffer();
    const moving = Buffer.concat([
      still.subarray(0, 33),
      chunk('acTL', Buffer.from('0000000200000000', 'hex')),
      still.subarray(33),
    ]);
    expect(await refusal(moving)).toMatch(/moving/);
  });

  it('a photo that breaks off, at any place', async () => {
    for (const bytes of [await jpeg(), await made().png().toBuffer(), await made().webp().toBuffer()])
      for (const share of [0.1, 0.5, 0.9])
        expect(await refusal(bytes.subarray(0, Math.floor(share * bytes.length)))).toMatch(/cut off/);
  });
});
