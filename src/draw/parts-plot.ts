import { ticks } from 'd3-array';
import { drawing } from './drawing.ts';
import { linear } from './gauge-scale.ts';
import { line, pathThrough, rectangle, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { doubtRibbon, valueAxis } from './plot-parts.ts';
import { type Shape, shape } from './shape.ts';
import { twoFigures } from './sweep-plot.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** A profile of a part as it comes off: along a turned length, or from rim to centre of a face. */
export interface PartsPlotFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  /** Left out: 270 px. */
  readonly height?: number;
  /** Sentence under the heading. */
  readonly words?: string;
  /** mm along; rising or falling: the first stands at the left. */
  readonly places_mm: readonly number[];
  readonly value_um: readonly number[];
  /** Two sd, one a place. */
  readonly doubt_um: readonly number[];
  /** A fitted form, drawn thin. */
  readonly fit_um?: readonly number[];
  readonly x: { readonly name: string; readonly left: string; readonly right: string };
  readonly y: { readonly name: string; readonly text: (value: number) => string };
}

const size = 14;
/** Where the page lacks the typeface, its stand-in is broader. */
const wordShare = 0.84;
/** One mm and one µm in mm: the exaggeration follows. */
const mmOf = { mm: 1, um: 0.001 };

/** The profile with a ribbon as wide as its doubt, the fitted form dashed, and how many times heights are drawn too tall. */
export function partsPlot(figure: PartsPlotFigure): Shape {
  const { width, places_mm, value_um, doubt_um, fit_um = [] } = figure;
  const words = figure.words ? brokenLines(figure.words, size, width * wordShare) : [];
  const lead = words.length * 18 + (words.length ? 8 : 0);
  const height = (figure.height ?? 270) + lead;
  const all = [0, ...value_um.flatMap((v, i) => [v - doubt_um[i]!, v + doubt_um[i]!]), ...fit_um];
  const low = Math.min(...all);
  const high = Math.max(...all);
  // A part without any error still has an axis: one µm tall.
  const air = Math.max(high - low, 1) * 0.1;
  const marks = ticks(low - air, high + air, 5);
  const left = Math.max(...marks.map((mark) => textWidth(figure.y.text(mark), size)), 16) + 12;
  const top = 32 + lead;
  const bottom = height - 46;
  const x = linear([places_mm[0]!, places_mm.at(-1)!], [left + 8, width - 16]);
  const y = linear([low - air, high + air], [bottom, top]);
  const perX = Math.abs(x(1) - x(0)) / mmOf.mm;
  const perY = (y(0) - y(1)) / mmOf.um;
  const times = `heights × ${twoFigures(perY / perX)}`;
  const spots = (of: (i: number) => number): Spot[] => places_mm.map((at, i) => [x(at), y(of(i))]);
  const quiet = { size, weight: 500, fill: palette.ink2 };
  return drawing(
    { title: figure.title, ...(figure.desc ? { desc: figure.desc } : {}), width, height },
    words.map((words, k) => label(0, 15 + 18 * k, words, { size, weight: 560 })),
    label(0, lead + 16, figure.y.name, quiet),
    label(width - 2, lead + 16, times, { ...quiet, anchor: 'end' }),
    rectangle(left, top, width - left - 2, bottom - top, palette.sheet),
    valueAxis(figure.y, marks, y, left, width - 2),
    doubtRibbon(places_mm, value_um, doubt_um, x, y),
    ...(fit_um.length
      ? [
          shape('path', {
            d: pathThrough(spots((i) => fit_um[i]!)),
            fill: 'none',
            stroke: palette.ink2,
            'stroke-width': 1.4,
            'stroke-dasharray': '5 4',
          }),
        ]
      : []),
    shape('path', {
      d: pathThrough(spots((i) => value_um[i]!)),
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 2.2,
    }),
    line([left, bottom], [width - 2, bottom], palette.edge, 1.3),
    label(left, bottom + 19, figure.x.left, quiet),
    label(width - 2, bottom + 19, figure.x.right, { ...quiet, anchor: 'end' }),
    label(width - 2, height - 6, figure.x.name, { ...quiet, weight: 480, anchor: 'end' }),
  );
}
