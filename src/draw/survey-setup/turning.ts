import { arrow, pathThrough, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { touchedBody } from '../setup/parts.ts';
import { type Shape, shape } from '../shape.ts';
import { type CardFigure, onStage, outlined, type Stage, type Strokes, tag } from './stage.ts';

/** A square from above, its foot on one side or the other; the swept edge is on the right either way. */
function square(stage: Stage, x: number, footLeft: boolean): Shape {
  const corners: Spot[] = footLeft
    ? [
        [x, 10],
        [x + 22, 10],
        [x + 22, 150],
        [x - 44, 150],
        [x - 44, 132],
        [x, 132],
      ]
    : [
        [x, 10],
        [x + 22, 10],
        [x + 22, 132],
        [x + 66, 132],
        [x + 66, 150],
        [x, 150],
      ];
  return touchedBody(
    corners.map(([a, b]) => stage.at(a, b)),
    [stage.at(x + 22, 10), stage.at(x + 22, footLeft ? 146 : 128)],
  );
}

/** One stand of the square with the indicator sweeping along it. */
const swept = (stage: Stage, x: number, footLeft: boolean, name: string): Strokes => [
  square(stage, x, footLeft),
  stage.dial(x + 25, 108, [-1, 0], 34),
  stage.solid(x + 76, 94, 34, 28),
  stage.dashed(x + 76, 18, 34, 28),
  stage.travel(x + 126, 108, x + 126, 30),
  stage.quiet(x - (footLeft ? 44 : 22), 172, name),
];

/** A square swept as it stands and turned over: from above. */
export const squareTurned = (figure: CardFigure): Shape =>
  onStage(
    figure,
    180,
    { seen: 'seen from above', top: figure.places.far, left: figure.places.near },
    (stage) => [
      swept(stage, 50, true, 'r₁: as it stands'),
      swept(stage, 222, false, 'r₂: turned over'),
      stage.disc(32, 30, 1),
      stage.disc(204, 30, 2),
    ],
  );

/** A test bar in a spindle, read at two places, then again with the spindle turned half round. */
export const barHalfTurn = (figure: CardFigure): Shape =>
  onStage(
    figure,
    176,
    {
      seen: `seen from the ${figure.places.near}`,
      left: figure.places.minusEnd,
      right: figure.places.plusEnd,
    },
    (stage) => {
      const axis = 106;
      return [
        outlined(
          stage,
          [
            [6, 44],
            [70, 44],
            [70, 150],
            [6, 150],
          ],
          palette.steel,
        ),
        touchedBody(
          [stage.at(70, axis - 9), stage.at(324, axis - 9), stage.at(324, axis + 9), stage.at(70, axis + 9)],
          [stage.at(70, axis - 9), stage.at(324, axis - 9)],
        ),
        stage.thin(4, axis, 352, axis, '12 4 2 4'),
        stage.dial(122, axis - 9, [0, 1], 34),
        stage.dial(290, axis - 9, [0, 1], 34),
        stage.plusArrow(150, axis - 17, [0, 1], 1, 'in'),
        halfTurn(stage, 344, axis),
        stage.travel(122, 160, 290, 160),
        stage.quiet(136, 144, 'near, then far'),
        stage.disc(98, axis + 30, 1),
        stage.disc(344, axis + 44, 2),
      ];
    },
  );

/** An arrow half round an axis seen from the side. */
function halfTurn(stage: Stage, x: number, y: number): Shape[] {
  const arc = Array.from({ length: 13 }, (_, k): Spot => {
    const angle = -Math.PI / 2 + (k / 12) * Math.PI * 0.86;
    return stage.at(x + 7 * Math.cos(angle) - 4, y + 24 * Math.sin(angle));
  });
  return [
    shape('path', { d: pathThrough(arc), fill: 'none', stroke: palette.ink, 'stroke-width': 2.4 }),
    arrow(arc.at(-2)!, [arc.at(-1)![0] - 7 * stage.by, arc.at(-1)![1] + 5 * stage.by], palette.ink, 2.4, 10),
  ];
}

/** The pivot test: one end pushed sideways on the master, and where the part turns. */
export const hingeTest = (figure: CardFigure): Shape =>
  onStage(figure, 166, { seen: 'seen from above' }, (stage) => {
    const pivot: Spot = [236, 84];
    const swung = (x: number, y: number): Spot => {
      const angle = 0.13;
      const [dx, dy] = [x - pivot[0], y - pivot[1]];
      return [
        pivot[0] + dx * Math.cos(angle) - dy * Math.sin(angle),
        pivot[1] + dx * Math.sin(angle) + dy * Math.cos(angle),
      ];
    };
    const corners = [
      [40, 66],
      [318, 66],
      [318, 102],
      [40, 102],
    ] as const;
    return [
      touchedBody(
        [stage.at(6, 18), stage.at(352, 18), stage.at(352, 150), stage.at(6, 150)],
        [stage.at(6, 18), stage.at(352, 18)],
      ),
      outlined(stage, corners),
      shape('path', {
        d: pathThrough(
          corners.map(([x, y]) => stage.at(...swung(x, y))),
          true,
        ),
        fill: 'none',
        stroke: palette.ink,
        'stroke-width': 1.5,
        'stroke-dasharray': '5 4',
      }),
      stage.solid(pivot[0] - 4, pivot[1] - 4, 8, 8),
      shape('circle', {
        cx: stage.at(...pivot)[0],
        cy: stage.at(...pivot)[1],
        r: 12 * stage.by,
        fill: 'none',
        stroke: palette.ink,
        'stroke-width': 2,
      }),
      arrow(stage.at(52, 142), stage.at(52, 106), palette.ink, 3.4, 13),
      stage.disc(30, 128, 1),
      stage.disc(pivot[0] + 22, pivot[1] - 2, 2),
      stage.thin(40, 44, pivot[0], 44),
      stage.thin(40, 36, 40, 62),
      stage.thin(pivot[0], 36, pivot[0], 70),
      tag(stage, 138, 34, 'share of the length'),
      tag(stage, 90, 138, 'push'),
    ];
  });

/** The rock test: four corners numbered going round. */
export const rockTest = (figure: CardFigure): Shape =>
  onStage(figure, 186, { seen: 'seen from above' }, (stage) => {
    const corners: readonly Spot[] = [
      [70, 142],
      [288, 142],
      [288, 44],
      [70, 44],
    ];
    return [
      touchedBody(
        [stage.at(6, 14), stage.at(352, 14), stage.at(352, 174), stage.at(6, 174)],
        [stage.at(6, 14), stage.at(352, 14)],
      ),
      outlined(stage, corners),
      stage.thin(84, 132, 274, 54, '6 4'),
      stage.thin(274, 132, 84, 54, '6 4'),
      ...corners.map(([x, y], k) => stage.disc(x + (x < 180 ? 14 : -14), y + (y < 90 ? 12 : -12), k + 1)),
      tag(stage, 179, 93, 'tip along each dashed line'),
      tag(stage, 179, 160, 'how far does each move?'),
    ];
  });
