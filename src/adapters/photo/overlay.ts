import sharp from 'sharp';
import { photoLimits } from '../../shop/print/photo.ts';

const upright = (photo: Uint8Array) =>
  sharp(photo, { limitInputPixels: photoLimits.pixels, autoOrient: true, failOn: 'error' });

/** A photo turned the way EXIF says, as JPEG. */
export const uprightJpeg = (photo: Uint8Array): Promise<Uint8Array> =>
  upright(photo).flatten({ background: '#ffffff' }).jpeg({ quality: 90 }).toBuffer();

/** A drawing as large as the photo laid over it, as PNG. */
export const drawnOver = (photo: Uint8Array, svg: string): Promise<Uint8Array> =>
  upright(photo)
    .composite([{ input: Buffer.from(svg) }])
    .png()
    .toBuffer();
