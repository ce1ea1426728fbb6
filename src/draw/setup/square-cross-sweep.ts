import { subtract } from '../../core/body/vector.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import { drawing, group } from '../drawing.ts';
import { boxCorners } from '../hatch.ts';
import { chamfered, line, pathThrough, rectangle, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { barsOf } from '../slide-section.ts';
import { brokenLines, label } from '../text.ts';
import { placeTexts, type SetupFigure, setupScale, signAlong } from './figure.ts';
import { disc, ghost, indicator, inIsPlus, rider, touchedBody, travelArrow } from './parts.ts';
import { type View, viewFrom } from './view.ts';

/**
 * An indicator carried across on the cross ways, its plunger on a square that is set true to the travel: seen from above.
 * The square stands on the side the plunger points to; the arrow runs the way the sweep runs.
 */
export function squareCrossSweep(figure: SetupFigure<SweepSetup>): Shape {
  const { setup, slide, places, width } = figure;
  const view = viewFrom('above', slide, places);
  const { by, text, isWide } = setupScale(width);
  const strip = Math.round(30 * by);
  const left = strip + 8;
  const top = text + 14;
  const height = Math.round(286 * by);
  const bottom = height - text - 14;
  // Everything is set out from the square's side: it lies left or right as the plunger points.
  const isLeft = signAlong(setup.plunger, view.right) < 0;
  const inner = width - left;
  const x = (share: number): number => (isLeft ? left + share * inner : width - share * inner);
  const toward: Spot = [isLeft ? -1 : 1, 0];
  const isUp = signAlong(subtract(setup.to_mm, setup.from_mm), view.up) > 0;
  const near = bottom - 50 * by;
  const far = top + 50 * by;
  const start = isUp ? near : far;
  const end = isUp ? far : near;
  const block = { x: x(0.64), wide: 54 * by, tall: 56 * by };
  const face = x(0.235);
  const places_ = placeTexts(figure);
  const lettering = { size: text, weight: 560 };
  const travelX = x(0.795);
  const beside = (spot: number) =>
    isLeft ? { x: spot, anchor: 'start' as const } : { x: spot, anchor: 'end' as const };
  const touchY = (top + bottom) / 2 - (isUp ? 30 * by : -6 * by);
  return drawing(
    {
      title: `${setup.name}: ${view.seen}`,
      desc: describe(figure, view, isLeft, isUp),
      width,
      height,
    },
    castings(figure, x, top, bottom, width, left),
    rectangle(0, top, strip, bottom - top, palette.steel, { stroke: palette.ink, 'stroke-width': 1.5 }),
    upright(view.leftWords, strip / 2 + text * 0.35, (top + bottom) / 2, text),
    ghost(block.x, end, block.wide, block.tall),
    square(x, face, top, bottom, isLeft),
    rider((block.x + x(0.53)) / 2, start, Math.abs(block.x - x(0.53)), 15 * by),
    rider(block.x, start, block.wide, block.tall),
    label(block.x, start + text * 0.35, 'rides', {
      size: text + 1,
      weight: 640,
      fill: palette.paper,
      anchor: 'middle',
    }),
    indicator([face - toward[0] * 3, start], toward, 40 * by, 17 * by, Math.abs(x(0.53) - face) - 56 * by),
    inIsPlus([face - toward[0] * 8, start - 30 * by], toward, text, 36 * by),
    disc([face - toward[0] * (16 + 4 * by), touchY], 2, 9 * by),
    label(beside(face - toward[0] * (8 + 4 * by)).x, touchY + 9 * by + text + 2, 'touches', {
      ...lettering,
      weight: 640,
      anchor: beside(0).anchor,
    }),
    isWide && figure.words?.touches
      ? [
          label(
            beside(face - toward[0] * (8 + 4 * by)).x,
            touchY + 9 * by + 2 * text + 6,
            figure.words.touches,
            { ...lettering, anchor: beside(0).anchor },
          ),
        ]
      : [],
    travelArrow([travelX, start], [travelX, end]),
    travelWords(figure, places_, travelX, start, end, isLeft, text),
    group({}, line([block.x, Math.max(start, end) + block.tall / 2], [block.x, bottom + 2], palette.ink, 2)),
    disc([block.x, bottom + 9 * by * 0.6], 1, 9 * by),
    isWide && figure.words?.rides
      ? [
          label(block.x - 15 * by, bottom + 8 * by, figure.words.rides, {
            ...lettering,
            weight: 640,
            anchor: 'end',
          }),
        ]
      : [],
    edgeWords(view, width, height, text, isWide),
  );
}

/** The square from above: a blade along the sweep, its heavy face toward the indicator, and a foot. */
function square(
  x: (share: number) => number,
  face: number,
  top: number,
  bottom: number,
  isLeft: boolean,
): Shape {
  const back = x(0.165);
  const foot = x(0.02);
  const low = bottom - 4;
  const corners: Spot[] = [
    [face, top - 4],
    [face, low],
    [foot, low],
    [foot, low - 17],
    [back, low - 17],
    [back, top - 4],
  ];
  return touchedBody(isLeft ? corners : [...corners].reverse(), [
    [face, top - 4],
    [face, low - 14],
  ]);
}

/** The ways and the slide's underside bars at their own distances across, and the cross ways on the neck. */
function castings(
  figure: SetupFigure<SweepSetup>,
  x: (share: number) => number,
  top: number,
  bottom: number,
  width: number,
  left: number,
): Shape[] {
  const bars = barsOf(figure.slide);
  const lowest = bars[0]!.near_mm;
  const highest = bars.at(-1)!.far_mm;
  const tall = 30;
  const y = (mm: number): number =>
    bottom - 16 - tall / 2 - ((mm - lowest) / (highest - lowest || 1)) * (bottom - top - 32 - tall);
  const from = Math.min(x(0.36), x(0.98));
  const to = Math.max(x(0.36), x(0.98));
  const neck = [Math.min(x(0.53), x(0.75)), Math.max(x(0.53), x(0.75))] as const;
  const outline = { fill: 'none', stroke: palette.ink, 'stroke-width': 1.5 };
  const middles = bars.map((bar) => y((bar.near_mm + bar.far_mm) / 2));
  const ways = bars.flatMap((bar, i) => [
    rectangle(left, middles[i]! - 12, width - left, 24, palette.sheet, {
      stroke: palette.edge,
      'stroke-width': 1.2,
    }),
    ...(bar.faces.length > 1 && bar.high_mm - bar.low_mm > 1
      ? [line([left, middles[i]!], [width, middles[i]!], palette.edge, 1.2)]
      : []),
  ]);
  const highBar = Math.min(...middles) - 22;
  const lowBar = Math.max(...middles) + 22;
  return [
    ...ways,
    ...middles.map((middle) =>
      shape('path', {
        d: pathThrough(chamfered(boxCorners(from, middle - 22, to - from, 44), [7, 7, 7, 7]), true),
        fill: palette.paper,
        'fill-opacity': 0.72,
        stroke: palette.ink,
        'stroke-width': 1.5,
      }),
    ),
    rectangle(neck[0], highBar + 43, neck[1] - neck[0], Math.max(lowBar - highBar - 86, 0), palette.paper),
    ...neck.map((at) =>
      line([at, highBar + 44], [at, Math.max(lowBar - 44, highBar + 44)], palette.ink, 1.5),
    ),
    ...[0.585, 0.61, 0.67, 0.695].map((share, i) =>
      shape('path', {
        d: pathThrough([
          [x(share), top - 4],
          [x(share), bottom + 2],
        ]),
        ...outline,
        stroke: i === 1 || i === 2 ? palette.edge : palette.ink,
      }),
    ),
  ];
}

function travelWords(
  figure: SetupFigure<SweepSetup>,
  texts: { readonly first: string; readonly last: string },
  x: number,
  start: number,
  end: number,
  isRight: boolean,
  size: number,
): Shape[] {
  const put = (words: string, y: number, weight: number, fill: string = palette.ink): Shape => {
    return label(isRight ? x + 9 : x - 9, y, words, {
      size,
      weight,
      fill,
      anchor: isRight ? 'start' : 'end',
    });
  };
  const inward = end < start ? -1 : 1;
  return [
    put(texts.first, start + inward * 20 + 5, 640),
    put(texts.last, end - inward * 14 + 5, 640),
    ...(figure.words?.travel && size > 14
      ? brokenLines(figure.words.travel, size, 90).map((words, k) =>
          put(words, (start + end) / 2 - 10 + k * size * 1.25, 480, palette.ink2),
        )
      : []),
  ];
}

export const upright = (words: string, x: number, y: number, size: number): Shape =>
  shape(
    'text',
    {
      x: 0,
      y: 0,
      transform: `translate(${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}) rotate(-90)`,
      'font-size': size,
      'font-weight': 640,
      'text-anchor': 'middle',
      fill: palette.ink,
    },
    words,
  );

function edgeWords(view: View, width: number, height: number, size: number, isWide: boolean): Shape[] {
  const quiet = { size, weight: 480, fill: palette.ink2 };
  return [
    ...(isWide ? [label(0, size, view.seen, quiet)] : []),
    label(width - 2, size, view.topWords, { ...quiet, anchor: 'end' }),
    label(0, height - 4, view.bottomWords, quiet),
    label(width - 2, height - 4, view.rightWords, { ...quiet, anchor: 'end' }),
  ];
}

function describe(figure: SetupFigure<SweepSetup>, view: View, isLeft: boolean, isUp: boolean): string {
  const { setup } = figure;
  const end = isLeft ? view.leftWords : view.rightWords;
  const [from, to] = isUp ? [view.bottomWords, view.topWords] : [view.topWords, view.bottomWords];
  const { first, last } = placeTexts(figure);
  return `Rides ${setup.rides_words} Touches ${setup.touches_words} The plunger points to the ${end}; in is plus. The sweep runs from the ${from} (${first}) to the ${to} (${last}).`;
}
