import type { Corners, Picture, PlacePx } from '../../src/core/print/picture.ts';

interface Taken {
  readonly picture: Picture;
  readonly corners: Corners;
}

/** Turned a quarter clockwise: the same pixels, lying otherwise. */
export function quarterTurned<T extends Taken>(taken: T): T {
  const { width_px, height_px } = taken.picture;
  return moved(taken, height_px, width_px, (col, row) => [height_px - 1 - row, col]);
}

/** Left and right swapped, as a mirror shows it. */
export function mirrored<T extends Taken>(taken: T): T {
  const { width_px, height_px } = taken.picture;
  return moved(taken, width_px, height_px, (col, row) => [width_px - 1 - col, row]);
}

/** Only the surface and this many pixels about it. */
export function cropped<T extends Taken>(taken: T, margin_px: number): T {
  const { width_px, height_px, rgb } = taken.picture;
  const xs = taken.corners.map(({ x }) => x);
  const ys = taken.corners.map(({ y }) => y);
  const left = Math.max(0, Math.floor(Math.min(...xs)) - margin_px);
  const top = Math.max(0, Math.floor(Math.min(...ys)) - margin_px);
  const right = Math.min(width_px, Math.ceil(Math.max(...xs)) + margin_px + 1);
  const bottom = Math.min(height_px, Math.ceil(Math.max(...ys)) + margin_px + 1);
  const out = new Uint8Array(3 * (right - left) * (bottom - top));
  for (let row = top; row < bottom; row++)
    out.set(
      rgb.subarray(3 * (row * width_px + left), 3 * (row * width_px + right)),
      3 * (row - top) * (right - left),
    );
  return {
    ...taken,
    picture: { width_px: right - left, height_px: bottom - top, rgb: out },
    corners: cornersBy(taken.corners, ({ x, y }) => ({ x: x - left, y: y - top })),
  };
}

function moved<T extends Taken>(
  taken: T,
  width: number,
  height: number,
  to: (col: number, row: number) => readonly [number, number],
): T {
  const { width_px, height_px, rgb } = taken.picture;
  const out = new Uint8Array(rgb.length);
  for (let row = 0; row < height_px; row++)
    for (let col = 0; col < width_px; col++) {
      const [c, r] = to(col, row);
      const from = 3 * (row * width_px + col);
      const at = 3 * (r * width + c);
      out[at] = rgb[from]!;
      out[at + 1] = rgb[from + 1]!;
      out[at + 2] = rgb[from + 2]!;
    }
  return {
    ...taken,
    picture: { width_px: width, height_px: height, rgb: out },
    corners: cornersBy(taken.corners, ({ x, y }) => {
      const [c, r] = to(x, y);
      return { x: c, y: r };
    }),
  };
}

function cornersBy([a, b, c, d]: Corners, to: (place: PlacePx) => PlacePx): Corners {
  return [to(a), to(b), to(c), to(d)];
}
