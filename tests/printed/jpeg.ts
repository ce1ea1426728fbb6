import sharp from 'sharp';
import type { Picture } from '../../src/core/print/picture.ts';

/** The picture as a camera would write it to a file. */
export async function jpegOf({ width_px, height_px, rgb }: Picture, quality: number): Promise<Buffer> {
  return sharp(rgb, { raw: { width: width_px, height: height_px, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();
}

/** A file's pixels, turned as it says. */
export async function pictureIn(file: Buffer | string): Promise<Picture> {
  const { data, info } = await sharp(file)
    .rotate()
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width_px: info.width, height_px: info.height, rgb: new Uint8Array(data) };
}

/** Written at this quality and read again: blocks, and colour at half resolution. */
export async function throughJpeg<Taken extends { readonly picture: Picture }>(
  taken: Taken,
  quality: number,
): Promise<Taken> {
  return { ...taken, picture: await pictureIn(await jpegOf(taken.picture, quality)) };
}
