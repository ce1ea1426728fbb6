import { drawing, group } from './drawing.ts';
import { arrow, line, rectangle } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { label } from './text.ts';

export interface PushFigure {
  /** What its window shows once the plunger is pushed in, with its sign; 0 stands there before. */
  readonly shows: string;
  /** px */
  readonly width: number;
}

const size = 14;
const height = 150;

/** The push test on an indicator with a window: free, and pushed in by a finger. What the number did is for the eye to say. */
export function pushDrawing(figure: PushFigure): Shape {
  const { shows, width } = figure;
  const half = width / 2;
  return drawing(
    {
      title: 'The push test, before and after',
      desc: `Free, the window shows 0. A finger pushes the plunger in, and it shows ${shows}.`,
      width,
      height,
    },
    one(half * 0.5, '0', 0),
    one(half * 1.5, shows, 18),
    label(half * 0.5, height - 4, 'free', { size, fill: palette.ink2, anchor: 'middle' }),
    label(half * 1.5, height - 4, 'pushed in by a finger', { size, fill: palette.ink2, anchor: 'middle' }),
    line([half, 8], [half, height - 24], palette.line, 1),
  );
}

/** An indicator upright, its plunger down. */
function one(x: number, shown: string, pushed: number): Shape {
  const body = { wide: 92, tall: 50, top: 14 };
  const foot = body.top + body.tall;
  const tip = foot + 46 - pushed;
  return group(
    {},
    rectangle(x - 7, 2, 14, body.top, palette.ink),
    rectangle(x - body.wide / 2, body.top, body.wide, body.tall, palette.steel, {
      stroke: palette.ink,
      'stroke-width': 2,
    }),
    rectangle(x - body.wide / 2 + 8, body.top + 8, body.wide - 16, body.tall - 16, palette.sheet, {
      stroke: palette.edge,
      'stroke-width': 1.2,
    }),
    label(x, body.top + body.tall / 2 + 8, shown, { size: 24, weight: 700, anchor: 'middle' }),
    rectangle(x - 6, foot, 12, 12, palette.ink),
    line([x, foot + 12], [x, tip], palette.ink, 3),
    shape('circle', { cx: x, cy: tip, r: 4.5, fill: palette.ink }),
    ...(pushed > 0
      ? [
          // A fingertip, and the way it pushes.
          shape('path', {
            d: `M${x - 17} ${height - 22}V${tip + 21}a17 16 0 0 1 34 0V${height - 22}`,
            fill: palette.sheet,
            stroke: palette.ink,
            'stroke-width': 2,
          }),
          arrow([x + 34, tip + 34], [x + 34, tip + 4], palette.ink, 3, 12),
        ]
      : []),
  );
}
