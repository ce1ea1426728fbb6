import type { PlaceMm } from '../../core/print/picture.ts';

/** Area within a line that does not cross itself, mm² (the shoelace formula). */
export const areaWithin = (points: readonly PlaceMm[]): number =>
  Math.abs(
    points.reduce((sum, p, k) => {
      const q = points[(k + 1) % points.length]!;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );
