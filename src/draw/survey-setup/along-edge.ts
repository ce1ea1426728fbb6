import { palette } from '../palette.ts';
import { touchedBody } from '../setup/parts.ts';
import { type Shape, shape } from '../shape.ts';
import { type CardFigure, onStage, type Stage } from './stage.ts';
import { wayFromAbove } from './stepped.ts';

/** The straightedge: dotted, its working face heavy, at the bottom or at the top. */
function edge(stage: Stage, face: 'below' | 'above', y: number, tall: number): Shape {
  const corners = [
    stage.at(24, y),
    stage.at(338, y),
    stage.at(338, y + tall),
    stage.at(24, y + tall),
  ] as const;
  return touchedBody(corners, face === 'below' ? [corners[3], corners[2]] : [corners[0], corners[1]]);
}

/**
 * An indicator carried along a way, its plunger on a straightedge: from the side for up and down, from above for sideways.
 *
 * @param turned  the straightedge lies turned over about its length, so that its face looks away from the way: the indicator reads it
 *                from the other side, where a way that stands proud lets the plunger out
 */
export function underEdge(figure: CardFigure, direction: 'vertical' | 'horizontal', turned: boolean): Shape {
  const isUp = direction === 'vertical';
  const { places } = figure;
  const top = turned ? 60 : 12;
  return onStage(
    figure,
    top + 168,
    {
      seen: isUp ? `seen from the ${places.near}` : 'seen from above',
      left: places.minusEnd,
      right: places.plusEnd,
      ...(isUp ? {} : { top: places.far }),
    },
    (stage) => {
      const way = top + 108;
      const x = 150;
      const bottom = top + 26;
      return [
        isUp ? stage.way(4, way, 350, 26) : wayFromAbove(stage, 4, way - 18, 350, 46),
        isUp
          ? [
              ...[94, 268].map((at) => stage.solid(at - 5, bottom, 10, way - bottom)),
              stage.quiet(278, way - 28, 'block'),
            ]
          : [],
        edge(stage, turned ? 'above' : 'below', top, 26),
        stage.dashed(202, way - 18, 44, 18),
        stage.solid(x - 22, way - 18, 44, 18),
        turned
          ? [
              // A bracket reaches round the straightedge.
              stage.solid(x + 16, top - 50, 5, way - 18 - top + 50),
              stage.solid(x - 2, top - 52, 23, 5),
              stage.dial(x, top, [0, 1], 30),
              stage.plusArrow(x - 28, top - 10, [0, 1], -1, 'out'),
            ]
          : [
              stage.dial(x, bottom, [0, -1], 34),
              stage.solid(x - 2.5, way - 26, 5, 10),
              stage.plusArrow(x + 26, bottom + 12, [0, -1], 1, 'in'),
            ],
        stage.disc(x - 34, way - 9, 1),
        stage.disc(318, top + 13, 2),
        stage.travel(x, way + 46, 318, way + 46),
        stage.quiet(8, way + 50, 'stop by stop'),
      ];
    },
  );
}

/** Offsets from a beam (up and down) or a wire (sideways): a scale carried along the way. */
export function offOffsets(figure: CardFigure, direction: 'vertical' | 'horizontal'): Shape {
  const isUp = direction === 'vertical';
  const { places } = figure;
  return onStage(
    figure,
    178,
    {
      seen: isUp ? `seen from the ${places.near}` : 'seen from above',
      left: places.minusEnd,
      right: places.plusEnd,
      ...(isUp ? {} : { top: places.far }),
    },
    (stage) => {
      const x = 150;
      const y = 46;
      const ticks = [-3, -2, -1, 0, 1, 2, 3];
      return [
        isUp ? stage.way(4, 118, 350, 28) : wayFromAbove(stage, 4, 92, 350, 54),
        stage.thin(16, y, 342, y),
        ...[16, 342].map((at) =>
          shape('circle', {
            cx: stage.at(at, y)[0],
            cy: stage.at(at, y)[1],
            r: 6 * stage.by,
            fill: palette.sheet,
            stroke: palette.ink,
            'stroke-width': 2,
          }),
        ),
        stage.dashed(226, 104, 44, 14),
        stage.solid(x - 22, 104, 44, 14),
        shape('rect', {
          x: stage.at(x - 8, 16)[0],
          y: stage.at(x - 8, 16)[1],
          width: 16 * stage.by,
          height: 90 * stage.by,
          fill: palette.sheet,
          stroke: palette.ink,
          'stroke-width': 1.8,
        }),
        ...ticks.map((k) => stage.thin(x - 8, y + k * 7, x + (k ? -1 : 8), y + k * 7)),
        stage.up(x + 26, 84, 30, isUp ? 'higher is plus' : 'to the back is plus', 1),
        stage.disc(x - 36, 110, 1),
        stage.disc(310, y - 18, 2),
        stage.travel(x, 164, 318, 164),
        stage.quiet(8, 168, 'stop by stop'),
      ];
    },
  );
}
