import { leastSquares } from '../math/least-squares.ts';
import type { Corners, PlaceMm, PlacePx, SurfaceSize } from './picture.ts';

/** A plane's projection, 3 × 3 row by row, last element 1: (x, y) ↦ (h0 x + h1 y + h2, h3 x + h4 y + h5) / (h6 x + h7 y + 1). */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

interface Place {
  readonly x: number;
  readonly y: number;
}

export function applied(h: Homography, { x, y }: Place): Place {
  const w = h[6] * x + h[7] * y + h[8];
  return { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w };
}

/**
 * The projection from the surface, mm, to the photo, px, that takes the surface's corners to theirs.
 *
 * Closed form from four points: Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), section 2.2.3.
 * @throws RangeError  three of the corners lie on a line
 */
export function surfaceToPhoto(corners: Corners, { length_mm, width_mm }: SurfaceSize): Homography {
  const [a, b, c, d] = corners;
  const dx1 = b.x - c.x;
  const dx2 = d.x - c.x;
  const dx3 = a.x - b.x + c.x - d.x;
  const dy1 = b.y - c.y;
  const dy2 = d.y - c.y;
  const dy3 = a.y - b.y + c.y - d.y;
  const det = dx1 * dy2 - dx2 * dy1;
  const reach = Math.hypot(dx1, dy1) * Math.hypot(dx2, dy2);
  if (!(Math.abs(det) > 1e-9 * reach))
    throw new RangeError('three corners on a line; expected four corners of a face');
  const g = (dx3 * dy2 - dx2 * dy3) / det;
  const h = (dx1 * dy3 - dx3 * dy1) / det;
  return [
    (b.x - a.x + g * b.x) / length_mm,
    (d.x - a.x + h * d.x) / width_mm,
    a.x,
    (b.y - a.y + g * b.y) / length_mm,
    (d.y - a.y + h * d.y) / width_mm,
    a.y,
    g / length_mm,
    h / width_mm,
    1,
  ];
}

/**
 * The other way round.
 * @throws RangeError  the projection flattens the plane to a line
 */
export function inverted(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h;
  const adjugate = [
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ];
  const last = adjugate[8]!;
  if (!(Math.abs(last) > 0))
    throw new RangeError('the projection flattens the plane; expected four corners of a face');
  return adjugate.map((one) => one / last) as unknown as Homography;
}

/** One after the other: first `inner`, then `outer`. */
export function composed(outer: Homography, inner: Homography): Homography {
  const product = Array.from({ length: 9 }, (_, k) => {
    const row = 3 * Math.floor(k / 3);
    const col = k % 3;
    return outer[row]! * inner[col]! + outer[row + 1]! * inner[col + 3]! + outer[row + 2]! * inner[col + 6]!;
  });
  return product.map((one) => one / product[8]!) as unknown as Homography;
}

/** Photo pixels along one mm of the surface there: the lesser of its two main directions. */
export function pxPerMm(h: Homography, at: PlaceMm): number {
  const { x, y } = applied(h, at);
  const w = h[6] * at.x + h[7] * at.y + h[8];
  const a = (h[0] - h[6] * x) / w;
  const b = (h[1] - h[7] * x) / w;
  const c = (h[3] - h[6] * y) / w;
  const d = (h[4] - h[7] * y) / w;
  // Singular values of [[a, b], [c, d]].
  const sum = a * a + b * b + c * c + d * d;
  const det = a * d - b * c;
  return Math.sqrt(Math.max(0, (sum - Math.sqrt(Math.max(0, sum * sum - 4 * det * det))) / 2));
}

/**
 * The projection that takes `from` to `to` best, by least squares of the linear form on points moved and scaled to about 1
 * (Hartley, In Defense of the Eight-Point Algorithm, 1997), refined by Gauss-Newton on the distances in `to`.
 * @throws RangeError  fewer than five pairs; from four, `surfaceToPhoto` is exact
 */
export function fitted(from: readonly PlaceMm[], to: readonly PlacePx[]): Homography {
  if (from.length < 5 || from.length !== to.length)
    throw new RangeError(`${from.length} and ${to.length} places; expected five pairs or more`);
  const source = scaling(from);
  const target = scaling(to);
  const a = from.map((p) => applied(source, p));
  const b = to.map((p) => applied(target, p));
  const rows: number[][] = [];
  const right: number[] = [];
  a.forEach(({ x, y }, i) => {
    const { x: u, y: v } = b[i]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.push(u, v);
  });
  let h = [...leastSquares(rows, right).coefficients, 1] as unknown as Homography;
  for (let step = 0; step < 5; step++) {
    const jacobian: number[][] = [];
    const off: number[] = [];
    a.forEach((p, i) => {
      const { x, y } = p;
      const q = applied(h, p);
      const w = h[6] * x + h[7] * y + h[8];
      jacobian.push(
        [x / w, y / w, 1 / w, 0, 0, 0, (-q.x * x) / w, (-q.x * y) / w],
        [0, 0, 0, x / w, y / w, 1 / w, (-q.y * x) / w, (-q.y * y) / w],
      );
      off.push(b[i]!.x - q.x, b[i]!.y - q.y);
    });
    const change = leastSquares(jacobian, off).coefficients;
    h = h.map((one, k) => one + (change[k] ?? 0)) as unknown as Homography;
  }
  return composed(inverted(target), composed(h, source));
}

/** Moves places to their middle and scales them to a mean distance of √2. */
function scaling(places: readonly Place[]): Homography {
  const n = places.length;
  const x = places.reduce((sum, p) => sum + p.x, 0) / n;
  const y = places.reduce((sum, p) => sum + p.y, 0) / n;
  const far = places.reduce((sum, p) => sum + Math.hypot(p.x - x, p.y - y), 0) / n;
  const s = Math.SQRT2 / far;
  return [s, 0, -s * x, 0, s, -s * y, 0, 0, 1];
}
