import { dot } from '../../core/body/vector.ts';
import type { HeightSetup } from '../../core/ledger/setup.ts';
import { drawing } from '../drawing.ts';
import { arrow, line, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { label, textWidth } from '../text.ts';
import { fitted, slideBounds, slideOnWays } from './backdrop.ts';
import { type SetupFigure, setupScale } from './figure.ts';
import { edges } from './level.ts';
import { disc, indicator, rider } from './parts.ts';
import { onSheet, unitSpot, viewFrom, viewShowing } from './view.ts';

/** A gauge on the fixed way that touches the slide: the arrow points the way that counts plus. */
export function heightGauge(figure: SetupFigure<HeightSetup>): Shape {
  const { setup, slide, places, width } = figure;
  const found = viewShowing(slide, setup.direction);
  const view = viewFrom(found === 'side' ? 'end' : found, slide, places);
  const { by, text } = setupScale(width);
  const height = Math.round(270 * by);
  const bounds = slideBounds(slide, view.name);
  const at = { right: dot(view.right, setup.at_mm), up: dot(view.up, setup.at_mm) };
  const span = bounds.right - bounds.left;
  const whole = {
    left: Math.min(bounds.left, at.right - span * 0.1),
    right: Math.max(bounds.right, at.right + span * 0.1) + span * 0.3,
    low: bounds.low,
    high: Math.max(bounds.high, at.up),
  };
  const box = { x: 10, y: text + 72 * by, width: width - 20, height: height - 2 * text - 92 * by };
  const { spot } = fitted(whole, box);
  const point = spot(at.right, at.up);
  const plus = unitSpot(onSheet(view, setup.direction));
  // The stand is on the reference, clear of the slide: at the right of everything.
  const standX = Math.min(spot(bounds.right, 0)[0] + 34 * by, width - 18 * by);
  const ground = spot(0, bounds.low)[1];
  const isUpright = Math.abs(plus[1]) >= Math.abs(plus[0]);
  const plunger: Spot = [-plus[0], -plus[1]];
  const reach = 34 * by;
  const dial: Spot = [point[0] + plus[0] * reach, point[1] + plus[1] * reach];
  const armY = isUpright ? dial[1] : point[1];
  const words = figure.words?.touches ?? 'touches';
  const wide = textWidth(words, text);
  const isLeftFree = point[0] - 30 * by - wide > 0;
  return drawing(
    {
      title: `${setup.name}: ${view.seen}`,
      desc: `Rides ${setup.rides_words} Touches ${setup.touches_words} Plus: ${setup.plus_words}`,
      width,
      height,
    },
    slideOnWays(slide, view.name, spot, [4, width - 4]),
    line([4, ground], [width - 4, ground], palette.edge, 1.5),
    line([standX, ground], [standX, armY], palette.ink, 6),
    line([standX, armY], [dial[0], armY], palette.ink, 4),
    rider(standX, ground - 9 * by, 34 * by, 18 * by),
    shape('circle', {
      cx: point[0] - plus[0] * 9,
      cy: point[1] - plus[1] * 9,
      r: 9,
      fill: palette.sheet,
      stroke: palette.ink,
      'stroke-width': 2,
      'stroke-dasharray': '2 2.5',
    }),
    indicator(point, plunger, reach, 14 * by, 4),
    arrow(
      [dial[0] - 26 * by * (isUpright ? 1 : 0), dial[1] + 12 * by - (isUpright ? 0 : 40 * by)],
      [
        dial[0] - 26 * by * (isUpright ? 1 : 0) + plus[0] * 36 * by,
        dial[1] + 12 * by - (isUpright ? 0 : 40 * by) + plus[1] * 36 * by,
      ],
      palette.ink,
      3.2,
      12,
    ),
    label(Math.max(dial[0] - 34 * by - textWidth('plus', text), 0), dial[1] + 4, 'plus', {
      size: text,
      weight: 660,
    }),
    disc([point[0] + (isLeftFree ? -22 : 22) * by, point[1] + 10 * by], 2, 9 * by),
    label(isLeftFree ? point[0] - 34 * by - wide : point[0] + 34 * by, point[1] + 10 * by + 5, words, {
      size: text,
      weight: 640,
    }),
    disc([standX, ground + 1], 1, 9 * by),
    edges(view, width, height, text),
  );
}
