import { snapCorner } from '../../../core/print/find-snap.ts';
import type { Corners, Picture, PlacePx } from '../../../core/print/picture.ts';

/** So far along the sides the snapper looks, px. */
const alongSides = 600;

/** Part of a photo as pixels, and where it begins. */
function cropped(
  image: HTMLImageElement,
  middle: PlacePx,
  half: number,
): { picture: Picture; left: number; top: number } {
  const left = Math.max(0, Math.floor(middle.x - half));
  const top = Math.max(0, Math.floor(middle.y - half));
  const width_px = Math.max(1, Math.min(image.naturalWidth, Math.ceil(middle.x + half)) - left);
  const height_px = Math.max(1, Math.min(image.naturalHeight, Math.ceil(middle.y + half)) - top);
  const canvas = document.createElement('canvas');
  canvas.width = width_px;
  canvas.height = height_px;
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(image, left, top, width_px, height_px, 0, 0, width_px, height_px);
  const { data } = pen.getImageData(0, 0, width_px, height_px);
  const rgb = new Uint8ClampedArray(3 * width_px * height_px);
  for (let from = 0, to = 0; from < data.length; from += 4) {
    rgb[to++] = data[from]!;
    rgb[to++] = data[from + 1]!;
    rgb[to++] = data[from + 2]!;
  }
  return { picture: { width_px, height_px, rgb }, left, top };
}

/** The corner pulled to the surface's own near it, on the photo's pixels; left where it is when none is clear. */
export function snapped(image: HTMLImageElement, corners: Corners, k: number, radius_px: number): PlacePx {
  const near = corners[k]!;
  const { picture, left, top } = cropped(image, near, alongSides + 2 * radius_px + 40);
  const inside = ({ x, y }: PlacePx): PlacePx => ({ x: x - left, y: y - top });
  const at = snapCorner(picture, inside(near), radius_px, [
    inside(corners[(k + 3) % 4]!),
    inside(corners[(k + 1) % 4]!),
  ]);
  return { x: at.x + left, y: at.y + top };
}
