import sharp from 'sharp';
import { photoLimits } from '../../shop/print/photo.ts';

/** Enough for a third of a page at 400 dots an inch. */
const most_px = 1000;

/** A photo as paper needs it: upright, no larger than it can be seen, as JPEG. */
export async function paperPhoto(bytes: Uint8Array) {
  const { data, info } = await sharp(bytes, {
    limitInputPixels: photoLimits.pixels,
    autoOrient: true,
    failOn: 'error',
  })
    .resize(most_px, most_px, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: 78 })
    .toBuffer({ resolveWithObject: true });
  return { jpeg: new Uint8Array(data), width_px: info.width, height_px: info.height };
}
