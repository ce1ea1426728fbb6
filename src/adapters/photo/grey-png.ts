import sharp from 'sharp';

/** Levels 0 to 255, row by row, as a grey PNG: exact. */
export const greyPng = (width: number, height: number, levels: Uint8Array): Promise<Uint8Array> =>
  sharp(levels, { raw: { width, height, channels: 1 } })
    .toColourspace('b-w')
    .png({ compressionLevel: 6, palette: false })
    .toBuffer();
