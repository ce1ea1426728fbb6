import type { SurfaceSize } from '../core/print/picture.ts';
import { isReadable } from '../core/print/readable-square.ts';
import type { Cell, Spot } from '../core/print/reading.ts';
import { drawing } from './drawing.ts';
import { overPhotoColours, punchMark, rimmedPath } from './print-overlay-marks.ts';
import { type OverlayView, onScreen } from './print-overlay-view.ts';
import { endNames, outline, type ZoneOverlay } from './print-overlay-zones.ts';
import { type Shape, shape } from './shape.ts';

export interface SquareOverlay {
  readonly title: string;
  readonly desc?: string;
  readonly view: OverlayView;
  readonly size: SurfaceSize;
  readonly cell_mm: number;
  readonly cells: readonly Cell[];
  readonly spots?: readonly Pick<Spot, 'x_mm' | 'y_mm'>[];
  /** What stands in a square; left out, its count. */
  readonly text?: (cell: Cell) => string;
  readonly ends: ZoneOverlay['ends'];
}

/** A square's count as it is written: cut ones in brackets, unreadable ones a dash. */
export const countText = (cell: Cell): string =>
  !isReadable(cell) ? '–' : cell.partial ? `(${cell.count})` : String(cell.count);

/** A square narrower than this, as part of a whole one, has no room for a figure. */
const leastPart = 0.35;

/** Squares with their counts and a dot in every spot, over the photo, as it lies there. */
export function squareOverlay(figure: SquareOverlay): Shape {
  const { title, desc, view, size, cell_mm, cells, spots = [], text = countText, ends } = figure;
  const { length_mm, width_mm } = size;
  const stops = (whole: number): number[] =>
    Array.from({ length: Math.ceil(whole / cell_mm - 1e-9) - 1 }, (_, k) => (k + 1) * cell_mm);
  return drawing(
    { title, ...(desc === undefined ? {} : { desc }), width: view.width, height: view.height },
    outline(view, size),
    stops(length_mm).flatMap((x) => rule(view, { x, y: 0 }, { x, y: width_mm })),
    stops(width_mm).flatMap((y) => rule(view, { x: 0, y }, { x: length_mm, y })),
    dots(view, spots),
    cells.flatMap((cell) => figureIn(view, size, cell_mm, cell, text(cell))),
    endNames(view, size, ends),
    punchMark(onScreen(view, { x: 0, y: 0 })),
  );
}

const rule = (view: OverlayView, a: { x: number; y: number }, b: { x: number; y: number }): Shape[] =>
  rimmedPath([onScreen(view, a), onScreen(view, b)], 1);

/** A dot in the middle of every spot, as one path: a pad has hundreds. What each covers is shown by the map of contact. */
function dots(view: OverlayView, spots: NonNullable<SquareOverlay['spots']>): Shape[] {
  if (spots.length === 0) return [];
  const round = (value: number) => Math.round(value * 10) / 10;
  const d = spots
    .map(({ x_mm, y_mm }) => {
      const { x, y } = onScreen(view, { x: x_mm, y: y_mm });
      return `M${round(x - 1.8)} ${round(y)}a1.8 1.8 0 1 0 3.6 0a1.8 1.8 0 1 0 -3.6 0z`;
    })
    .join('');
  const { ink, sheet } = overPhotoColours;
  return [shape('path', { d, fill: sheet, stroke: ink, 'stroke-width': 0.8 })];
}

function figureIn(view: OverlayView, size: SurfaceSize, cell_mm: number, cell: Cell, words: string): Shape[] {
  const from = { x: cell.col * cell_mm, y: cell.row * cell_mm };
  const to = { x: Math.min(size.length_mm, from.x + cell_mm), y: Math.min(size.width_mm, from.y + cell_mm) };
  if (words === '' || Math.min(to.x - from.x, to.y - from.y) < leastPart * cell_mm) return [];
  const { x, y } = onScreen(view, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  return [
    shape(
      'text',
      {
        x,
        y: y + 5.5,
        'font-size': 16,
        'font-weight': 700,
        'text-anchor': 'middle',
        fill: overPhotoColours.ink,
        stroke: overPhotoColours.sheet,
        'stroke-width': 4,
        'stroke-linejoin': 'round',
        'paint-order': 'stroke',
      },
      words,
    ),
  ];
}
