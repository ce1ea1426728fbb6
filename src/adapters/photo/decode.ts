import sharp, { type Metadata, type Sharp, type SharpOptions } from 'sharp';
import { BadInput } from '../../contract/refusal.ts';
import { type DecodePhoto, type PhotoFormat, type PhotoHead, photoLimits } from '../../shop/print/photo.ts';
import { isAnimatedPng, photoFormat } from './format.ts';

// One picture at a time on one thread, and none kept afterwards: that bounds the memory.
sharp.concurrency(1);
sharp.cache(false);

const megapixels = photoLimits.pixels / 1e6;
const wanted = 'a JPEG, PNG, WebP or TIFF photo, or HEIF where it can be decoded';
/** Unpacking what is inside the limits takes well under a second; longer is a trap. */
const most_s = 20;

const refused = (found: string, expected: string): BadInput =>
  new BadInput([{ path: 'photo', found, expected }]);

function formatOf(bytes: Uint8Array): PhotoFormat {
  if (bytes.length === 0) throw refused('no bytes', wanted);
  if (bytes.length > photoLimits.bytes)
    throw refused(`more than ${photoLimits.bytes} bytes`, `at most ${photoLimits.bytes} bytes`);
  const format = photoFormat(bytes);
  if (format === undefined) throw refused('something that does not begin as a picture does', wanted);
  if (format === 'png' && isAnimatedPng(bytes)) throw animated();
  return format;
}

const animated = (): BadInput => refused('a moving picture, or several in one file', 'one still photo');

/** The decoder's own words, short and on one line. */
function reason(failure: unknown): string {
  const [first = ''] = String((failure as Error)?.message ?? failure).split('\n');
  return first.trim().slice(0, 120);
}

const opened = (bytes: Uint8Array, more: SharpOptions = {}): Sharp =>
  sharp(bytes, { limitInputPixels: photoLimits.pixels, autoOrient: true, ...more });

function headOf(format: PhotoFormat, data: Metadata): PhotoHead {
  const width = data.autoOrient?.width ?? data.width;
  const height = data.autoOrient?.height ?? data.height;
  const least = photoLimits.least_side_px;
  if (!(width >= least && height >= least))
    throw refused(`${width} × ${height} pixels`, `at least ${least} pixels a side`);
  if (width * height > photoLimits.pixels)
    throw refused(`${width} × ${height} pixels`, `at most ${megapixels} million pixels`);
  if ((data.pages ?? 1) > 1) throw animated();
  if (data.channels < 3 || data.space === 'b-w' || data.space === 'grey16') throw colourless();
  return { format, width_px: width, height_px: height };
}

const colourless = (): BadInput =>
  refused('a picture without colour', 'a colour photo: without colour, blue cannot be told from metal');

async function metadata(bytes: Uint8Array, format: PhotoFormat): Promise<Metadata> {
  try {
    // The head alone is read here, so that a huge picture is refused with its size.
    return await opened(bytes, { limitInputPixels: false }).metadata();
  } catch (failure) {
    throw unreadable(format, failure);
  }
}

/** What a phone that keeps HEIC is asked for. HEVC, which is what HEIC holds, is left to whoever has a licence for it. */
const asJpeg =
  'the photo as JPEG: in the phone’s settings for its camera, under formats, choose “most compatible” (or JPEG) and take it again, or export this one as JPEG and choose that';

function unreadable(format: PhotoFormat, failure: unknown): BadInput {
  const kind = format.toUpperCase();
  return format === 'heif'
    ? refused('a HEIC or HEIF photo, which cannot be unpacked here', asJpeg)
    : refused(`a ${kind} that is damaged or cut off (${reason(failure)})`, 'the whole photo, sent again');
}

/** 8-bit sRGB pixels: turned as EXIF says, colour profile, CMYK and 16 bits converted, see-through parts white. */
async function pixels(bytes: Uint8Array, hasAlpha: boolean, failOn: 'warning' | 'error') {
  let work = opened(bytes, { failOn });
  if (hasAlpha) work = work.flatten({ background: '#ffffff' });
  return await work
    .toColourspace('srgb')
    .timeout({ seconds: most_s })
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
}

/** Pixels are looked at in so many rounds, each evenly over the whole photo: a round or two tell of a coloured surface in grey surroundings. */
const rounds = 32;

/** Whether red, green and blue are the same throughout: a grey photo saved as colour. Stops where it has seen colour. */
function isGrey(rgb: Uint8Array): boolean {
  const enough = Math.max(16, rgb.length / 3e5);
  let coloured = 0;
  for (let round = 0; round < rounds; round++)
    for (let i = 3 * round; i < rgb.length; i += 3 * rounds) {
      const difference = rgb[i]! - rgb[i + 2]!;
      if ((difference > 3 || difference < -3) && ++coloured > enough) return false;
    }
  return true;
}

/** A photo decoded by sharp, with the limits of `photoLimits`. @throws BadInput  naming `photo` */
export const decodePhoto: DecodePhoto = async (bytes) => {
  const format = formatOf(bytes);
  const data = await metadata(bytes, format);
  const known = headOf(format, data);
  let damaged = false;
  let taken: Awaited<ReturnType<typeof pixels>>;
  try {
    taken = await pixels(bytes, data.hasAlpha, 'warning');
  } catch {
    // Some cameras write marks that a strict reader minds; what it can still unpack is taken, and said.
    damaged = true;
    try {
      taken = await pixels(bytes, data.hasAlpha, 'error');
    } catch (failure) {
      throw unreadable(format, failure);
    }
  }
  const { info, data: rgb } = taken;
  if (info.channels !== 3) throw colourless();
  if (isGrey(rgb)) throw colourless();
  return {
    ...known,
    width_px: info.width,
    height_px: info.height,
    picture: { width_px: info.width, height_px: info.height, rgb },
    damaged,
  };
};
