import type { Exclusion } from './exclusion.ts';
import type { PlaceMm } from './picture.ts';
import { rasterPxPerMm } from './rectified.ts';

/** 1 on every element of the raster whose centre is excluded. */
export function excluded(exclusions: readonly Exclusion[], width: number, height: number): Uint8Array {
  const mask = new Uint8Array(width * height);
  for (const one of exclusions.flatMap(pieces)) {
    const { from, to, inside } = one;
    const left = Math.max(0, Math.floor(from.x * rasterPxPerMm));
    const right = Math.min(width, Math.ceil(to.x * rasterPxPerMm));
    const top = Math.max(0, Math.floor(from.y * rasterPxPerMm));
    const bottom = Math.min(height, Math.ceil(to.y * rasterPxPerMm));
    for (let j = top; j < bottom; j++)
      for (let i = left; i < right; i++)
        if (inside((i + 0.5) / rasterPxPerMm, (j + 0.5) / rasterPxPerMm)) mask[j * width + i] = 1;
  }
  return mask;
}

/** A shape, with the box it lies in, mm. */
interface Piece {
  readonly from: PlaceMm;
  readonly to: PlaceMm;
  readonly inside: (x: number, y: number) => boolean;
}

/** A groove is one piece a leg. */
function pieces(one: Exclusion): Piece[] {
  switch (one.type) {
    case 'circle':
      return [
        {
          ...boxAround([one], one.r),
          inside: (x, y) => (x - one.x) ** 2 + (y - one.y) ** 2 <= one.r ** 2,
        },
      ];
    case 'polygon':
      return [{ ...boxAround(one.points, 0), inside: (x, y) => isWithin(one.points, x, y) }];
    case 'polyline':
      return one.points.map((p, k) => {
        const q = one.points[k + 1] ?? p;
        return { ...boxAround([p, q], one.width / 2), inside: nearTo(p, q, one.width / 2) };
      });
  }
}

const boxAround = (points: readonly PlaceMm[], reach: number): Pick<Piece, 'from' | 'to'> => ({
  from: {
    x: Math.min(...points.map((p) => p.x)) - reach,
    y: Math.min(...points.map((p) => p.y)) - reach,
  },
  to: { x: Math.max(...points.map((p) => p.x)) + reach, y: Math.max(...points.map((p) => p.y)) + reach },
});

/** Crossings of a ray to the right: odd is inside. */
function isWithin(points: readonly PlaceMm[], x: number, y: number): boolean {
  let odd = false;
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length]!;
    if (p.y > y !== q.y > y && x < p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x)) odd = !odd;
  });
  return odd;
}

function nearTo(p: PlaceMm, q: PlaceMm, reach: number): Piece['inside'] {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const long = dx * dx + dy * dy;
  return (x, y) => {
    const along = long > 0 ? Math.max(0, Math.min(1, ((x - p.x) * dx + (y - p.y) * dy) / long)) : 0;
    return (x - p.x - along * dx) ** 2 + (y - p.y - along * dy) ** 2 <= reach * reach;
  };
}
