import type { Slide } from '../../core/body/slide.ts';
import { pathThrough } from '../line.ts';
import { palette } from '../palette.ts';
import { fitted } from '../setup/backdrop.ts';
import { levelBody } from '../setup/level.ts';
import { type Shape, shape } from '../shape.ts';
import { barsOf, slideBulk, wayOutline } from '../slide-section.ts';
import { type CardFigure, onStage, type Stage } from './stage.ts';

/** The job's own ways end on, in a strip of the card; where each of the outer two is stood on, in the card's box. */
function waysEndOn(stage: Stage, slide: Slide, y: number, tall: number) {
  const bars = barsOf(slide);
  const bulk = slideBulk(bars);
  const [x0, y0] = stage.at(46, y);
  const { spot } = fitted(
    {
      left: bars[0]!.near_mm,
      right: bars.at(-1)!.far_mm,
      low: bulk.base_mm,
      high: Math.max(...bars.map((bar) => bar.high_mm)),
    },
    { x: x0, y: y0, width: 266 * stage.by, height: tall * stage.by },
  );
  const [ox, oy] = stage.at(0, 0);
  const inBox = ([x, down]: readonly [number, number]) =>
    [(x - ox) / stage.by, (down - oy) / stage.by] as const;
  const standing = (bar: (typeof bars)[number]) => inBox(spot((bar.near_mm + bar.far_mm) / 2, bar.high_mm));
  return {
    near: standing(bars[0]!),
    far: standing(bars.at(-1)!),
    shapes: bars.map((bar) =>
      shape('path', {
        d: pathThrough(
          wayOutline(bar, bulk.base_mm).map(([across, out]) => spot(across, out)),
          true,
        ),
        fill: palette.steel,
        stroke: palette.ink,
        'stroke-width': 1.6,
      }),
    ),
  };
}

/** Away from whoever looks: an arrow's feathers in a ring. */
const away = (stage: Stage, x: number, y: number): Shape[] => {
  const [cx, cy] = stage.at(x, y);
  const reach = 9 * stage.by;
  const d = reach * Math.SQRT1_2;
  return [
    shape('circle', { cx, cy, r: reach, fill: palette.sheet, stroke: palette.ink, 'stroke-width': 2 }),
    shape('path', {
      d: `M${cx - d} ${cy - d}L${cx + d} ${cy + d}M${cx - d} ${cy + d}L${cx + d} ${cy - d}`,
      stroke: palette.ink,
      'stroke-width': 2,
    }),
  ];
};

const edges = ({ places }: CardFigure) => ({
  seen: `seen from the ${places.plusEnd}`,
  left: places.near,
  right: places.far,
});

/** A level across both ways on a bridge: seen along them. */
export const bridgeLevel = (figure: CardFigure, slide: Slide): Shape =>
  onStage(figure, 196, edges(figure), (stage) => {
    const ways = waysEndOn(stage, slide, 96, 64);
    const under = 76;
    const foot = ([x, y]: readonly [number, number]) => stage.solid(x - 7, under, 14, Math.max(y - under, 3));
    const middle = (ways.near[0] + ways.far[0]) / 2;
    return [
      ways.shapes,
      foot(ways.near),
      foot(ways.far),
      stage.solid(ways.near[0] - 14, under - 10, ways.far[0] - ways.near[0] + 28, 10),
      levelBody(...stage.at(middle, under - 21), 130 * stage.by, 20 * stage.by, stage.by * 0.9),
      stage.up(ways.far[0], under - 14, 54, 'this side high is plus', -1),
      stage.disc(ways.near[0] - 26, under - 5, 1),
      away(stage, middle - 74, 178),
      stage.quiet(middle - 60, 183, 'then on to the next stop'),
      stage.disc(middle - 98, 178, 2),
    ];
  });

/** An indicator that rides on one way and touches the other: seen along them. */
export const wayToWay = (figure: CardFigure, slide: Slide): Shape =>
  onStage(figure, 210, edges(figure), (stage) => {
    const ways = waysEndOn(stage, slide, 118, 56);
    const [nx, ny] = ways.near;
    const [fx, fy] = ways.far;
    const arm = fy - 62;
    return [
      ways.shapes,
      stage.solid(nx - 20, ny - 20, 40, 20),
      stage.solid(nx - 3, arm, 6, ny - 20 - arm),
      stage.solid(nx - 3, arm - 3, fx - nx + 6, 6),
      stage.dial(fx, fy, [0, 1], 34),
      stage.plusArrow(fx - 28, fy - 8, [0, 1], -1, 'in'),
      stage.disc(nx - 34, ny - 10, 1),
      stage.disc(Math.min(fx + 28, 344), fy - 12, 2),
      away(stage, (nx + fx) / 2 - 64, 192),
      stage.quiet((nx + fx) / 2 - 50, 197, 'carried along, stop by stop'),
    ];
  });
