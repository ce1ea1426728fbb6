import { ticks } from 'd3-array';
import type { Verdict } from '../core/prove/verdict.ts';
import { drawing } from './drawing.ts';
import { linear } from './gauge-scale.ts';
import { clearPlace } from './keep-clear.ts';
import { line, pathThrough, rectangle, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { doubtRibbon, type PlotAxis, type Scale } from './plot-parts.ts';
import { type Shape, shape } from './shape.ts';
import { twoFigures } from './sweep-plot.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** What one survey found along the bed, in its shown unit; stations in the shown unit of the shared axis. */
export interface BedStrip {
  /** "Up and down", and what of: "flat". */
  readonly head: string;
  readonly of: string;
  readonly unit: string;
  readonly text: (value: number) => string;
  readonly stations: readonly number[];
  readonly values: readonly number[];
  /** Two sd of each. */
  readonly doubts?: readonly number[];
  /** What plus and minus mean: "+ high". */
  readonly plus: string;
  readonly minus: string;
  /** Both ends of the band that a limit leaves, at the first and at the last station. */
  readonly jaws?: readonly [readonly [number, number], readonly [number, number]];
  readonly verdict?: Verdict;
  readonly worst?: { readonly index: number; readonly text: string };
  /** mm that one unit of a value is, where it is a height: the exaggeration is stated. */
  readonly unit_mm?: number;
}

/** A place where the part could be printed and what it costs. */
export interface PrintPlace {
  readonly at: number;
  readonly cost: number;
  readonly text: string;
  readonly best: boolean;
}

export interface BedStripsFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  readonly strips: readonly BedStrip[];
  /** The place of printing: one wash through all strips. */
  readonly wash?: { readonly from: number; readonly to: number; readonly text: string };
  readonly places?: { readonly head: string; readonly of: string; readonly all: readonly PrintPlace[] };
  readonly x: PlotAxis;
  /** mm that one unit of a station is. */
  readonly x_unit_mm: number;
}

const size = 14;
const tall = 104;
const costTall = 92;
interface Frame {
  readonly figure: BedStripsFigure;
  readonly x: Scale;
  readonly left: number;
  readonly right: number;
  /** Names stand beside the strips, not above them. */
  readonly isWide: boolean;
}

const inkOf: Readonly<Record<Verdict, string>> = {
  within: palette.blue,
  outside: palette.lead,
  'not proven': palette.ink,
};

/** Every survey of the bed below each other on one axis from the headstock end, and the place of printing as a wash through all. */
export function bedStrips(figure: BedStripsFigure): Shape {
  const { strips, places, wash, width } = figure;
  const isWide = width >= 700;
  const all = [...strips.flatMap(({ stations }) => stations), ...(places?.all.map(({ at }) => at) ?? [])];
  const marks = strips.flatMap((strip) => scaleOf(strip).marks.map((mark) => strip.text(mark)));
  const left = (isWide ? 190 : 0) + Math.max(34, ...marks.map((mark) => textWidth(mark, size))) + 10;
  const right = width - 14;
  const x = linear([Math.min(0, ...all), Math.max(...all, 1)], [left + 6, right - 6]);
  const frame: Frame = { figure, x, left, right, isWide };
  const above = isWide ? 30 : 66;
  const top = wash ? 30 : 4;
  const pitch = tall + above + 18;
  const costTop = top + strips.length * pitch;
  const bottom = costTop + (places ? costTall + above + 12 : 0);
  const height = bottom + 44;
  return drawing(
    { ...figure, height },
    washOf(frame, top, bottom),
    strips.flatMap((strip, k) => stripOf(frame, strip, top + k * pitch + above)),
    places ? costs(frame, places, costTop + above) : [],
    axis(frame, bottom),
  );
}

function scaleOf(strip: BedStrip): {
  readonly low: number;
  readonly high: number;
  readonly marks: readonly number[];
} {
  const spread = strip.values.flatMap((value, i) => [
    value - (strip.doubts?.[i] ?? 0),
    value + (strip.doubts?.[i] ?? 0),
  ]);
  const all = [0, ...spread, ...(strip.jaws?.flat() ?? [])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return { low, high, marks: ticks(low, high, 3) };
}

function washOf({ figure: { wash }, x, left, right }: Frame, top: number, bottom: number): Shape[] {
  if (!wash) return [];
  const [from, to] = [Math.max(left, x(wash.from)), Math.min(right, x(wash.to))];
  const wide = textWidth(wash.text, 16);
  const at = clearPlace([(from + to - wide) / 2, left], wide, [left, right], []);
  return [
    rectangle(from, top - 8, Math.max(3, to - from), bottom - top + 8, palette.blueWash),
    label(at, top - 14, wash.text, { size: 16, weight: 660, fill: palette.blue }),
  ];
}

/** The strip's name, what of, and its verdict: beside it where there is room, else above it. */
function names(frame: Frame, head: string, of: string, verdict: Verdict | undefined, top: number): Shape[] {
  const quiet = { size, weight: 480, fill: palette.ink2 };
  const word = verdict && { size: 16, weight: 660, fill: inkOf[verdict] };
  if (!frame.isWide)
    return [
      label(0, top - 46, head, { size: 17, weight: 640 }),
      label(0, top - 28, of, quiet),
      ...(word ? [label(frame.right, top - 46, verdict, { ...word, anchor: 'end' })] : []),
    ];
  const lines = brokenLines(of, size, 180);
  return [
    label(0, top + 18, head, { size: 18, weight: 640 }),
    ...lines.map((text, k) => label(0, top + 38 + 18 * k, text, quiet)),
    ...(word ? [label(0, top + 42 + 18 * lines.length, verdict, word)] : []),
  ];
}

function stripOf(frame: Frame, strip: BedStrip, top: number): Shape[] {
  const { x, left, right, figure } = frame;
  const { low, high, marks } = scaleOf(strip);
  // The worst place has its number beyond it, clear of the line.
  const worst = strip.worst ? strip.values[strip.worst.index]! : 0;
  const [over, under] = [worst > 0 ? 24 : 9, worst < 0 ? 27 : 9];
  const y = linear([low, high === low ? low + 1 : high], [top + tall - under, top + over]);
  const spots = strip.values.map((value, i): Spot => [x(strip.stations[i]!), y(value)]);
  const { doubts } = strip;
  const quiet = { size, weight: 500, fill: palette.ink2 };
  const perX = (x(1) - x(0)) / figure.x_unit_mm;
  const times =
    strip.unit_mm === undefined ? '' : `heights × ${twoFigures((y(0) - y(1)) / strip.unit_mm / perX)}`;
  return [
    ...names(frame, strip.head, strip.of, strip.verdict, top),
    line([left, y(0)], [right, y(0)], palette.edge, 1.3),
    ...marks.flatMap((mark) => [
      line([left - 4, y(mark)], [left, y(mark)], palette.edge, 1.3),
      label(left - 7, y(mark) + 5, strip.text(mark), { ...quiet, anchor: 'end' }),
    ]),
    line([left, top], [left, top + tall], palette.edge, 1.3),
    ...(doubts ? [doubtRibbon(strip.stations, strip.values, doubts, x, y)] : []),
    shape('path', { d: pathThrough(spots), fill: 'none', stroke: palette.ink, 'stroke-width': 2.2 }),
    ...spots.map(([cx, cy]) => line([cx, cy - 4], [cx, cy + 4], palette.ink, 2)),
    ...jawsOf(strip, x, y),
    label(right, top - 7, `${strip.unit}, ${strip.plus}`, { ...quiet, anchor: 'end' }),
    label(right, top + tall + 13, strip.minus, { ...quiet, anchor: 'end' }),
    ...(times ? [label(left, top + tall + 13, times, quiet)] : []),
    ...worstOf(frame, strip, y, top),
  ];
}

/** Jaws end-on at both ends: a short bar at each limit. */
function jawsOf({ jaws, stations }: BedStrip, x: Scale, y: Scale): Shape[] {
  if (!jaws) return [];
  const [first, last] = [x(stations[0]!), x(stations.at(-1)!)];
  return [[first, jaws[0]] as const, [last, jaws[1]] as const].flatMap(([at, [low, high]]) => [
    rectangle(at - 9, y(high) - 6, 18, 6, palette.ink),
    rectangle(at - 9, y(low), 18, 6, palette.ink),
  ]);
}

function worstOf({ x, left, right }: Frame, strip: BedStrip, y: Scale, top: number): Shape[] {
  const { worst } = strip;
  if (!worst) return [];
  const value = strip.values[worst.index]!;
  const [cx, cy] = [x(strip.stations[worst.index]!), y(value)];
  const ink = strip.verdict === 'outside' ? palette.lead : palette.ink;
  const doubt = strip.doubts?.[worst.index] ?? 0;
  const half = Math.max(5, Math.abs(y(value + doubt) - cy));
  const wide = textWidth(worst.text, 16);
  const from = clearPlace([cx + 16, cx - 16 - wide], wide, [left + 2, right], []);
  // Off the line: below a hollow, above a crown, and inside the strip.
  const under = value < 0 ? cy + half + 15 : cy - half - 4;
  const at = Math.min(Math.max(under, top + 14), top + tall - 2);
  return [
    rectangle(cx - 7, cy - half, 14, 2 * half, ink, { rx: 7 }),
    line([cx - 4, cy], [cx + 4, cy], palette.sheet, 2.2),
    shape(
      'text',
      {
        x: from,
        y: at,
        'font-size': 16,
        'font-weight': 660,
        fill: ink,
        stroke: palette.paper,
        'stroke-width': 4,
        'paint-order': 'stroke',
      },
      worst.text,
    ),
  ];
}

/** What printing at each place costs: a stem a place, the best one blue. */
function costs(frame: Frame, places: NonNullable<BedStripsFigure['places']>, top: number): Shape[] {
  const { x, left, right } = frame;
  const most = Math.max(...places.all.map(({ cost }) => cost), 1e-9);
  const y = linear([0, most * 1.25], [top + costTall, top]);
  const taken: [number, number][] = [];
  const order = places.all.toSorted((a, b) => Number(b.best) - Number(a.best));
  const words = order.flatMap(({ at, cost, text, best }) => {
    const wide = textWidth(text, 15);
    const from = Math.min(Math.max(x(at) - wide / 2, left), right - wide);
    if (taken.some(([a, b]) => from < b + 6 && a < from + wide + 6)) return [];
    taken.push([from, from + wide]);
    return [
      label(from, y(cost) - 12, text, {
        size: 15,
        weight: best ? 700 : 560,
        fill: best ? palette.blue : palette.ink2,
      }),
    ];
  });
  return [
    ...names(frame, places.head, places.of, undefined, top),
    line([left, y(0)], [right, y(0)], palette.edge, 1.3),
    ...places.all.flatMap(({ at, cost, best }) => [
      line([x(at), y(0)], [x(at), y(cost)], best ? palette.blue : palette.edge, best ? 5 : 2),
      shape('circle', {
        cx: x(at),
        cy: y(cost),
        r: best ? 8 : 5,
        fill: best ? palette.blue : palette.sheet,
        stroke: best ? palette.blue : palette.edge,
        'stroke-width': 2,
      }),
    ]),
    ...words,
  ];
}

function axis({ figure, x, left, right }: Frame, bottom: number): Shape[] {
  const all = figure.strips.flatMap(({ stations }) => stations);
  const marks = ticks(Math.min(0, ...all), Math.max(...all, 1), right - left < 400 ? 4 : 8);
  return [
    line([left, bottom], [right, bottom], palette.ink, 1.6),
    ...marks.flatMap((mark) => [
      line([x(mark), bottom], [x(mark), bottom + 6], palette.ink, 1.6),
      label(x(mark), bottom + 22, figure.x.text(mark), { size, weight: 600, anchor: 'middle' }),
    ]),
    label(right, bottom + 40, figure.x.name, { size, weight: 480, fill: palette.ink2, anchor: 'end' }),
  ];
}
