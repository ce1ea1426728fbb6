import type { PlacePx } from '../core/print/picture.ts';
import { type Shape, shape } from './shape.ts';
import { textWidth } from './text.ts';

/**
 * A photo is a photo in either theme, so what is drawn over one keeps the light theme's colours: ink lines on a rim of sheet,
 * which hold on blue, on grey and on black alike; blue for contact.
 */
export const overPhotoColours = {
  sheet: '#fcfdfa',
  ink: '#12202a',
  blue: '#134a9e',
  lead: '#a3380a',
} as const;

/** A line of ink on a rim of sheet, through screen places. */
export function rimmedPath(places: readonly PlacePx[], width: number, closed = false): Shape[] {
  const d = `M${places.map(({ x, y }) => `${round(x)} ${round(y)}`).join('L')}${closed ? 'z' : ''}`;
  const path = (stroke: string, wide: number) =>
    shape('path', { d, fill: 'none', stroke, 'stroke-width': wide, 'stroke-linejoin': 'round' });
  return [path(overPhotoColours.sheet, width + 2), path(overPhotoColours.ink, width)];
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** The corner to find first, as the map marks it: a ringed dot. */
export const punchMark = ({ x, y }: PlacePx, r = 8): Shape[] => [
  shape('circle', { cx: x, cy: y, r: r + 1.5, fill: overPhotoColours.sheet }),
  shape('circle', { cx: x, cy: y, r, fill: 'none', stroke: overPhotoColours.ink, 'stroke-width': 2 }),
  shape('circle', { cx: x, cy: y, r: r * 0.38, fill: overPhotoColours.ink }),
];

export interface Plate {
  readonly at: PlacePx;
  readonly words: string;
  readonly size?: number;
  readonly weight?: number;
  readonly look?: 'plain' | 'wrong';
}

export const plateHeight = (size = 14): number => size + 6;
export const plateWidth = (words: string, size = 14): number => textWidth(words, size) + 10;

/** Words on a plate of sheet, kept inside the drawing. */
export function plate(
  { at, words, size = 14, weight = 640, look = 'plain' }: Plate,
  room: { width: number; height: number },
): Shape[] {
  const wide = plateWidth(words, size);
  const tall = plateHeight(size);
  const x = Math.min(Math.max(at.x - wide / 2, 1), room.width - wide - 1);
  const y = Math.min(Math.max(at.y - tall / 2, 1), room.height - tall - 1);
  return [
    shape('rect', { x, y, width: wide, height: tall, fill: overPhotoColours.sheet }),
    shape(
      'text',
      {
        x: x + wide / 2,
        y: y + tall / 2 + size * 0.36,
        'font-size': size,
        'font-weight': weight,
        fill: look === 'wrong' ? overPhotoColours.lead : overPhotoColours.ink,
        'text-anchor': 'middle',
      },
      words,
    ),
  ];
}
