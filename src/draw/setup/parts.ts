import { group } from '../drawing.ts';
import { arrow, line, pathThrough, rectangle, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { label } from '../text.ts';

/** A step from a spot, px along a direction. */
export const step = (from: Spot, along: Spot, by: number): Spot => [
  from[0] + along[0] * by,
  from[1] + along[1] * by,
];

/** A quarter turn to the left as seen. */
export const quarter = (along: Spot): Spot => [along[1], -along[0]];

/** A number knocked out of a disc; the card's line with the same number says what it is. */
export const disc = (at: Spot, number: number, radius: number): Shape =>
  group(
    {},
    shape('circle', { cx: at[0], cy: at[1], r: radius, fill: palette.ink }),
    label(at[0], at[1] + radius * 0.48, `${number}`, {
      size: Math.max(radius * 1.3, 14),
      weight: 700,
      fill: palette.paper,
      anchor: 'middle',
    }),
  );

/** A body that is touched: dotted, with a heavy face. Corners in order; the face between two spots. */
export function touchedBody(corners: readonly Spot[], face: readonly [Spot, Spot]): Shape {
  return group(
    { 'data-part': 'touched' },
    shape('path', {
      d: pathThrough(corners, true),
      fill: palette.sheet,
      stroke: palette.ink,
      'stroke-width': 1.5,
    }),
    dots(corners),
    line(face[0], face[1], palette.ink, 5),
  );
}

/** Dots inside a polygon, on a staggered grid. */
function dots(corners: readonly Spot[]): Shape {
  const xs = corners.map((corner) => corner[0]);
  const ys = corners.map((corner) => corner[1]);
  let d = '';
  let row = 0;
  for (let y = Math.min(...ys) + 3; y < Math.max(...ys) - 1; y += 4, row++)
    for (let x = Math.min(...xs) + (row % 2 ? 5 : 3); x < Math.max(...xs) - 1; x += 4)
      if (isInside([x, y], corners)) d += `M${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}h1.3`;
  return shape('path', { d, stroke: palette.ink2, 'stroke-width': 1.3, fill: 'none' });
}

export function isInside(spot: Spot, corners: readonly Spot[]): boolean {
  let inside = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    if (a[1] > spot[1] === b[1] > spot[1]) return;
    if (spot[0] < a[0] + ((spot[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  });
  return inside;
}

/**
 * An indicator: tip on the touched face, plunger, dial with plus clockwise, and the stem to what it rides on.
 *
 * @param tip      where it touches, px
 * @param plunger  direction from the body to the face on the sheet, length 1
 * @param reach    from tip to dial's middle, px
 */
export function indicator(tip: Spot, plunger: Spot, reach: number, radius: number, stem: number): Shape {
  const back: Spot = [-plunger[0], -plunger[1]];
  const dial = step(tip, back, reach);
  const hand: Spot = [dial[0] + radius * 0.45, dial[1] - radius * 0.62];
  return group(
    { 'data-part': 'indicator' },
    line(step(tip, back, reach), step(tip, back, reach + radius + stem), palette.ink, 5),
    line(tip, step(tip, back, reach - radius), palette.ink, 2.6),
    shape('circle', { cx: tip[0] + back[0] * 3, cy: tip[1] + back[1] * 3, r: 3.6, fill: palette.ink }),
    shape('circle', {
      cx: dial[0],
      cy: dial[1],
      r: radius,
      fill: palette.sheet,
      stroke: palette.ink,
      'stroke-width': 2.4,
    }),
    line(dial, hand, palette.ink, 2.2),
    shape('path', {
      d: `M${dial[0] - radius * 0.3} ${dial[1] - radius * 0.66}A${radius * 0.72} ${radius * 0.72} 0 0 1 ${dial[0] + radius * 0.62} ${dial[1] - radius * 0.34}`,
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 1.4,
    }),
    line([dial[0] - 3.5, dial[1] + radius * 0.5], [dial[0] + 3.5, dial[1] + radius * 0.5], palette.ink, 1.6),
    line([dial[0], dial[1] + radius * 0.5 - 3.5], [dial[0], dial[1] + radius * 0.5 + 3.5], palette.ink, 1.6),
  );
}

/**
 * "in is plus": an arrow the way the plunger goes in, with its words.
 *
 * @param aside  on which side of an upright arrow the words stand: away from the dial
 */
export function inIsPlus(
  from: Spot,
  plunger: Spot,
  size: number,
  length: number,
  aside: 1 | -1 = 1,
): Shape[] {
  const to = step(from, plunger, -length);
  const isAcross = Math.abs(plunger[0]) >= Math.abs(plunger[1]);
  const lettering = { size, weight: 660 };
  const words = isAcross
    ? label(from[0], from[1] - 9, 'in is plus', { ...lettering, anchor: plunger[0] > 0 ? 'end' : 'start' })
    : label(from[0] + aside * 10, (from[1] + to[1]) / 2 + size * 0.35, 'in is plus', {
        ...lettering,
        anchor: aside > 0 ? 'start' : 'end',
      });
  return [group({ 'data-part': 'in is plus' }, arrow(from, to, palette.ink, 3.4, 13), words)];
}

/** Travel: a long arrow from the first place to the last. */
export const travelArrow = (from: Spot, to: Spot): Shape =>
  group(
    { 'data-part': 'travel' },
    arrow(from, to, palette.ink, 2.4, 14),
    shape('circle', { cx: from[0], cy: from[1], r: 4, fill: palette.ink }),
  );

/** What rides: solid ink. */
export const rider = (x: number, y: number, width: number, height: number): Shape =>
  rectangle(x - width / 2, y - height / 2, width, height, palette.ink);

/** Where the rider ends: its outline, dashed. */
export const ghost = (x: number, y: number, width: number, height: number): Shape =>
  rectangle(x - width / 2, y - height / 2, width, height, 'none', {
    stroke: palette.ink,
    'stroke-width': 1.5,
    'stroke-dasharray': '5 4',
  });
