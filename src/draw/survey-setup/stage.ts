import { drawing } from '../drawing.ts';
import { arrow, line, pathThrough, rectangle, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { disc, indicator, inIsPlus, travelArrow } from '../setup/parts.ts';
import { type Shape, shape } from '../shape.ts';
import { brokenLines, type Lettering, label, textWidth } from '../text.ts';

/** What the edges of a survey's card are called. */
export interface CardPlaces {
  /** At the minus and plus end of the travel. */
  readonly minusEnd: string;
  readonly plusEnd: string;
  /** At the operator's side and the far side. */
  readonly near: string;
  readonly far: string;
}

/** What a survey's card is drawn from. */
export interface CardFigure {
  readonly title: string;
  /** The whole card in sentences, for whoever cannot see it. */
  readonly desc: string;
  /** px. */
  readonly width: number;
  readonly places: CardPlaces;
}

/** Cards are set out in a box this wide, then drawn as wide as there is room; letters keep their size. */
export const boxWidth = 358;

/** The pens of a card: places and sizes of the box as px. */
export interface Stage {
  readonly figure: CardFigure;
  /** px for each unit of the box. */
  readonly by: number;
  readonly text: number;
  readonly at: (x: number, y: number) => Spot;
  readonly way: (x: number, y: number, wide: number, tall: number) => Shape[];
  readonly solid: (x: number, y: number, wide: number, tall: number) => Shape;
  readonly dashed: (x: number, y: number, wide: number, tall: number) => Shape;
  readonly word: (x: number, y: number, words: string, lettering?: Lettering) => Shape;
  readonly quiet: (x: number, y: number, words: string, anchor?: Lettering['anchor']) => Shape;
  readonly dial: (x: number, y: number, plunger: Spot, reach?: number) => Shape;
  /** The arrow beside a plunger: in is plus points against it, out is plus with it. */
  readonly plusArrow: (x: number, y: number, plunger: Spot, aside: 1 | -1, way: 'in' | 'out') => Shape[];
  readonly up: (x: number, y: number, tall: number, words: string, aside: 1 | -1) => Shape[];
  readonly travel: (x1: number, y1: number, x2: number, y2: number) => Shape;
  readonly disc: (x: number, y: number, number: number) => Shape;
  readonly thin: (x1: number, y1: number, x2: number, y2: number, dash?: string) => Shape;
}

/** Parts of a card, grouped as they were drawn. */
export type Strokes = Shape | readonly Strokes[];

const flat = (strokes: Strokes): Shape[] => ('tag' in strokes ? [strokes] : strokes.flatMap(flat));

/** A card's root with its pens; `tall` in units of the box. Ends' names stand below, from where it is seen above. */
export function onStage(
  figure: CardFigure,
  tall: number,
  edges: { readonly seen: string; readonly left?: string; readonly right?: string; readonly top?: string },
  draw: (stage: Stage) => Strokes,
): Shape {
  const by = Math.min(Math.max(figure.width / boxWidth, 0.86), 1.6);
  const text = figure.width >= 560 ? 17 : 14;
  const height = Math.round(tall * by + 2 * text + 20);
  const left = (figure.width - boxWidth * by) / 2;
  const at = (x: number, y: number): Spot => [left + x * by, text + 10 + y * by];
  const stage = pens(figure, by, text, at);
  const quiet = { size: text, weight: 480, fill: palette.ink2 };
  return drawing(
    { title: figure.title, desc: figure.desc, width: figure.width, height },
    flat(draw(stage)),
    label(0, text, edges.seen, quiet),
    ...(edges.top ? [label(figure.width - 2, text, edges.top, { ...quiet, anchor: 'end' })] : []),
    ...(edges.left ? [label(0, height - 5, edges.left, quiet)] : []),
    ...(edges.right ? [label(figure.width - 2, height - 5, edges.right, { ...quiet, anchor: 'end' })] : []),
  );
}

function pens(figure: CardFigure, by: number, text: number, at: Stage['at']): Stage {
  const rect = (x: number, y: number, wide: number, tall: number, fill: string, more = {}) =>
    rectangle(...at(x, y), wide * by, tall * by, fill, more);
  /** Words never run off the sheet. */
  const inside = (x: number, words: string, lettering: Lettering): number => {
    const wide = textWidth(words, lettering.size ?? text);
    const before = lettering.anchor === 'middle' ? wide / 2 : lettering.anchor === 'end' ? wide : 0;
    return Math.min(Math.max(x, before), figure.width - 2 - (wide - before));
  };
  const word: Stage['word'] = (x, y, words, lettering = {}) => {
    const own = { size: text, weight: 640, ...lettering };
    const [px, py] = at(x, y);
    return label(inside(px, words, own), py, words, own);
  };
  return {
    figure,
    by,
    text,
    at,
    word,
    way: (x, y, wide, tall) => [
      rect(x, y, wide, tall, palette.steel, { stroke: palette.edge, 'stroke-width': 1.3 }),
      line(at(x, y), at(x + wide, y), palette.ink, 3),
    ],
    solid: (x, y, wide, tall) => rect(x, y, wide, tall, palette.ink),
    dashed: (x, y, wide, tall) =>
      rect(x, y, wide, tall, 'none', {
        stroke: palette.ink,
        'stroke-width': 1.5,
        'stroke-dasharray': '5 4',
      }),
    quiet: (x, y, words, anchor) =>
      word(x, y, words, { weight: 480, fill: palette.ink2, ...(anchor ? { anchor } : {}) }),
    dial: (x, y, plunger, reach = 34) => indicator(at(x, y), plunger, reach * by, 14 * by, 6 * by),
    plusArrow: (x, y, plunger, aside, way) => {
      if (way === 'in') return inIsPlus(at(x, y), plunger, text, 32 * by, aside);
      const from = at(x - plunger[0] * 32, y - plunger[1] * 32);
      const [wx, wy] = at(x, y - plunger[1] * 16);
      const wide = textWidth('out is plus', text);
      return [
        shape('g', { 'data-part': 'out is plus' }, arrow(from, at(x, y), palette.ink, 3.4, 13)),
        label(aside > 0 ? wx + 10 : wx - 10 - wide, wy + 5, 'out is plus', { size: text, weight: 660 }),
      ];
    },
    up: (x, y, tall, words, aside) => {
      const [px, py] = at(x, y - tall / 2);
      const room = aside > 0 ? figure.width - px - 12 : px - 12;
      const lines = brokenLines(words, text, Math.min(190 * by, room));
      return [
        shape('g', { 'data-part': 'plus' }, arrow(at(x, y), at(x, y - tall), palette.ink, 3.2, 12)),
        ...lines.map((one, k) => {
          const own: Lettering = { size: text, weight: 660, anchor: aside > 0 ? 'start' : 'end' };
          return label(
            inside(px + aside * 9, one, own),
            py + 5 + (k - (lines.length - 1) / 2) * text * 1.15,
            one,
            own,
          );
        }),
      ];
    },
    travel: (x1, y1, x2, y2) => travelArrow(at(x1, y1), at(x2, y2)),
    disc: (x, y, number) => disc(at(x, y), number, 9 * by),
    thin: (x1, y1, x2, y2, dash) =>
      line(at(x1, y1), at(x2, y2), palette.ink2, 1.4, dash === undefined ? {} : { 'stroke-dasharray': dash }),
  };
}

/** Words on a plate of their own ground, their middle at the place: to be read over dots and lines. */
export function tag(
  stage: Stage,
  x: number,
  y: number,
  words: string,
  ground: string = palette.sheet,
): Shape {
  const size = stage.text;
  const wide = textWidth(words, size) * 1.04 + 10;
  const [px, py] = stage.at(x, y);
  return shape(
    'g',
    {},
    rectangle(px - wide / 2, py - size * 0.78, wide, size * 1.5, ground),
    label(px, py + size * 0.33, words, { size, weight: 640, anchor: 'middle' }),
  );
}

/** A closed outline in units of the box: castings and plates. */
export const outlined = (stage: Stage, corners: readonly Spot[], fill: string = palette.paper): Shape =>
  shape('path', {
    d: pathThrough(
      corners.map(([x, y]) => stage.at(x, y)),
      true,
    ),
    fill,
    stroke: palette.ink,
    'stroke-width': 1.6,
  });
