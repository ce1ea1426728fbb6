import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { perMm } from './field.ts';

/** 1 where a hole or groove takes the surface away: elements whose centre lies in it. */
export function cutOut(exclusions: readonly Exclusion[], size: SurfaceSize): Uint8Array {
  const width = Math.round(size.length_mm * perMm);
  const height = Math.round(size.width_mm * perMm);
  const out = new Uint8Array(width * height);
  for (const exclusion of exclusions) {
    const inside = insideOf(exclusion);
    const xs = exclusion.type === 'circle' ? [exclusion.x] : exclusion.points.map(({ x }) => x);
    const ys = exclusion.type === 'circle' ? [exclusion.y] : exclusion.points.map(({ y }) => y);
    const reach =
      exclusion.type === 'circle' ? exclusion.r : exclusion.type === 'polyline' ? exclusion.width / 2 : 0;
    const left = Math.max(0, Math.floor((Math.min(...xs) - reach) * perMm));
    const right = Math.min(width, Math.ceil((Math.max(...xs) + reach) * perMm));
    const top = Math.max(0, Math.floor((Math.min(...ys) - reach) * perMm));
    const bottom = Math.min(height, Math.ceil((Math.max(...ys) + reach) * perMm));
    for (let row = top; row < bottom; row++)
      for (let col = left; col < right; col++)
        if (inside((col + 0.5) / perMm, (row + 0.5) / perMm)) out[row * width + col] = 1;
  }
  return out;
}

function insideOf(exclusion: Exclusion): (x: number, y: number) => boolean {
  if (exclusion.type === 'circle') {
    const { x: cx, y: cy, r } = exclusion;
    return (x, y) => (x - cx) ** 2 + (y - cy) ** 2 <= r * r;
  }
  const { points } = exclusion;
  if (exclusion.type === 'polyline') {
    const half = exclusion.width / 2;
    return (x, y) => {
      for (let k = 1; k < points.length; k++) {
        const a = points[k - 1]!;
        const b = points[k]!;
        const dx = b.x - a.x;
        const dy = b.y - a.y;
        const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
        if ((x - a.x - t * dx) ** 2 + (y - a.y - t * dy) ** 2 <= half * half) return true;
      }
      return false;
    };
  }
  return (x, y) => {
    let odd = false;
    for (let k = 0, before = points.length - 1; k < points.length; before = k++) {
      const a = points[k]!;
      const b = points[before]!;
      if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
    }
    return odd;
  };
}
