import type { PlacePx, SurfaceSize } from '../core/print/picture.ts';
import { drawing } from './drawing.ts';
import { plate, plateHeight, plateWidth, punchMark, rimmedPath } from './print-overlay-marks.ts';
import { type OverlayView, off, onScreen } from './print-overlay-view.ts';
import type { Shape } from './shape.ts';

/** One zone: what stands beside it on the first side and on the other, "34 %" and "3 passes". */
export interface ZoneNote {
  readonly first: string;
  readonly other?: string;
  /** What stands for `other` where zones are too narrow for it: "3×". */
  readonly short?: string;
  readonly wrong?: boolean;
}

export interface ZoneOverlay {
  readonly title: string;
  readonly desc?: string;
  readonly view: OverlayView;
  readonly size: SurfaceSize;
  /** From the minus end. */
  readonly zones: readonly ZoneNote[];
  readonly ends: { readonly minus: string; readonly plus: string };
}

/** The zones of a pad over its photo, as it lies there, with the names of its ends and the corner to find first. */
export function zoneOverlay({ title, desc, view, size, zones, ends }: ZoneOverlay): Shape {
  const step = size.length_mm / Math.max(1, zones.length);
  const across = (x: number) => [onScreen(view, { x, y: 0 }), onScreen(view, { x, y: size.width_mm })];
  const [from, to] = [0, step].map((x) => onScreen(view, { x, y: 0 })) as [PlacePx, PlacePx];
  const pitch = Math.hypot(to.x - from.x, to.y - from.y);
  const narrow = zones.some(({ other = '' }) => plateWidth(other) > pitch - 4);
  return drawing(
    { title, ...(desc === undefined ? {} : { desc }), width: view.width, height: view.height },
    outline(view, size),
    zones.slice(1).flatMap((_, k) => rimmedPath(across((k + 1) * step), 1.5)),
    zones.flatMap(({ first, other: whole, short, wrong }, k) => {
      const x = (k + 0.5) * step;
      const other = narrow ? (short ?? whole) : whole;
      const look = wrong ? ('wrong' as const) : ('plain' as const);
      return [
        ...plate({ at: besides(view, size, 0, x, first, 5), words: first, look }, view),
        ...(other === undefined
          ? []
          : plate({ at: besides(view, size, 1, x, other, 5), words: other, look }, view)),
      ];
    }),
    endNames(view, size, ends),
    punchMark(onScreen(view, { x: 0, y: 0 })),
  );
}

/** The surface's edge. */
export const outline = (view: OverlayView, { length_mm, width_mm }: SurfaceSize): Shape[] =>
  rimmedPath(
    [
      { x: 0, y: 0 },
      { x: length_mm, y: 0 },
      { x: length_mm, y: width_mm },
      { x: 0, y: width_mm },
    ].map((place) => onScreen(view, place)),
    2,
    true,
  );

/** A plate clear of the surface by so many px, whichever way its side runs on the screen. */
function besides(
  view: OverlayView,
  size: SurfaceSize,
  side: 0 | 1,
  x: number,
  words: string,
  clear: number,
): PlacePx {
  const edge = onScreen(view, { x, y: side * size.width_mm });
  const away = off(view, size, side, x, 1);
  const half =
    (Math.abs(away.x - edge.x) * plateWidth(words)) / 2 + (Math.abs(away.y - edge.y) * plateHeight()) / 2;
  return off(view, size, side, x, half + clear);
}

/** Both ends by name, beside the first side: one row farther out than the zones' own words where they would meet. */
export const endNames = (view: OverlayView, size: SurfaceSize, ends: ZoneOverlay['ends']): Shape[] =>
  (
    [
      [0, ends.minus],
      [size.length_mm, ends.plus],
    ] as const
  ).flatMap(([x, words]) => {
    const out = off(view, size, 0, x, 1);
    const edge = onScreen(view, { x, y: 0 });
    // Along a side that stands upright the zones' words lie above and below the end's, not over it.
    const clear = 14 + 20 * Math.abs(out.y - edge.y);
    return plate({ at: besides(view, size, 0, x, words, clear), words, weight: 520 }, view);
  });
