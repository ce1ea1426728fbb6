import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { greyPng } from './grey-png.ts';
import { drawnOver, uprightJpeg } from './overlay.ts';

const photo = (orientation: number) =>
  sharp({ create: { width: 300, height: 200, channels: 3, background: '#808080' } })
    .withMetadata({ orientation })
    .jpeg()
    .toBuffer();

describe('drawings over photos', () => {
  it('lie where the photo is turned to, pixel for pixel', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="300" viewBox="-0.5 -0.5 200 300"><rect x="149.5" y="249.5" width="4" height="4" fill="#f00"/></svg>';
    const { data, info } = await sharp(await drawnOver(await photo(6), svg))
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([200, 300]);
    const at = (x: number, y: number) => [...data.subarray(3 * (200 * y + x), 3 * (200 * y + x) + 3)];
    for (const k of [0, 3]) expect(at(150 + k, 250 + k)).toEqual([255, 0, 0]);
    for (const k of [-1, 4]) expect(at(150 + k, 250)).toEqual([128, 128, 128]);
  });

  it('take a photo that is turned upright', async () => {
    const { width, height, orientation } = await sharp(await uprightJpeg(await photo(6))).metadata();
    expect([width, height, orientation ?? 1]).toEqual([200, 300, 1]);
  });

  it('a map comes back level by level', async () => {
    const levels = Uint8Array.from({ length: 35 * 21 }, (_, k) => k % 5);
    const png = await greyPng(35, 21, levels);
    expect(await sharp(png).metadata()).toMatchObject({ channels: 1, width: 35, height: 21 });
    expect([...(await sharp(png).toColourspace('b-w').raw().toBuffer())]).toEqual([...levels]);
  });
});
