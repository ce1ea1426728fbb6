import type { SumDrawing } from '../../core/sums/sum.ts';
import { drawing } from '../drawing.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { brokenLines, label, textWidth } from '../text.ts';
import {
  barTurned,
  cosineLine,
  edgeTurned,
  gib,
  level,
  levelTurned,
  lever,
  parallels,
  sineBar,
  squareTwoSides,
  taper,
  threeSquares,
} from './angles.ts';
import {
  barOnTwo,
  bow,
  facing,
  growth,
  headstockTaper,
  indicatorArm,
  supportPoints,
  tailstockTaper,
  testBarBetween,
  testBarHeld,
} from './bending.ts';
import {
  dovetailFemale,
  dovetailHeight,
  dovetailMale,
  dovetailTwoRolls,
  vFlanks,
  vOverRoll,
  vTwoRolls,
} from './dovetails.ts';
import { box } from './pen.ts';
import { liner, lostHeight, stack } from './stacks.ts';

/** Every drawing that a sum may name. */
const figures: Record<SumDrawing, () => Shape[]> = {
  'dovetail male': dovetailMale,
  'dovetail female': dovetailFemale,
  'dovetail two rolls': dovetailTwoRolls,
  'dovetail height': dovetailHeight,
  'v over roll': vOverRoll,
  'v two rolls': vTwoRolls,
  'v flanks': vFlanks,
  'sine bar': sineBar,
  taper,
  gib,
  level,
  'bar on two': barOnTwo,
  'support points': supportPoints,
  'test bar held': testBarHeld,
  'test bar between': testBarBetween,
  'indicator arm': indicatorArm,
  bow,
  growth,
  lever,
  'cosine line': cosineLine,
  facing,
  'headstock taper': headstockTaper,
  'tailstock taper': tailstockTaper,
  liner,
  'lost height': lostHeight,
  stack,
  'square two sides': squareTwoSides,
  'level turned': levelTurned,
  'bar turned': barTurned,
  'edge turned': edgeTurned,
  parallels,
  'three squares': threeSquares,
};

/** What a sum's drawing is made of. */
export interface SumFigure {
  readonly drawing: SumDrawing;
  readonly title: string;
  /** Letters with their words, in order: ["D", "10 mm"]; the legend under the figure. */
  readonly legend: readonly { readonly symbol: string; readonly text: string; readonly label: string }[];
  /** Natural width, px; 344 or more. */
  readonly width: number;
}

const lineHeight = 20;

/** A sum's figure with its letters, and under it what each letter is. Not to scale; what bends is drawn bent far more. */
export function sumDrawing(figure: SumFigure): Shape {
  const width = Math.max(figure.width, box.width + 4);
  const left = (width - box.width) / 2;
  const gutter = 12 + Math.max(0, ...figure.legend.map((one) => textWidth(one.symbol, 15)));
  let y = box.height + 28;
  const rows = figure.legend.flatMap(({ symbol, text, label: words }) => {
    const lines = brokenLines(`${text}  ${words}`, 14, width - gutter - 8);
    const shapes = [
      label(4, y, symbol, { size: 15, weight: 680 }),
      ...lines.map((one, k) => label(4 + gutter, y + k * lineHeight, one, { size: 14 })),
    ];
    y += lines.length * lineHeight;
    return shapes;
  });
  return drawing(
    {
      title: figure.title,
      desc: figure.legend.map(({ symbol, text, label: words }) => `${symbol}: ${words}, ${text}.`).join(' '),
      width,
      height: y,
    },
    shape('rect', { x: 0, y: 0, width, height: y, fill: palette.paper }),
    shape('g', { transform: `translate(${left} 8)` }, figures[figure.drawing]()),
    rows,
  );
}
