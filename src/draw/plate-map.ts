import { drawing } from './drawing.ts';
import { linear } from './gauge-scale.ts';
import { rectangle } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { label, textWidth } from './text.ts';

/** A place on the surface and what is to come off there, in the shown unit. */
export interface PlateMapPoint {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  /** What stands beside it where there is room: "2" passes, "4.1". */
  readonly text: string;
}

export interface PlateMapFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  readonly points: readonly PlateMapPoint[];
  /** The points that hold the minimum zone. */
  readonly contacts: readonly { readonly index: number; readonly side: 'high' | 'low' }[];
  /** What the discs and numbers say: "to take off, µm". */
  readonly key: string;
  /** Length and breadth in words: "900 mm", "600 mm". */
  readonly long: string;
  readonly broad: string;
}

const size = 14;
/** Room about the surface for its measures. */
const margin = { left: 36, right: 36, top: 50, bottom: 62 } as const;
/** Discs may fill this share of the room between neighbours. */
const fullest = 0.46;
/** Never taller than this many times its breadth. */
const tallest = 1.6;

/** The surface from above, the operator's side below: a disc at each point as broad as what must come off, and what holds the zone. */
export function plateMap(figure: PlateMapFigure): Shape {
  const { points, width } = figure;
  const [x0, x1] = ends(points.map((point) => point.x));
  const [y0, y1] = ends(points.map((point) => point.y));
  const across = width - margin.left - margin.right;
  const tall = Math.min(across * tallest, (across * (y1 - y0)) / (x1 - x0 || 1));
  const height = tall + margin.top + margin.bottom;
  const x = linear([x0, x1], [margin.left, margin.left + across]);
  const y = linear([y0, y1], [margin.top + tall, margin.top]);
  const [, most] = ends(points.map((point) => point.depth));
  const room = Math.sqrt((across * tall) / points.length);
  const radius = (depth: number) => (most > 0 ? fullest * room * Math.sqrt(depth / most) : 0);
  return drawing(
    { ...figure, height },
    label(0, 16, figure.key, { size, weight: 500, fill: palette.ink2 }),
    rectangle(margin.left - 14, margin.top - 14, across + 28, tall + 28, palette.sheet, {
      stroke: palette.edge,
      'stroke-width': 1.3,
    }),
    points.map((point) =>
      shape('circle', {
        cx: x(point.x),
        cy: y(point.y),
        r: Math.max(radius(point.depth), 0.6),
        fill: palette.edge,
        'fill-opacity': 0.45,
      }),
    ),
    numbers(figure, x, y, room),
    rings(figure, x, y),
    measures(figure, height),
  );
}

function ends(values: readonly number[]): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

/** Numbers stand on the discs, unless they would run into each other. */
function numbers(
  { points }: PlateMapFigure,
  x: (value: number) => number,
  y: (value: number) => number,
  room: number,
): Shape[] {
  const widest = points.reduce((most, point) => Math.max(most, textWidth(point.text, size)), 0);
  if (room < Math.max(widest + 4, size + 6)) return [];
  return points.map((point) => label(x(point.x), y(point.y) + 5, point.text, { size, anchor: 'middle' }));
}

/** Highs are ringed, lows boxed. */
function rings(
  { points, contacts }: PlateMapFigure,
  x: (value: number) => number,
  y: (value: number) => number,
): Shape[] {
  return contacts.flatMap(({ index, side }) => {
    const point = points[index]!;
    const [cx, cy] = [x(point.x), y(point.y)];
    const ring = shape('circle', { cx, cy, r: 11, fill: 'none', stroke: palette.ink, 'stroke-width': 2 });
    if (side === 'high') return [ring];
    return [rectangle(cx - 10, cy - 10, 20, 20, 'none', { stroke: palette.ink, 'stroke-width': 2 })];
  });
}

function measures(figure: PlateMapFigure, height: number): Shape[] {
  const quiet = { size, weight: 480, fill: palette.ink2 };
  return [
    label(margin.left, height - 22, `${figure.long} × ${figure.broad}, your side below`, quiet),
    label(margin.left, height - 4, 'ring: high point, box: low point that hold the zone', quiet),
  ];
}
