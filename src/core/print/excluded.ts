import type { Exclusion } from './exclusion.ts';
import type { PlaceMm } from './picture.ts';
import { rasterPxPerMm } from './rectified.ts';

/** 1 on every element of the raster whose centre is excluded. */
export function excluded(exclusions: readonly Exclusion[], width: number, height: number): Uint8Array {
  const mask = new Uint8Array(width * height);
  for (const one of exclusions) {
    const points = one.type === 'circle' ? [{ x: one.x, y: one.y }] : one.points;
    const reach = one.type === 'circle' ? one.r : one.type === 'polyline' ? one.width / 2 : 0;
    const inside = insideOf(one);
    const span = (of: (p: PlaceMm) => number, most: number): readonly [number, number] => [
      Math.max(0, Math.floor((Math.min(...points.map(of)) - reach) * rasterPxPerMm)),
      Math.min(most, Math.ceil((Math.max(...points.map(of)) + reach) * rasterPxPerMm)),
    ];
    const [left, right] = span((p) => p.x, width);
    const [top, bottom] = span((p) => p.y, height);
    for (let j = top; j < bottom; j++)
      for (let i = left; i < right; i++)
        if (inside((i + 0.5) / rasterPxPerMm, (j + 0.5) / rasterPxPerMm)) mask[j * width + i] = 1;
  }
  return mask;
}

function insideOf(one: Exclusion): (x: number, y: number) => boolean {
  if (one.type === 'circle') return (x, y) => (x - one.x) ** 2 + (y - one.y) ** 2 <= one.r ** 2;
  const { points } = one;
  if (one.type === 'polygon')
    return (x, y) => {
      // Even and odd crossings of a ray to the right.
      let odd = false;
      points.forEach((p, k) => {
        const q = points[(k + 1) % points.length]!;
        if (p.y > y !== q.y > y && x < p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x)) odd = !odd;
      });
      return odd;
    };
  const half = one.width / 2;
  return (x, y) =>
    points.some((p, k) => {
      const q = points[k + 1] ?? p;
      const dx = q.x - p.x;
      const dy = q.y - p.y;
      const long = dx * dx + dy * dy;
      const along = long > 0 ? Math.max(0, Math.min(1, ((x - p.x) * dx + (y - p.y) * dy) / long)) : 0;
      return (x - p.x - along * dx) ** 2 + (y - p.y - along * dy) ** 2 <= half * half;
    });
}
