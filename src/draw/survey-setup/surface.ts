import { arrow } from '../line.ts';
import { palette } from '../palette.ts';
import { disc } from '../setup/parts.ts';
import { type Shape, shape } from '../shape.ts';
import { type CardFigure, onStage, outlined, type Stage, tag } from './stage.ts';

const left = 56;
const right = 318;
const top = 18;
const bottom = 178;

const plate = (stage: Stage): Shape =>
  outlined(
    stage,
    [
      [left - 18, top - 14],
      [right + 18, top - 14],
      [right + 18, bottom + 14],
      [left - 18, bottom + 14],
    ],
    palette.steel,
  );

const edges = ({ places }: CardFigure) => ({
  seen: 'seen from above',
  top: places.far,
  left: `${places.near}: you stand here`,
});

const xs = [0, 1, 2, 3, 4].map((k) => left + (k * (right - left)) / 4);
const ys = [0, 1, 2].map((k) => bottom - (k * (bottom - top)) / 2);

/** Heights at the crossings of a grid, row by row. */
export const gridOfHeights = (figure: CardFigure): Shape =>
  onStage(figure, 200, edges(figure), (stage) => [
    plate(stage),
    ...ys.flatMap((y) => xs.map((x) => dot(stage, x, y))),
    ...ys.map((y, j) => row(stage, y, j + 1)),
    tag(stage, 187, (ys[0]! + ys[1]!) / 2, 'stands proud is plus', palette.steel),
  ]);

const dot = (stage: Stage, x: number, y: number): Shape => {
  const [cx, cy] = stage.at(x, y);
  return shape('circle', { cx, cy, r: 3.4, fill: palette.ink });
};

/** A row's arrow with its number at its start. */
const row = (stage: Stage, y: number, number: number): Shape[] => [
  disc(stage.at(left - 2, y), number, 9 * stage.by),
  arrow(stage.at(left + 12, y), stage.at(right + 4, y), palette.ink, 1.8, 11),
];

const column = (stage: Stage, x: number): Shape =>
  arrow(stage.at(x, bottom), stage.at(x, top - 4), palette.ink2, 1.8, 11);

/** A level along every row, then along every column. */
export const levelGrid = (figure: CardFigure): Shape =>
  onStage(figure, 200, edges(figure), (stage) => [
    plate(stage),
    ...xs.map((x) => column(stage, x)),
    ...ys.map((y, j) => row(stage, y, j + 1)),
    stage.solid(xs[1]! - 22, ys[0]! - 7, 44, 14),
    ...['rows first, then columns', 'end ahead high is plus'].map((words, k) =>
      tag(stage, 187, (ys[1]! + ys[k ? 2 : 0]!) / 2, words, palette.steel),
    ),
  ]);

type Ends = readonly [x1: number, y1: number, x2: number, y2: number];

/** Sides, middle lines and diagonals, numbered in the order of the sheet, each arrow the way it is stepped. */
export const eightLineWalk = (figure: CardFigure): Shape => {
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const lines: readonly Ends[] = [
    [left, bottom, right, bottom],
    [left, top, right, top],
    [left, bottom, left, top],
    [right, bottom, right, top],
    [left, middle.y, right, middle.y],
    [middle.x, bottom, middle.x, top],
    [left, bottom, right, top],
    [left, top, right, bottom],
  ];
  return onStage(figure, 200, edges(figure), (stage) => [
    plate(stage),
    ...lines.map(([x1, y1, x2, y2]) => arrow(stage.at(x1, y1), stage.at(x2, y2), palette.ink, 1.8, 11)),
    // A third of the way along keeps the numbers off the crossings.
    ...lines.map(([x1, y1, x2, y2], k) =>
      disc(stage.at(x1 + (x2 - x1) * 0.3, y1 + (y2 - y1) * 0.3), k + 1, 8.5 * stage.by),
    ),
  ]);
};
