import type { Verdict } from '../core/prove/verdict.ts';
import { drawing } from './drawing.ts';
import { linear, type Measured } from './gauge-scale.ts';
import { type GaugeBand, jaws } from './jaws.ts';
import { line, pathThrough } from './line.ts';
import { palette } from './palette.ts';
import { type PinPlace, pin } from './pin.ts';
import { type Shape, shape } from './shape.ts';

export interface RowGaugeFigure {
  readonly title: string;
  readonly desc?: string;
  /** 76 to 180 px. */
  readonly width: number;
  /** Left out: 28 px. */
  readonly height?: number;
  readonly band: GaugeBand;
  /** Left out: nothing measured yet, so the jaws stand empty. Value and doubt (two sd) in the shown unit. */
  readonly now?: Measured & { readonly verdict: Verdict };
  readonly forecast?: Measured;
  /** The value the work began with: a thin hollow pin, or a chevron at the edge it lies beyond. */
  readonly as_found?: Measured;
  readonly domain?: readonly [number, number];
}

/** The gauge of one row or table cell: no words, for they stand beside it. */
export function rowGauge(figure: RowGaugeFigure): Shape {
  const { width, band } = figure;
  const height = figure.height ?? 28;
  const x = linear(figure.domain ?? rowDomain(figure), [4, width - 4]);
  const y = height / 2;
  const place = (value: Measured, tall: number): PinPlace => ({
    x: x(value.value),
    half: x(value.doubt) - x(0),
    y,
    height: tall,
    left: 1,
    right: width - 1,
  });
  const { as_found: found } = figure;
  const isFoundOff = found !== undefined && (x(found.value) < 4 || x(found.value) > width - 4);
  return drawing(
    { ...figure, height },
    line([0, y], [width, y], palette.line, 1.2),
    jaws({
      low: band.low === undefined ? undefined : x(band.low),
      high: band.high === undefined ? undefined : x(band.high),
      top: 2,
      bottom: height - 2,
      left: 0,
      right: width,
      thick: 5,
      chamfer: 2,
    }),
    found === undefined
      ? []
      : isFoundOff
        ? chevron(x(found.value) < 4, width, y)
        : pin(place(found, 8), 'as found'),
    figure.forecast ? pin(place(figure.forecast, height * 0.5), 'forecast') : [],
    figure.now ? pin(place(figure.now, height * 0.56), figure.now.verdict) : [],
  );
}

/** Half a band of air on both sides of the band: enough to see a pin that is just out; what lies farther is pointed. */
function rowDomain(figure: RowGaugeFigure): [number, number] {
  const { low, high } = figure.band;
  if (low !== undefined && high !== undefined) {
    const air = (high - low) * 0.55;
    return [low - air, high + air];
  }
  const limit = low ?? high ?? 0;
  const reach = Math.max(
    ...[figure.now, figure.forecast]
      .filter((value) => value !== undefined)
      .map((value) => Math.abs(value.value - limit) + value.doubt),
    Math.abs(limit) * 0.3,
    1e-9,
  );
  return [limit - reach * 1.1, limit + reach * 1.1];
}

function chevron(isLeft: boolean, width: number, y: number): Shape {
  const tip = isLeft ? 2 : width - 2;
  const back = isLeft ? 8 : width - 8;
  return shape('path', {
    d: pathThrough([
      [back, y - 6],
      [tip, y],
      [back, y + 6],
    ]),
    fill: 'none',
    stroke: palette.edge,
    'stroke-width': 2,
  });
}
