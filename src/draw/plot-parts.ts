import { line, pathThrough, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { label } from './text.ts';

/** From a value to its place on the drawing, px. */
export type Scale = (value: number) => number;

/** An axis: what it counts, and how its figures are written, sign and all. */
export interface PlotAxis {
  readonly name: string;
  readonly text: (value: number) => string;
}

/**
 * The values' axis: a line across for each mark, nought's the stronger, and its figure at the left.
 * @param from   where the lines begin, px; figures end 7 px before it
 * @param until  where they end
 */
export const valueAxis = (
  axis: PlotAxis,
  marks: readonly number[],
  y: Scale,
  from: number,
  until: number,
): Shape[] =>
  marks.flatMap((mark) => [
    line([from, y(mark)], [until, y(mark)], mark === 0 ? palette.edge : palette.line, mark === 0 ? 1.3 : 1),
    label(from - 7, y(mark) + 5, axis.text(mark), {
      size: 14,
      weight: 500,
      fill: palette.ink2,
      anchor: 'end',
    }),
  ]);

/** A ribbon about a line, as wide as its doubt: two sd to each side. */
export function doubtRibbon(
  ats: readonly number[],
  values: readonly number[],
  doubts: readonly number[],
  x: Scale,
  y: Scale,
): Shape {
  const edge = (side: 1 | -1) => values.map((value, i): Spot => [x(ats[i]!), y(value + side * doubts[i]!)]);
  return shape('path', {
    d: pathThrough([...edge(1), ...edge(-1).toReversed()], true),
    fill: palette.edge,
    'fill-opacity': 0.28,
  });
}
