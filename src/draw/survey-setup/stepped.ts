import { palette } from '../palette.ts';
import { levelBody } from '../setup/level.ts';
import { type Shape, shape } from '../shape.ts';
import { type CardFigure, onStage, type Stage } from './stage.ts';

const step = 82;
const first = 92;

/** Foot marks under the way, so that the next foot finds the place of the last. */
const marks = (stage: Stage, y: number): Shape[] =>
  [0, 1, 2, 3].map((k) => stage.thin(first + k * step, y, first + k * step, y + 8));

/** A level stepped along a way, each foot where the other stood: from the side. */
export const levelSteps = (figure: CardFigure): Shape =>
  onStage(
    figure,
    176,
    {
      seen: `seen from the ${figure.places.near}`,
      left: figure.places.minusEnd,
      right: figure.places.plusEnd,
    },
    (stage) => [
      stage.way(4, 112, 350, 30),
      marks(stage, 114),
      stage.dashed(first + step, 88, step, 24),
      stage.dashed(first + 2 * step, 88, step, 24),
      levelBody(...stage.at(first + step / 2, 97), (step + 14) * stage.by, 20 * stage.by, stage.by * 0.9),
      ...[first, first + step].map((x) => stage.solid(x - 6, 106, 12, 6)),
      stage.up(first + step, 80, 36, 'this end high is plus', 1),
      stage.disc(first - 26, 97, 1),
      stage.travel(first + step / 2, 160, first + 2.5 * step, 160),
      stage.disc(first + 2.5 * step + 18, 160, 2),
      stage.quiet(8, 164, 'foot to foot'),
    ],
  );

/** The tube of an autocollimator and its line of sight. */
const tube = (stage: Stage, y: number): Shape[] => [
  stage.solid(10, y - 12, 58, 24),
  shape('rect', {
    x: stage.at(64, y - 9)[0],
    y: stage.at(64, y - 9)[1],
    width: 8 * stage.by,
    height: 18 * stage.by,
    fill: palette.sheet,
    stroke: palette.ink,
    'stroke-width': 1.6,
  }),
  stage.thin(72, y, 160, y, '12 4 2 4'),
];

/** Autocollimator and its mirror on a foot stepped along a way: from the side for up and down, from above for sideways. */
export function mirrorSteps(figure: CardFigure, direction: 'vertical' | 'horizontal'): Shape {
  const isUp = direction === 'vertical';
  const { places } = figure;
  return onStage(
    figure,
    190,
    {
      seen: isUp ? `seen from the ${places.near}` : 'seen from above',
      left: places.minusEnd,
      right: places.plusEnd,
      ...(isUp ? {} : { top: places.far }),
    },
    (stage) => {
      const foot = 160;
      const wide = 74;
      return [
        isUp ? stage.way(84, 126, 270, 30) : wayFromAbove(stage, 84, 74, 270, 66),
        isUp ? stage.solid(34, 86, 8, 70) : [],
        tube(stage, isUp ? 80 : 106),
        isUp ? stage.solid(foot, 114, wide, 12) : stage.solid(foot, 92, wide, 28),
        isUp ? stage.solid(foot + 2, 60, 8, 56) : stage.solid(foot, 84, 8, 44),
        isUp ? stage.dashed(foot + wide, 114, wide, 12) : stage.dashed(foot + wide, 92, wide, 28),
        stage.up(
          foot + wide - 4,
          isUp ? 108 : 70,
          isUp ? 40 : 34,
          isUp ? 'this end high is plus' : 'this end to the back is plus',
          1,
        ),
        stage.disc(34, isUp ? 50 : 78, 1),
        stage.disc(foot - 14, isUp ? 48 : 150, 2),
        isUp ? [] : [stage.thin(foot + 4, 128, foot - 8, 142)],
        stage.travel(foot + wide / 2, 174, foot + 2.1 * wide, 174),
      ];
    },
  );
}

/** A way seen from above: its two edges. */
export const wayFromAbove = (stage: Stage, x: number, y: number, wide: number, tall: number): Shape[] => [
  shape('rect', {
    x: stage.at(x, y)[0],
    y: stage.at(x, y)[1],
    width: wide * stage.by,
    height: tall * stage.by,
    fill: palette.steel,
    stroke: palette.edge,
    'stroke-width': 1.3,
  }),
];
