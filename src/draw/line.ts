import { type Shape, shape } from './shape.ts';

/** A place on the sheet, px: right and down. */
export type Spot = readonly [number, number];

const round = (value: number): number => Math.round(value * 100) / 100 + 0;
const written = (spot: Spot): string => `${round(spot[0])} ${round(spot[1])}`;

/** Path data through the spots; closed when asked. */
export const pathThrough = (spots: readonly Spot[], closed = false): string =>
  spots.map((spot, i) => `${i ? 'L' : 'M'}${written(spot)}`).join('') + (closed ? 'Z' : '');

/** The polygon with its corners cut off; one cut a corner, px along each side. */
export function chamfered(corners: readonly Spot[], cuts: readonly number[]): Spot[] {
  return corners.flatMap((corner, i) => {
    const before = corners[(i + corners.length - 1) % corners.length]!;
    const after = corners[(i + 1) % corners.length]!;
    const cut = cuts[i] ?? 0;
    return cut > 0 ? [toward(corner, before, cut), toward(corner, after, cut)] : [corner];
  });
}

const distance = (a: Spot, b: Spot): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
function toward(from: Spot, to: Spot, reach: number): Spot {
  const share = reach / (distance(from, to) || 1);
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}

/** A straight line. */
export const line = (
  from: Spot,
  to: Spot,
  stroke: string,
  width: number,
  more: Record<string, string | number> = {},
): Shape =>
  shape('line', { x1: from[0], y1: from[1], x2: to[0], y2: to[1], stroke, 'stroke-width': width, ...more });

export const rectangle = (
  x: number,
  y: number,
  width: number,
  height: number,
  fill: string,
  more: Record<string, string | number> = {},
): Shape => shape('rect', { x, y, width, height, fill, ...more });

/** An arrow whose tip stands at `to`: a shaft and a filled head. */
export function arrow(from: Spot, to: Spot, stroke: string, width = 2, head = 5 * width): Shape {
  const size = distance(from, to) || 1;
  const along: Spot = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
  const base: Spot = [to[0] - along[0] * head, to[1] - along[1] * head];
  const half = head * 0.42;
  const wings: Spot[] = [
    [base[0] - along[1] * half, base[1] + along[0] * half],
    to,
    [base[0] + along[1] * half, base[1] - along[0] * half],
  ];
  return shape(
    'g',
    {},
    line(from, base, stroke, width),
    shape('path', { d: pathThrough(wings, true), fill: stroke }),
  );
}
