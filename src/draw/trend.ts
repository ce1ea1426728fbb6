import { ticks } from 'd3-array';
import { drawing } from './drawing.ts';
import { gaugeDomain, linear } from './gauge-scale.ts';
import type { GaugeBand } from './jaws.ts';
import { line, pathThrough, rectangle, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { label, textWidth } from './text.ts';

/** A quantity in a round: value and doubt (two sd) in the shown unit, and how it is spoken. */
export interface TrendPoint {
  readonly label: string;
  readonly value: number;
  readonly doubt: number;
  readonly text: string;
}

export interface TrendFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  /** Left out: 200 px. */
  readonly height?: number;
  readonly rounds: readonly TrendPoint[];
  readonly forecast?: TrendPoint;
  readonly band?: GaugeBand;
  /** What is counted and in what: "a pass takes, µm". */
  readonly name: string;
  /** How a figure of the axis is written. */
  readonly axisText: (value: number) => string;
}

const size = 14;

/** A quantity round by round: pins upright, each as tall as its doubt; the band as a strip of sheet between its limits. */
export function trend(figure: TrendFigure): Shape {
  const { width, rounds, forecast, band = {} } = figure;
  const height = figure.height ?? 200;
  const points = [...rounds, ...(forecast ? [forecast] : [])];
  const domain = gaugeDomain(band, points);
  const marks = ticks(domain[0], domain[1], 4);
  const left = Math.max(16, ...marks.map((mark) => textWidth(figure.axisText(mark), size))) + 10;
  const y = linear(domain, [height - 30, 34]);
  const x = linear([-0.5, Math.max(points.length, 2) - 0.5], [left, width]);
  const low = band.low === undefined ? height - 30 : y(band.low);
  const high = band.high === undefined ? 34 : y(band.high);
  const hasBand = band.low !== undefined || band.high !== undefined;
  const middles = rounds.map((point, i): Spot => [x(i), y(point.value)]);
  return drawing(
    { ...figure, height },
    label(0, 15, figure.name, { size, weight: 500, fill: palette.ink2 }),
    hasBand ? rectangle(left, high, width - left, low - high, palette.sheet) : [],
    marks.flatMap((mark) => [
      line([left, y(mark)], [width, y(mark)], palette.line, 1),
      label(left - 7, y(mark) + 5, figure.axisText(mark), {
        size,
        weight: 480,
        fill: palette.ink2,
        anchor: 'end',
      }),
    ]),
    [band.low, band.high]
      .filter((limit) => limit !== undefined)
      .map((limit) => line([left, y(limit)], [width, y(limit)], palette.ink, 3)),
    middles.length > 1
      ? shape('path', { d: pathThrough(middles), fill: 'none', stroke: palette.edge, 'stroke-width': 1.3 })
      : [],
    forecast && middles.length
      ? line(middles.at(-1)!, [x(rounds.length), y(forecast.value)], palette.edge, 1.3, {
          'stroke-dasharray': '3 3',
        })
      : [],
    points.flatMap((point, i) => {
      const isForecast = i === rounds.length;
      return [
        uprightPin(x(i), y, point, isForecast ? 'forecast' : i === rounds.length - 1 ? 'now' : 'past'),
        label(x(i), height - 8, point.label, {
          size,
          weight: i === rounds.length - 1 ? 700 : 500,
          fill: i === rounds.length - 1 ? palette.ink : palette.ink2,
          anchor: 'middle',
        }),
        ...(i >= rounds.length - 1 ? [valueText(point, x(i), y, isForecast, [left, width], band)] : []),
      ];
    }),
  );
}

function uprightPin(
  x: number,
  y: (value: number) => number,
  point: TrendPoint,
  look: 'past' | 'now' | 'forecast',
): Shape {
  const wide = look === 'past' ? 11 : 17;
  const top = y(point.value + point.doubt);
  const tall = Math.max(y(point.value - point.doubt) - top, 6);
  const dashed = look === 'forecast';
  return shape(
    'g',
    {},
    rectangle(x - wide / 2, top, wide, tall, dashed ? 'none' : look === 'now' ? palette.ink : palette.edge, {
      rx: Math.min(wide / 2, tall / 2),
      ...(dashed ? { stroke: palette.ink, 'stroke-width': 2, 'stroke-dasharray': '5 3.5' } : {}),
    }),
    line(
      [x - wide * 0.32, y(point.value)],
      [x + wide * 0.32, y(point.value)],
      dashed ? palette.ink : palette.sheet,
      2,
    ),
  );
}

function valueText(
  point: TrendPoint,
  x: number,
  y: (value: number) => number,
  isForecast: boolean,
  room: readonly [number, number],
  band: GaugeBand,
): Shape {
  const wide = textWidth(point.text, size);
  const at = Math.min(Math.max(x - wide / 2, room[0]), room[1] - wide);
  const over = y(point.value + point.doubt) - 7;
  const isCrossed = [band.low, band.high].some((limit) => {
    const at = limit === undefined ? Number.NaN : y(limit);
    return at > over - size && at < over + 5;
  });
  const level = over < 30 || isCrossed ? y(point.value - point.doubt) + 17 : over;
  return label(at, level, point.text, { size, weight: isForecast ? 560 : 680 });
}
