import { ticks } from 'd3-array';
import { drawing } from './drawing.ts';
import { linear } from './gauge-scale.ts';
import type { Stretch } from './keep-clear.ts';
import { arrow, line, pathThrough, rectangle, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { doubtRibbon, type PlotAxis, type Scale, valueAxis } from './plot-parts.ts';
import { type Shape, shape } from './shape.ts';
import { twoFigures } from './sweep-plot.ts';
import { label, textWidth } from './text.ts';

/** A way's departures from a straight line, station by station, in the shown unit. */
export interface LineStripFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  /** Left out: 280 px. */
  readonly height?: number;
  readonly stations: readonly number[];
  readonly values: readonly number[];
  /** Two sd of each; left out when no doubt is known. */
  readonly doubts?: readonly number[];
  /** The minimum zone's two lines, each by its value at the first and at the last station. */
  readonly zone?: { readonly high: readonly [number, number]; readonly low: readonly [number, number] };
  /** The points that hold the zone. */
  readonly contacts?: readonly { readonly index: number; readonly side: 'high' | 'low' }[];
  /** Stretches that were not run on, in the stations' unit. */
  readonly unworn?: readonly (readonly [number, number])[];
  /** The line through what was not run on, by its value at the first and at the last station, and the station most worn below it. */
  readonly wear?: {
    readonly line: readonly [number, number];
    readonly deepest: number;
    /** "worn 26 ± 1 µm". */
    readonly text: string;
  };
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  /** How many mm one unit of a station and one of a value are: the exaggeration follows. */
  readonly x_unit_mm: number;
  readonly y_unit_mm: number;
}

const size = 14;
/** The strip: departures as a line with a ribbon as wide as their doubt, the minimum zone about them, and what holds it. */
export function lineStrip(figure: LineStripFigure): Shape {
  const { stations, values, doubts = [], zone, width } = figure;
  const height = figure.height ?? 280;
  const all = [
    0,
    ...values.flatMap((value, i) => [value - (doubts[i] ?? 0), value + (doubts[i] ?? 0)]),
    ...(zone ? [...zone.high, ...zone.low] : []),
    ...(figure.wear?.line ?? []),
  ];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const air = (high - low || 1) * 0.08;
  const marks = ticks(low, high, 4);
  const left = Math.max(...marks.map((mark) => textWidth(figure.y.text(mark), size)), 16) + 12;
  const bottom = height - 44;
  const x = linear([stations[0]!, stations.at(-1)!], [left + 8, width - 16]);
  const y = linear([low - air, high + air], [bottom, 30]);
  return drawing(
    { ...figure, height },
    rectangle(left, 30, width - left - 2, bottom - 30, palette.sheet),
    unwornStretches(figure, x, bottom),
    valueAxis(figure.y, marks, y, left, figure.width - 2),
    places(figure, x, bottom, [left - 6, width - 4], height),
    zoneLines(figure, x, y),
    ribbon(figure, x, y),
    wornBelow(figure, x, y),
    contactRings(figure, x, y),
    heading(figure, x, y),
  );
}

function unwornStretches({ unworn = [] }: LineStripFigure, x: Scale, bottom: number): Shape[] {
  return unworn.map(([from, to]) =>
    rectangle(x(from), bottom - 7, Math.max(2, x(to) - x(from)), 7, palette.steel),
  );
}

/** Ticks stand at the stations; words only where they keep clear of each other, the ends first. */
function places(figure: LineStripFigure, x: Scale, bottom: number, room: Stretch, height: number): Shape[] {
  const { stations } = figure;
  const taken: Stretch[] = [];
  const order = [0, stations.length - 1, ...stations.keys()];
  const words = order.flatMap((i) => {
    const at = stations[i]!;
    const text = figure.x.text(at);
    const wide = textWidth(text, size);
    const from = Math.min(Math.max(x(at) - wide / 2, room[0]), room[1] - wide);
    if (taken.some((other) => from < other[1] + 10 && other[0] < from + wide + 10)) return [];
    taken.push([from, from + wide]);
    return [label(from, bottom + 20, text, { size, weight: 500, fill: palette.ink2 })];
  });
  return [
    line([room[0] + 6, bottom], [room[1] - 2, bottom], palette.edge, 1.3),
    ...stations.map((at) => line([x(at), bottom], [x(at), bottom + 5], palette.edge, 1.3)),
    ...words,
    label(room[1] - 2, height - 6, figure.x.name, {
      size,
      weight: 480,
      fill: palette.ink2,
      anchor: 'end',
    }),
  ];
}

function zoneLines({ zone, stations }: LineStripFigure, x: Scale, y: Scale): Shape[] {
  if (!zone) return [];
  const ends = [x(stations[0]!), x(stations.at(-1)!)] as const;
  return [zone.high, zone.low].map(([first, last]) =>
    line([ends[0], y(first)], [ends[1], y(last)], palette.ink2, 1.4, { 'stroke-dasharray': '7 5' }),
  );
}

function ribbon({ stations, values, doubts }: LineStripFigure, x: Scale, y: Scale): Shape[] {
  const middle = values.map((value, i): Spot => [x(stations[i]!), y(value)]);
  return [
    ...(doubts ? [doubtRibbon(stations, values, doubts, x, y)] : []),
    shape('path', { d: pathThrough(middle), fill: 'none', stroke: palette.ink, 'stroke-width': 2 }),
    ...(values.length <= 200
      ? middle.map(([cx, cy]) =>
          shape('circle', { cx, cy, r: 3, fill: palette.ink, stroke: palette.sheet, 'stroke-width': 1 }),
        )
      : []),
  ];
}

/** Metal gone: an arrow from the line through the unworn stretches down to the deepest place, and its size. */
function wornBelow({ wear, stations, values, width }: LineStripFigure, x: Scale, y: Scale): Shape[] {
  if (!wear) return [];
  const [from, to] = [stations[0]!, stations.at(-1)!];
  const at = stations[wear.deepest]!;
  const [first, last] = wear.line;
  const was = first + ((last - first) * (at - from)) / (to - from);
  const [cx, top, low] = [x(at), y(was), y(values[wear.deepest]!)];
  const wide = textWidth(wear.text, size);
  const isRightFree = cx + 12 + wide < width - 4;
  return [
    line([x(from), y(first)], [x(to), y(last)], palette.ink, 1.6),
    ...(Math.abs(low - top) > 14 ? [arrow([cx, top], [cx, low - 8], palette.ink, 2, 10)] : []),
    label(isRightFree ? cx + 12 : cx - 12 - wide, top + 19, wear.text, { size, weight: 640 }),
  ];
}

const contactRings = ({ stations, values, contacts = [] }: LineStripFigure, x: Scale, y: Scale): Shape[] =>
  contacts.map(({ index }) =>
    shape('circle', {
      cx: x(stations[index]!),
      cy: y(values[index]!),
      r: 7,
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 2,
    }),
  );

/** What the upright axis counts, and how many times it is drawn taller than it is. */
function heading(figure: LineStripFigure, x: Scale, y: Scale): Shape[] {
  const perX = (x(1) - x(0)) / figure.x_unit_mm;
  const perY = (y(0) - y(1)) / figure.y_unit_mm;
  const quiet = { size, weight: 500, fill: palette.ink2 };
  const times = `heights × ${twoFigures(perY / perX)}`;
  const isRoomy = textWidth(figure.y.name, size) + textWidth(times, size) + 16 < figure.width;
  return [
    label(0, 15, figure.y.name, quiet),
    label(isRoomy ? figure.width - 2 : figure.width - 8, isRoomy ? 15 : 46, times, {
      ...quiet,
      anchor: 'end',
    }),
  ];
}
