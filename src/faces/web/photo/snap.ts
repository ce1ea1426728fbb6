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

/** Wider than this part of the shorter side next to it, the snapper takes the other edge for this one. */
const mostOfSide = 0.4;

/**
 * The corner pulled to the surface's own near it, on the photo's pixels; left where it is when none is clear. Where nothing is found
 * from there it is tried from a little inside the figure and a little outside, and in a narrower strip: a thumb misses by more than
 * the snapper looks, and least of all is found from the bench beside the casting.
 */
export function snapped(image: HTMLImageElement, corners: Corners, k: number, radius_px: number): PlacePx {
  const near = corners[k]!;
  const [before, next] = [corners[(k + 3) % 4]!, corners[(k + 1) % 4]!];
  const far = (a: PlacePx, b: PlacePx) => Math.hypot(a.x - b.x, a.y - b.y);
  const reach = Math.min(radius_px, Math.max(18, mostOfSide * Math.min(far(before, near), far(next, near))));
  const { picture, left, top } = cropped(image, near, alongSides + 3 * reach + 40);
  const shifted = ({ x, y }: PlacePx): PlacePx => ({ x: x - left, y: y - top });
  const neighbours = [shifted(before), shifted(next)] as const;
  // Along both sides by as much: the figure's inside, however narrow it is.
  const inward = [before, next].map((p) => ({
    x: (p.x - near.x) / far(p, near),
    y: (p.y - near.y) / far(p, near),
  }));
  const start = (by: number): PlacePx =>
    shifted({
      x: near.x + by * (inward[0]!.x + inward[1]!.x),
      y: near.y + by * (inward[0]!.y + inward[1]!.y),
    });
  for (const by of [0, 0.6, -0.4])
    for (const wide of [1, 0.5]) {
      const from = start(by * reach);
      const at = snapCorner(picture, from, wide * reach, neighbours);
      const found = { x: at.x + left, y: at.y + top };
      if ((at.x !== from.x || at.y !== from.y) && far(found, near) <= 1.2 * reach) return found;
    }
  return near;
}
