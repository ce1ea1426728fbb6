import { drawing } from './drawing.ts';
import { line, pathThrough, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { label, textWidth } from './text.ts';

/** A quantity round by round that has a size and no sign: counts, shares. */
export interface Course {
  readonly title: string;
  readonly name: string;
  readonly width: number;
  readonly points: readonly { readonly label: string; readonly value: number; readonly text: string }[];
}

const height = 150;
const size = 14;

/** Stems from nought, joined at their heads; each says its number, the last in bold. */
export function course({ title, name, width, points }: Course): Shape {
  const most = Math.max(1e-9, ...points.map(({ value }) => value));
  const ground = height - 26;
  const y = (value: number): number => ground - (value / most) * (ground - 52);
  const step = width / Math.max(points.length, 2);
  const x = (k: number): number => (k + 0.5) * step;
  const last = points.length - 1;
  const heads = points.map(({ value }, k): Spot => [x(k), y(value)]);
  // Where they would meet, every second number is left to the table.
  const every = Math.max(
    1,
    Math.ceil(Math.max(...points.map(({ text }) => textWidth(text, size) + 8)) / step),
  );
  return drawing(
    {
      title,
      desc: points.map((point) => `${point.label}: ${point.text}`).join('; '),
      width,
      height,
    },
    label(0, 15, name, { size, weight: 500, fill: palette.ink2 }),
    line([0, ground], [width, ground], palette.edge, 1.5),
    heads.length > 1
      ? shape('path', { d: pathThrough(heads), fill: 'none', stroke: palette.edge, 'stroke-width': 1.3 })
      : [],
    points.flatMap((point, k) => {
      const now = k === last;
      const colour = now ? palette.ink : palette.edge;
      return [
        line([x(k), ground], [x(k), y(point.value)], colour, now ? 5 : 3),
        shape('circle', { cx: x(k), cy: y(point.value), r: now ? 6 : 4.5, fill: colour }),
        label(x(k), height - 8, point.label, {
          size,
          weight: now ? 700 : 500,
          fill: now ? palette.ink : palette.ink2,
          anchor: 'middle',
        }),
        ...((last - k) % every === 0
          ? [
              label(x(k), y(point.value) - 12, point.text, {
                size,
                weight: now ? 700 : 540,
                anchor: 'middle',
              }),
            ]
          : []),
      ];
    }),
  );
}
