import { applied, composed, type Homography, pxPerMm, surfaceToPhoto } from '../core/print/homography.ts';
import type { Corners, PlaceMm, PlacePx, SurfaceSize } from '../core/print/picture.ts';

/** What of a photo is shown, and how large: the surface with room round it for words. */
export interface OverlayView {
  /** px on the screen. */
  readonly width: number;
  readonly height: number;
  /** Screen px a photo px. */
  readonly scale: number;
  /** Where the photo's first pixel's outer corner comes to lie, screen px. */
  readonly left: number;
  readonly top: number;
  /** Surface, mm → screen px. */
  readonly onScreen: Homography;
}

export interface ViewWish {
  readonly corners: Corners;
  readonly size: SurfaceSize;
  /** Room on the screen, px. */
  readonly width: number;
  readonly most_height: number;
  /** Least side of a square on the screen, px, and the square's, mm: where they need more, the view grows beyond the room. */
  readonly squares?: { readonly px: number; readonly mm: number };
}

/** Room beside the long sides for two rows of words, and at the ends, px. */
const beside = 64;
const atEnds = 14;

/** A view that holds the whole surface, its words beside its long sides. */
export function overlayView(wish: ViewWish): OverlayView {
  const { corners, size } = wish;
  const h = surfaceToPhoto(corners, size);
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const broad = Math.max(...xs) - Math.min(...xs);
  const tall = Math.max(...ys) - Math.min(...ys);
  const out = outward(h, size, 0, size.length_mm / 2);
  const room = {
    x: atEnds + Math.abs(out.x) * (beside - atEnds),
    y: atEnds + Math.abs(out.y) * (beside - atEnds),
  };
  const fit = Math.min((wish.width - 2 * room.x) / broad, (wish.most_height - 2 * room.y) / tall, 3);
  const { squares } = wish;
  const least = squares
    ? squares.px / (squares.mm * pxPerMm(h, { x: size.length_mm / 2, y: size.width_mm / 2 }))
    : 0;
  const scale = Math.max(fit, Math.min(least, 3));
  const width = Math.max(wish.width, Math.ceil(broad * scale + 2 * room.x));
  const height = Math.ceil(tall * scale + 2 * room.y);
  const middle = { x: Math.min(...xs) + broad / 2 + 0.5, y: Math.min(...ys) + tall / 2 + 0.5 };
  const left = width / 2 - middle.x * scale;
  const top = height / 2 - middle.y * scale;
  // Pixel centres are at whole numbers; the photo's outer corner lies half a pixel before the first.
  const toScreen: Homography = [scale, 0, left + scale / 2, 0, scale, top + scale / 2, 0, 0, 1];
  return { width, height, scale, left, top, onScreen: composed(toScreen, h) };
}

/** Unit direction on the screen or in the photo that leads off the surface over its side y = 0 or y = W, at x mm. */
export function outward(h: Homography, size: SurfaceSize, side: 0 | 1, x: number): PlacePx {
  const on = applied(h, { x, y: side * size.width_mm });
  const over = applied(h, { x, y: (1 - side) * size.width_mm });
  const far = Math.hypot(on.x - over.x, on.y - over.y);
  return { x: (on.x - over.x) / far, y: (on.y - over.y) / far };
}

/** A place on the screen so many px off the surface's long side. */
export function off(view: OverlayView, size: SurfaceSize, side: 0 | 1, x: number, px: number): PlacePx {
  const edge = applied(view.onScreen, { x, y: side * size.width_mm });
  const out = outward(view.onScreen, size, side, x);
  return { x: edge.x + out.x * px, y: edge.y + out.y * px };
}

export const onScreen = (view: OverlayView, place: PlaceMm): PlacePx => applied(view.onScreen, place);

/** A place on the screen, as it lies in the photo; pixel centres at whole numbers. */
export const inPhoto = ({ scale, left, top }: OverlayView, { x, y }: PlacePx): PlacePx => ({
  x: (x - left) / scale - 0.5,
  y: (y - top) / scale - 0.5,
});
