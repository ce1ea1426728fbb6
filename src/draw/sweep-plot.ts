import { ticks } from 'd3-array';
import { drawing } from './drawing.ts';
import { linear } from './gauge-scale.ts';
import { clearPlace, type Stretch } from './keep-clear.ts';
import { line, pathThrough, rectangle, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { doubtRibbon, type PlotAxis, valueAxis } from './plot-parts.ts';
import { type Shape, shape } from './shape.ts';
import { label, textWidth } from './text.ts';

/** A reading at a distance from the first; `left_out` names one that does not count: "120 mm left out". */
export interface PlotPoint {
  readonly at: number;
  readonly value: number;
  readonly left_out?: string;
}

/** The fitted line at a distance, with its doubt (two sd). */
export interface PlotFit {
  readonly at: number;
  readonly value: number;
  readonly doubt: number;
}

export interface SweepPlotFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  /** Left out: 250 px. */
  readonly height?: number;
  readonly points: readonly PlotPoint[];
  readonly fit?: readonly PlotFit[];
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  /** How many mm one unit of `at` and one unit of `value` are (1 and 0.001 for mm and µm): the exaggeration follows. */
  readonly x_unit_mm: number;
  readonly y_unit_mm: number;
}

const size = 14;

/** Readings against distance: the line that fits them, a ribbon as wide as its doubt, and the readings that were left out. */
export function sweepPlot(figure: SweepPlotFigure): Shape {
  const { points, fit = [], width } = figure;
  const height = figure.height ?? 250;
  const values = [
    0,
    ...points.map((point) => point.value),
    ...fit.flatMap((at) => [at.value - at.doubt, at.value + at.doubt]),
  ];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const air = (high - low || 1) * 0.08;
  const marks = ticks(low, high, 4);
  const left = Math.max(...marks.map((mark) => textWidth(figure.y.text(mark), size)), 16) + 12;
  const top = 30;
  const bottom = height - 26 - (figure.x.name ? 18 : 0);
  const ats = [...points.map((point) => point.at), ...fit.map((at) => at.at)];
  const x = linear([Math.min(...ats, 0), Math.max(...ats, 1e-9)], [left + 8, width - 16]);
  const y = linear([low - air, high + air], [bottom, top]);
  return drawing(
    { ...figure, height },
    rectangle(left, top, width - left - 2, bottom - top, palette.sheet),
    valueAxis(figure.y, marks, y, left, width - 2),
    xAxis(figure, x, bottom, [left - 6, width], height),
    ribbon(fit, x, y),
    readings(points, x, y, [left + 2, width - 2], top),
    heading(figure, x, y, width),
  );
}

/** Ticks stand at the readings' own places; words only where they keep clear of each other. */
function xAxis(
  figure: SweepPlotFigure,
  x: (value: number) => number,
  bottom: number,
  room: Stretch,
  height: number,
): Shape[] {
  const places = [...new Set(figure.points.map((point) => point.at))].sort((a, b) => a - b);
  const taken: Stretch[] = [];
  const order = [0, places.length - 1, ...places.map((_, i) => i)];
  const words = order.flatMap((i) => {
    const at = places[i];
    if (at === undefined) return [];
    const text = figure.x.text(at);
    const wide = textWidth(text, size);
    const from = Math.min(Math.max(x(at) - wide / 2, room[0]), room[1] - wide);
    if (text === '' || taken.some((other) => from < other[1] + 10 && other[0] < from + wide + 10)) return [];
    taken.push([from, from + wide]);
    return [label(from, bottom + 20, text, { size, weight: 500, fill: palette.ink2 })];
  });
  return [
    line([room[0] + 6, bottom], [room[1] - 2, bottom], palette.edge, 1.3),
    ...places.map((at) => line([x(at), bottom], [x(at), bottom + 5], palette.edge, 1.3)),
    ...words,
    ...(figure.x.name
      ? [
          label(room[1] - 2, height - 6, figure.x.name, {
            size,
            weight: 480,
            fill: palette.ink2,
            anchor: 'end',
          }),
        ]
      : []),
  ];
}

function ribbon(fit: readonly PlotFit[], x: (at: number) => number, y: (value: number) => number): Shape[] {
  if (fit.length < 2) return [];
  const of = (what: (at: PlotFit) => number) => fit.map(what);
  const band = doubtRibbon(
    of(({ at }) => at),
    of(({ value }) => value),
    of(({ doubt }) => doubt),
    x,
    y,
  );
  const middle = fit.map((at): Spot => [x(at.at), y(at.value)]);
  return [
    band,
    shape('path', { d: pathThrough(middle), fill: 'none', stroke: palette.ink, 'stroke-width': 2 }),
  ];
}

function readings(
  points: readonly PlotPoint[],
  x: (at: number) => number,
  y: (value: number) => number,
  room: Stretch,
  top: number,
): Shape[] {
  return points.flatMap((point) => {
    const cx = x(point.at);
    const cy = y(point.value);
    if (point.left_out === undefined)
      return [
        shape('circle', { cx, cy, r: 3.6, fill: palette.ink, stroke: palette.sheet, 'stroke-width': 1 }),
      ];
    const wide = textWidth(point.left_out, size);
    const from = clearPlace([cx + 11, cx - 11 - wide], wide, room, []);
    const isMoved = from !== cx + 11 && from !== cx - 11 - wide;
    const down = isMoved ? (cy - 14 < top + size ? 22 : -12) : 5;
    return [
      shape('circle', { cx, cy, r: 5, fill: palette.sheet, stroke: palette.lead, 'stroke-width': 2 }),
      line([cx - 4.5, cy + 4.5], [cx + 4.5, cy - 4.5], palette.lead, 1.8),
      label(from, cy + down, point.left_out, { size, weight: 620, fill: palette.lead }),
    ];
  });
}

/** What the upright axis counts, and how many times it is drawn taller than it is. */
function heading(
  figure: SweepPlotFigure,
  x: (at: number) => number,
  y: (value: number) => number,
  width: number,
): Shape[] {
  const perX = (x(1) - x(0)) / figure.x_unit_mm;
  const perY = (y(0) - y(1)) / figure.y_unit_mm;
  const times = `heights × ${twoFigures(perY / perX)}`;
  const isRoomy = textWidth(figure.y.name, size) + textWidth(times, size) + 16 < width;
  const quiet = { size, weight: 500, fill: palette.ink2 };
  return [
    label(0, 15, figure.y.name, quiet),
    ...(isRoomy
      ? [label(width - 2, 15, times, { ...quiet, anchor: 'end' })]
      : [label(width - 8, 46, times, { ...quiet, anchor: 'end' })]),
  ];
}

/** A ratio to two figures, as it is spoken. */
export function twoFigures(ratio: number): string {
  if (!(ratio > 0)) return '1';
  const step = 10 ** (Math.floor(Math.log10(ratio)) - 1);
  return `${Number((Math.round(ratio / step) * step).toPrecision(2))}`;
}
