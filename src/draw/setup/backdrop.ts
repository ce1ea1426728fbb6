import type { Slide } from '../../core/body/slide.ts';
import { boxCorners } from '../hatch.ts';
import { chamfered, line, pathThrough, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { type Bar, barOutline, barsOf, slideBulk, wayOutline } from '../slide-section.ts';
import type { ViewName } from './view.ts';

/** A rectangle of the view, mm: right and up. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Where the slide and a stretch of its ways lie in a view, mm. */
export function slideBounds(slide: Slide, view: ViewName): Bounds {
  const bars = barsOf(slide);
  const bulk = slideBulk(bars);
  const along = {
    left: Math.min(...bars.map((bar) => bar.from_mm)),
    right: Math.max(...bars.map((bar) => bar.to_mm)),
  };
  const across = {
    near: Math.min(...bars.map((bar) => bar.near_mm)) - bulk.border_mm,
    far: Math.max(...bars.map((bar) => bar.far_mm)) + bulk.border_mm,
  };
  if (view === 'above') return { ...along, low: across.near, high: across.far };
  const upright = { low: bulk.base_mm, high: bulk.top_mm };
  return view === 'side' ? { ...along, ...upright } : { left: across.near, right: across.far, ...upright };
}

/** mm of a view → px, the same scale both ways, in the middle of a box. */
export function fitted(
  bounds: Bounds,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): { readonly spot: (right: number, up: number) => Spot; readonly perMm: number } {
  const perMm = Math.min(
    box.width / (bounds.right - bounds.left || 1),
    box.height / (bounds.high - bounds.low || 1),
  );
  const x = box.x + (box.width - (bounds.right - bounds.left) * perMm) / 2;
  const y = box.y + (box.height + (bounds.high - bounds.low) * perMm) / 2;
  return { perMm, spot: (right, up) => [x + (right - bounds.left) * perMm, y - (up - bounds.low) * perMm] };
}

const casting = { fill: palette.paper, stroke: palette.ink, 'stroke-width': 1.6 };
const way = { fill: palette.steel, stroke: palette.edge, 'stroke-width': 1.3 };
const bearing = { fill: 'none', stroke: palette.ink, 'stroke-width': 3.4 };

/** The slide on its ways: castings in outline, ways in steel, bearing faces heavy where they are seen end-on. */
export function slideOnWays(
  slide: Slide,
  view: ViewName,
  spot: (right: number, up: number) => Spot,
  edges: readonly [left: number, right: number],
): Shape[] {
  const bars = barsOf(slide);
  if (view === 'above') return fromAbove(bars, spot, edges);
  return view === 'side' ? fromSide(bars, spot, edges) : fromEnd(bars, spot);
}

function fromEnd(bars: readonly Bar[], spot: (right: number, up: number) => Spot): Shape[] {
  const bulk = slideBulk(bars);
  const outline = (points: readonly (readonly [number, number])[]): string =>
    pathThrough(
      points.map(([across, out]) => spot(across, out)),
      true,
    );
  const first = bars[0]!;
  const last = bars.at(-1)!;
  const high = Math.max(...bars.map((bar) => bar.high_mm)) + bulk.thick_mm * 0.35;
  const underside = bars.flatMap((bar): (readonly [number, number])[] => {
    const points = barOutline(bar, bulk.border_mm, bulk.top_mm).slice(0, -2);
    const from = points[0]!;
    const to = points.at(-1)!;
    return [[from[0], high], ...points, [to[0], high]];
  });
  const slideOutline = [
    ...underside.slice(1, -1),
    [last.far_mm + bulk.border_mm, bulk.top_mm] as const,
    [first.near_mm - bulk.border_mm, bulk.top_mm] as const,
  ];
  return [
    ...bars.map((bar) => shape('path', { d: outline(wayOutline(bar, bulk.base_mm)), ...way })),
    shape('path', { d: outline(slideOutline), ...casting }),
    ...bars.flatMap((bar) =>
      bar.faces.map(([from, to]) =>
        shape('path', { d: pathThrough([spot(...from), spot(...to)]), ...bearing }),
      ),
    ),
  ];
}

function fromSide(
  bars: readonly Bar[],
  spot: (right: number, up: number) => Spot,
  edges: readonly [number, number],
): Shape[] {
  const bulk = slideBulk(bars);
  const seat = Math.min(...bars.map((bar) => bar.low_mm));
  const from = Math.min(...bars.map((bar) => bar.from_mm));
  const to = Math.max(...bars.map((bar) => bar.to_mm));
  const a = spot(from, bulk.top_mm);
  const b = spot(to, seat);
  const base = spot(0, bulk.base_mm)[1];
  return [
    shape('path', {
      d: pathThrough(boxCorners(edges[0], b[1], edges[1] - edges[0], base - b[1]), true),
      ...way,
    }),
    shape('path', {
      d: pathThrough(chamfered(boxCorners(a[0], a[1], b[0] - a[0], b[1] - a[1]), [5, 5, 0, 0]), true),
      ...casting,
    }),
    ...bars.map((bar) =>
      shape('path', { d: pathThrough([spot(bar.from_mm, seat), spot(bar.to_mm, seat)]), ...bearing }),
    ),
  ];
}

function fromAbove(
  bars: readonly Bar[],
  spot: (right: number, up: number) => Spot,
  edges: readonly [number, number],
): Shape[] {
  const bulk = slideBulk(bars);
  const from = Math.min(...bars.map((bar) => bar.from_mm));
  const to = Math.max(...bars.map((bar) => bar.to_mm));
  const boxes = bars.map((bar) => {
    const a = spot(from, bar.far_mm + bulk.border_mm);
    const b = spot(to, bar.near_mm - bulk.border_mm);
    return { x: a[0], y: a[1], width: b[0] - a[0], height: b[1] - a[1], bar };
  });
  const first = boxes[0]!;
  const last = boxes.at(-1)!;
  const neck = { x: first.x + first.width * 0.3, width: first.width * 0.4 };
  return [
    ...boxes.flatMap(({ bar }) => {
      const top = spot(0, bar.far_mm)[1];
      const bottom = spot(0, bar.near_mm)[1];
      const middle = (top + bottom) / 2;
      return [
        shape('path', {
          d: pathThrough(boxCorners(edges[0], top, edges[1] - edges[0], bottom - top), true),
          ...way,
        }),
        ...(bar.faces.length > 1 && bar.high_mm - bar.low_mm > 1
          ? [line([edges[0], middle], [edges[1], middle], palette.edge, 1.2)]
          : []),
      ];
    }),
    ...(boxes.length > 1
      ? [
          shape('path', {
            d: pathThrough(boxCorners(neck.x, last.y + last.height / 2, neck.width, first.y - last.y), true),
            ...casting,
          }),
        ]
      : []),
    ...boxes.map((box) =>
      shape('path', {
        d: pathThrough(chamfered(boxCorners(box.x, box.y, box.width, box.height), [5, 5, 5, 5]), true),
        ...casting,
        'fill-opacity': 0.86,
      }),
    ),
  ];
}
