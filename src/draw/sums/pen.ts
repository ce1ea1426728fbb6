import { arrow, line, pathThrough, type Spot } from '../line.ts';
import { palette } from '../palette.ts';
import { type Shape, shape } from '../shape.ts';
import { label } from '../text.ts';

/** The box every sum's figure is set out in, px; sum-drawing.ts centres it. */
export const box = { width: 340, height: 190 } as const;

const letterSize = 16;

/** A letter of the formula, its middle at the spot. */
export const letter = (at: Spot, symbol: string, anchor: 'start' | 'middle' | 'end' = 'middle'): Shape =>
  label(at[0], at[1] + letterSize * 0.36, symbol, { size: letterSize, weight: 680, anchor });

/** A word that belongs to no number. */
export const word = (at: Spot, words: string, anchor: 'start' | 'middle' | 'end' = 'middle'): Shape =>
  label(at[0], at[1] + 5, words, { size: 14, weight: 540, fill: palette.ink2, anchor });

/** A body cut through: steel with an ink outline. */
export const body = (corners: readonly Spot[], fill: string = palette.steel): Shape =>
  shape('path', {
    d: pathThrough(corners, true),
    fill,
    stroke: palette.ink,
    'stroke-width': 1.8,
    'stroke-linejoin': 'round',
  });

/** A rectangle of metal from its top left corner. */
export const block = (x: number, y: number, width: number, height: number, fill?: string): Shape =>
  body(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    fill,
  );

/** A roll or bar seen end on. */
export const roll = (at: Spot, radius: number): Shape =>
  shape('circle', {
    cx: at[0],
    cy: at[1],
    r: radius,
    fill: palette.sheet,
    stroke: palette.ink,
    'stroke-width': 1.8,
  });

export const edge = (from: Spot, to: Spot, width = 1.8): Shape => line(from, to, palette.ink, width);

/** A line that is not metal: a middle, a level, a place aimed at. */
export const guide = (from: Spot, to: Spot): Shape =>
  line(from, to, palette.ink2, 1.2, { 'stroke-dasharray': '6 4' });

/** A dimension: arrows to both ends and its letter beside the middle, `aside` px to the right of the way from → to. */
export function dimension(from: Spot, to: Spot, symbol: string, aside = 12): Shape[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const across: Spot = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
  const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const head = Math.min(9, length * 0.35);
  const drawn =
    length < 14
      ? [line(from, to, palette.blue, 1.6)]
      : [arrow(middle, from, palette.blue, 1.6, head), arrow(middle, to, palette.blue, 1.6, head)];
  return [...drawn, letter([middle[0] + across[0] * aside, middle[1] + across[1] * aside], symbol)];
}

/** A movement: an arrow with its letter beyond the tip. */
export function move(from: Spot, to: Spot, symbol: string): Shape[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const beyond: Spot = [to[0] + (12 * (to[0] - from[0])) / length, to[1] + (12 * (to[1] - from[1])) / length];
  return [arrow(from, to, palette.blue, 2.4, 11), letter(beyond, symbol)];
}

/** An angle at a corner between two directions, degrees counted from the right and upwards; its letter outside the arc. */
export function angle(at: Spot, radius: number, from_deg: number, to_deg: number, symbol: string): Shape[] {
  const spot = (deg: number, reach: number): Spot => {
    const rad = (deg * Math.PI) / 180;
    return [at[0] + reach * Math.cos(rad), at[1] - reach * Math.sin(rad)];
  };
  const count = 12;
  const arc = Array.from({ length: count + 1 }, (_, k) =>
    spot(from_deg + ((to_deg - from_deg) * k) / count, radius),
  );
  return [
    shape('path', { d: pathThrough(arc), fill: 'none', stroke: palette.blue, 'stroke-width': 1.6 }),
    letter(spot((from_deg + to_deg) / 2, radius + 12), symbol),
  ];
}

/** A dial indicator with its tip at a spot and its stem the way `from` it; small, seen from afar. */
export function dial(tip: Spot, toward: Spot): Shape[] {
  const at = (reach: number): Spot => [tip[0] + toward[0] * reach, tip[1] + toward[1] * reach];
  const middle = at(24);
  return [edge(tip, at(14), 2), roll(middle, 11), edge(middle, [middle[0] + 4, middle[1] - 6], 1.6)];
}

/** A support: a knife edge pointing up. */
export const support = (at: Spot): Shape =>
  body([at, [at[0] + 8, at[1] + 14], [at[0] - 8, at[1] + 14]], palette.ink2);

/** Heights of a bent line between two spots: `bend(t)` px downwards, t from 0 to 1. */
export const bentLine = (from: Spot, to: Spot, bend: (t: number) => number, count = 24): Spot[] =>
  Array.from({ length: count + 1 }, (_, k) => {
    const t = k / count;
    return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t + bend(t)];
  });
