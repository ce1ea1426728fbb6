import type { Picture } from './picture.ts';
import { readPrint } from './read-print.ts';

/** A print of round spots in rows, 5 mm apart, that fills its picture: 10 pixels a mm, with some grain. */
export function smallPrint(side_mm: number): { readonly picture: Picture; readonly spots: number } {
  const pitch_px = 50;
  const radius_px = 12;
  const side = 10 * side_mm;
  const rgb = new Uint8Array(3 * side * side);
  let state = 1;
  for (let v = 0, o = 0; v < side; v++)
    for (let u = 0; u < side; u++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const light = 140 + (state >>> 24) / 16;
      const far = Math.hypot((u % pitch_px) - pitch_px / 2, (v % pitch_px) - pitch_px / 2);
      const isBlue = far < radius_px;
      rgb[o++] = isBlue ? 0.26 * light : light;
      rgb[o++] = isBlue ? 0.4 * light : light;
      rgb[o++] = isBlue ? 0.85 * light : 0.97 * light;
    }
  return { picture: { width_px: side, height_px: side, rgb }, spots: Math.floor(side / pitch_px) ** 2 };
}

const side_mm = 20;
/** Fewer leave loops uncompiled; more cost what they save. */
const turns = 6;
let isReady = false;

/**
 * Has the reader's loops compiled, by reading a small made-up print some times; once in a process, afterwards it returns at
 * once. A first photo that is read without it takes about twice as long, since its loops run uncompiled at first. To be called
 * where there is a wait anyway, as while a photo is decoded.
 */
export function madeReady(): void {
  if (isReady) return;
  isReady = true;
  const { picture } = smallPrint(side_mm);
  const far = picture.width_px - 1;
  const corners = [
    { x: 0, y: 0 },
    { x: far, y: 0 },
    { x: far, y: far },
    { x: 0, y: far },
  ] as const;
  for (let turn = 0; turn < turns; turn++)
    readPrint({ picture, corners, size: { length_mm: side_mm, width_mm: side_mm } });
}
