import type { Exclusion } from './exclusion.ts';
import type { PlaceMm } from './picture.ts';
import { rasterPxPerMm } from './rectified.ts';

/** 1 on every element of the raster whose centre is excluded. */
export function excluded(exclusions: readonly Exclusion[], width: number, height: number): Uint8Array {
  const mask = new Uint8Array(width * height);
  for (const { top_mm, bottom_mm, spans } of exclusions.flatMap(shapesOf)) {
    const top = Math.max(0, Math.floor(top_mm * rasterPxPerMm));
    const bottom = Math.min(height, Math.ceil(bottom_mm * rasterPxPerMm));
    for (let j = top; j < bottom; j++) {
      const ends = spans((j + 0.5) / rasterPxPerMm);
      for (let k = 0; k + 1 < ends.length; k += 2) {
        const from = Math.max(0, firstAt(ends[k]!));
        const to = Math.min(width, firstAt(ends[k + 1]!));
        if (from < to) mask.fill(1, j * width + from, j * width + to);
      }
    }
  }
  return mask;
}

/** The first element whose centre is at x (mm) or beyond. */
const firstAt = (x: number): number => Math.ceil(x * rasterPxPerMm - 0.5);

/** A shape as what it covers of a line along the surface: where it begins, ends, begins again and so on, mm. */
interface Shape {
  readonly top_mm: number;
  readonly bottom_mm: number;
  readonly spans: (y: number) => readonly number[];
}

/** A groove is one shape a leg. */
function shapesOf(one: Exclusion): Shape[] {
  switch (one.type) {
    case 'circle':
      return [{ ...between([one], one.r), spans: (y) => ofDisc(one, one.r, y) }];
    case 'polygon':
      return [{ ...between(one.points, 0), spans: (y) => ofPolygon(one.points, y) }];
    case 'polyline':
      return one.points.map((p, k) => {
        const q = one.points[k + 1] ?? p;
        return { ...between([p, q], one.width / 2), spans: (y) => ofLeg(p, q, one.width / 2, y) };
      });
  }
}

const between = (points: readonly PlaceMm[], reach: number): Pick<Shape, 'top_mm' | 'bottom_mm'> => ({
  top_mm: Math.min(...points.map((p) => p.y)) - reach,
  bottom_mm: Math.max(...points.map((p) => p.y)) + reach,
});

function ofDisc({ x, y: middle }: PlaceMm, r: number, y: number): number[] {
  const square = r * r - (y - middle) ** 2;
  return square < 0 ? [] : [x - Math.sqrt(square), x + Math.sqrt(square)];
}

/** Sides cross the line where it enters and leaves. */
function ofPolygon(points: readonly PlaceMm[], y: number): number[] {
  const crossings: number[] = [];
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length]!;
    if (p.y > y !== q.y > y) crossings.push(p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x));
  });
  return crossings.sort((a, b) => a - b);
}

/** What is no further than `reach` from the leg: its two ends' discs and the strip between them, a convex whole. */
function ofLeg(p: PlaceMm, q: PlaceMm, reach: number, y: number): number[] {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const long = Math.hypot(dx, dy);
  const ends = [...ofDisc(p, reach, y), ...ofDisc(q, reach, y)];
  // The strip, from p: along the leg within its length, across it within reach.
  const along = where(dx, (y - p.y) * dy, 0, long * long);
  const across = where(-dy, (y - p.y) * dx, -reach * long, reach * long);
  const from = Math.max(along[0], across[0]);
  const to = Math.min(along[1], across[1]);
  if (long > 0 && from <= to) ends.push(p.x + from, p.x + to);
  return ends.length ? [Math.min(...ends), Math.max(...ends)] : [];
}

/** Where low ≤ slope x + start ≤ high: from, to. */
function where(slope: number, start: number, low: number, high: number): [number, number] {
  const everywhere: [number, number] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const nowhere: [number, number] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  if (slope === 0) return start >= low && start <= high ? everywhere : nowhere;
  const a = (low - start) / slope;
  const b = (high - start) / slope;
  return a < b ? [a, b] : [b, a];
}
