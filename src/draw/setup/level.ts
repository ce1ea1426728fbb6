import { dot } from '../../core/body/vector.ts';
import type { LevelSetup } from '../../core/ledger/setup.ts';
import { onWays } from '../bench-side.ts';
import { drawing, group } from '../drawing.ts';
import { arrow, line, rectangle, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { label, textWidth } from '../text.ts';
import { fitted, slideBounds, slideOnWays } from './backdrop.ts';
import { type SetupFigure, setupScale } from './figure.ts';
import { disc } from './parts.ts';
import { type View, viewFrom } from './view.ts';

/** A level on the slide, seen so that its length shows; the arrow stands at the end that counts plus when it is high. */
export function levelOnSlide(figure: SetupFigure<LevelSetup>): Shape {
  const { setup, slide, places, width } = figure;
  const side = onWays(slide);
  const isAcross = Math.abs(dot(side.away, setup.along)) >= Math.abs(dot(side.right, setup.along));
  const view = viewFrom(isAcross ? 'end' : 'side', slide, places);
  const isPlusRight = dot(view.right, setup.along) > 0;
  const { by, text } = setupScale(width);
  const height = Math.round(214 * by);
  const box = { x: 22, y: text + 70 * by, width: width - 44, height: height - 2 * text - 92 * by };
  const bounds = slideBounds(slide, view.name);
  const { spot } = fitted(bounds, box);
  const top = spot(bounds.left, bounds.high);
  const right = spot(bounds.right, bounds.high);
  const middle = (top[0] + right[0]) / 2;
  const long = Math.min(Math.max((right[0] - top[0]) * 0.5, 120 * by), 210 * by);
  const tall = 26 * by;
  const plusX = middle + (isPlusRight ? 1 : -1) * (long / 2 - 8);
  const base = top[1] - tall - 2;
  return drawing(
    {
      title: `${setup.name}: ${view.seen}`,
      desc: `The level lies ${setup.rides_words} ${setup.plus_words}`,
      width,
      height,
    },
    slideOnWays(slide, view.name, spot, [4, width - 4]),
    levelBody(middle, top[1] - tall / 2 - 1, long, tall, by),
    arrow([plusX, base - 8], [plusX, base - 42 * by], palette.ink, 3, 12),
    plusWords(plusX, base - 22 * by, isPlusRight, text, width),
    disc([middle - (isPlusRight ? 1 : -1) * (long / 2 + 14 * by), top[1] - tall / 2], 1, 9 * by),
    edges(view, width, height, text),
  );
}

/** A level: solid, for it is what rides; its vial and bubble knocked out. */
export function levelBody(x: number, y: number, long: number, tall: number, by: number): Shape {
  const vial = { wide: 46 * by, tall: 11 * by };
  const bubble: Spot = [x, y - tall * 0.06];
  return group(
    {},
    rectangle(x - long / 2, y - tall / 2, long, tall, palette.ink),
    rectangle(x - vial.wide / 2, y - tall * 0.06 - vial.tall / 2, vial.wide, vial.tall, palette.sheet, {
      rx: vial.tall / 2,
    }),
    shape('ellipse', { cx: bubble[0], cy: bubble[1], rx: 9 * by, ry: 3.8 * by, fill: palette.edge }),
    ...[-1, 1].map((k) =>
      line(
        [x + k * 12 * by, bubble[1] - vial.tall / 2],
        [x + k * 12 * by, bubble[1] + vial.tall / 2],
        palette.ink,
        1.4,
      ),
    ),
  );
}

function plusWords(x: number, y: number, isRight: boolean, size: number, width: number): Shape {
  const words = 'this end high is plus';
  const wide = textWidth(words, size);
  const isOutside = isRight ? x + 10 + wide > width : x - 10 - wide < 0;
  const at = isRight !== isOutside ? x + 10 : x - 10 - wide;
  return label(at, y + 5, words, { size, weight: 660 });
}

/** The names of both ends under the drawing, and from where it is seen over it. */
export function edges(view: View, width: number, height: number, size: number): Shape[] {
  const quiet = { size, weight: 480, fill: palette.ink2 };
  return [
    label(0, size, view.seen, quiet),
    label(0, height - 5, view.leftWords, quiet),
    label(width, height - 5, view.rightWords, { ...quiet, anchor: 'end' }),
  ];
}
