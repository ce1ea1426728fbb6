import type { Quad } from './find-regions.ts';
import { surfaceToPhoto } from './homography.ts';
import type { Corners, PlacePx, SurfaceSize } from './picture.ts';

/**
 * How far four corners are from being those of a rectangle of this size seen by a camera with square pixels and its axis
 * through the photo's middle: the angle's cosine or the sides' ratio's logarithm, whichever is worse, for the best focal
 * length from 0.65 to 3 times the photo's longer side. Tested column by column: K⁻¹ H has two columns of equal length at a right
 * angle (Zhang, A Flexible New Technique for Camera Calibration, 2000, section 2.3).
 */
export function shapeOff(corners: Corners, size: SurfaceSize, width_px: number, height_px: number): number {
  const h = surfaceToPhoto(corners, size);
  const x = (width_px - 1) / 2;
  const y = (height_px - 1) / 2;
  const long = Math.max(width_px, height_px);
  let least = Number.POSITIVE_INFINITY;
  for (let focal = 0.65 * long; focal <= 3 * long; focal *= 1.06) {
    const a = [(h[0] - x * h[6]) / focal, (h[3] - y * h[6]) / focal, h[6]] as const;
    const b = [(h[1] - x * h[7]) / focal, (h[4] - y * h[7]) / focal, h[7]] as const;
    const la = Math.hypot(...a);
    const lb = Math.hypot(...b);
    const cosine = Math.abs(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / (la * lb);
    least = Math.min(least, Math.max(cosine, Math.abs(Math.log(la / lb))));
  }
  return least;
}

/**
 * The corners in the order of the surface's: clockwise as seen, the first side along the length, begun at the corner nearest
 * the photo's top left of the two that this leaves. Which way the length runs is told by the shape where the two ways differ,
 * else by the longer side. The user may turn it.
 */
export function inOrder(quad: Quad, size: SurfaceSize, width_px: number, height_px: number): Corners {
  const ways: Corners[] = [0, 1].map((first) => startingAt(quad, first));
  const off = ways.map((corners) => shapeOff(corners, size, width_px, height_px));
  const clear = Math.abs(off[0]! - off[1]!) > 0.05;
  const firstLong = sides(ways[0]!) >= sides(ways[1]!) === size.length_mm >= size.width_mm;
  const way = (clear ? off[0]! < off[1]! : firstLong) ? 0 : 1;
  const starts = [startingAt(quad, way), startingAt(quad, way + 2)] as const;
  const far = (p: PlacePx) => Math.hypot(p.x, p.y);
  return far(starts[0][0]) <= far(starts[1][0]) ? starts[0] : starts[1];
}

function startingAt(quad: Quad, first: number): Corners {
  return [quad[first % 4]!, quad[(first + 1) % 4]!, quad[(first + 2) % 4]!, quad[(first + 3) % 4]!];
}

function sides([a, b, c, d]: Corners): number {
  return Math.hypot(b.x - a.x, b.y - a.y) + Math.hypot(d.x - c.x, d.y - c.y);
}
