import type { Spot } from './line.ts';
import { pathThrough } from './line.ts';

/**
 * Parallel strokes that fill a polygon, cut at its edges: drawn as lines, so that they print, and need no name in the page.
 *
 * @param polygon    corners in order, px
 * @param angle_deg  direction of the strokes as seen: 45 climbs to the right, −45 falls to the right
 * @param step       distance between strokes, px, above 0
 * @param shift      moves all strokes sideways by this share of the step
 * @returns          path data; empty when no stroke meets the polygon
 */
export function hatch(polygon: readonly Spot[], angle_deg: number, step: number, shift = 0): string {
  const angle = (angle_deg * Math.PI) / 180;
  const along: Spot = [Math.cos(angle), -Math.sin(angle)];
  const across: Spot = [Math.sin(angle), Math.cos(angle)];
  const reach = polygon.map((p) => p[0] * across[0] + p[1] * across[1]);
  const first = Math.ceil(Math.min(...reach) / step - shift);
  const last = Math.floor(Math.max(...reach) / step - shift);
  let data = '';
  for (let k = first; k <= last; k++) {
    const at = (k + shift) * step;
    const crossings = polygon
      .flatMap((p, i) => crossing(p, polygon[(i + 1) % polygon.length]!, across, along, at))
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      if (crossings[i + 1]! - crossings[i]! < 0.5) continue;
      data += pathThrough(
        [crossings[i]!, crossings[i + 1]!].map(
          (run): Spot => [across[0] * at + along[0] * run, across[1] * at + along[1] * run],
        ),
      );
    }
  }
  return data;
}

/** How far along the stroke it meets the edge p–q, if it does; an end counts for one of its two edges only. */
function crossing(p: Spot, q: Spot, across: Spot, along: Spot, at: number): number[] {
  const from = p[0] * across[0] + p[1] * across[1] - at;
  const to = q[0] * across[0] + q[1] * across[1] - at;
  if (from < 0 === to < 0) return [];
  const share = from / (from - to);
  const x = p[0] + (q[0] - p[0]) * share;
  const y = p[1] + (q[1] - p[1]) * share;
  return [x * along[0] + y * along[1]];
}

/** The corners of a rectangle. */
export const boxCorners = (x: number, y: number, width: number, height: number): Spot[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
