import type { Verdict } from '../core/prove/verdict.ts';
import { strokeAngle } from './map-zone.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';

/** Small marks, drawn in the colour of the text they stand in; never glyphs of a face that may lack them. */
export type MarkName =
  | 'strokes'
  | 'strokes back'
  | 'kept'
  | 'waiting'
  | 'caution'
  | 'within'
  | 'not proven low'
  | 'not proven high'
  | 'outside low'
  | 'outside high'
  | 'arrow up'
  | 'arrow down'
  | 'arrow left'
  | 'arrow right'
  | 'tick'
  | 'cross'
  | 'turned over'
  | 'menu'
  | 'plus'
  | 'stop'
  | 'wrong way'
  | 'undo'
  | 'print'
  | 'level'
  | 'sweep';

/** Lines of a mark on a 24 × 24 ground: stroked unless filled. */
interface Mark {
  readonly lines?: string;
  readonly filled?: string;
  readonly width?: number;
  readonly dashed?: string;
}

const dot = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
const sheet = 'M4 3.5H20V15.5L15.5 20.5H4z';
const bars = 'M10.5 4V20M18.5 4V20';

const marks: Record<MarkName, Mark> = {
  strokes: { lines: 'M3 20L9 4M9.5 20L15.5 4M16 20L22 4', width: 2.8 },
  'strokes back': { lines: 'M2 4L8 20M8.5 4L14.5 20M15 4L21 20', width: 2.8 },
  kept: { lines: `${sheet}M8 11.5L11 14.5L16.5 8`, width: 2 },
  waiting: {
    lines: sheet,
    filled: dot(8.5, 11.5, 1.3) + dot(12, 11.5, 1.3) + dot(15.5, 11.5, 1.3),
    width: 2,
  },
  caution: { lines: `${sheet}M12 7V12.5`, filled: dot(12, 15.8, 1.3), width: 2 },
  within: { lines: 'M6 4V20M18 4V20', filled: dot(12, 12, 3.4), width: 2.4 },
  'not proven low': { lines: `M7 4V20M18 4V20${dot(7, 12, 3.6)}`, width: 2.2 },
  'not proven high': { lines: `M6 4V20M17 4V20${dot(17, 12, 3.6)}`, width: 2.2 },
  'outside low': { lines: bars, filled: dot(4, 12, 3.2), width: 2.4 },
  'outside high': { lines: 'M5.5 4V20M13.5 4V20', filled: dot(20, 12, 3.2), width: 2.4 },
  'arrow up': { lines: 'M12 21V5M5.5 11L12 4.5L18.5 11', width: 2.4 },
  'arrow down': { lines: 'M12 3V19M5.5 13L12 19.5L18.5 13', width: 2.4 },
  'arrow left': { lines: 'M21 12H5M11 5.5L4.5 12L11 18.5', width: 2.4 },
  'arrow right': { lines: 'M3 12H19M13 5.5L19.5 12L13 18.5', width: 2.4 },
  tick: { lines: 'M4.5 12.5L10 18L19.5 6.5', width: 2.6 },
  cross: { lines: 'M5.5 5.5L18.5 18.5M18.5 5.5L5.5 18.5', width: 2.4 },
  'turned over': {
    lines:
      'M8 17C3.5 16 2.5 13.8 2.5 12C2.5 8.5 6.8 6.5 12 6.5S21.5 8.5 21.5 12C21.5 14.6 18.6 16.6 14 17.2M17.8 13.4L13.6 17.2L17.8 20.8',
    width: 2.2,
  },
  menu: { lines: 'M3 6H21M3 12H21M3 18H15', width: 2.6 },
  plus: { lines: `M12 6.5V17.5M6.5 12H17.5${dot(12, 12, 10)}`, width: 2.2 },
  stop: {
    filled:
      'M1 1H5.5L8 3.5V20.5L5.5 23H1zM23 1H18.5L16 3.5V20.5L18.5 23H23zM11.2 7.2A2.6 2.6 0 0 0 8.9 9.8V14.2A2.6 2.6 0 0 0 11.2 16.8zM12.8 7.2A2.6 2.6 0 0 1 15.1 9.8V14.2A2.6 2.6 0 0 1 12.8 16.8z',
  },
  'wrong way': {
    lines: 'M22 16.5H4M9 11.5L3.5 16.5L9 21.5',
    dashed: 'M2 7H19M15 2.5L20 7L15 11.5',
    width: 2.4,
  },
  undo: { lines: 'M8.5 4.5L3.5 9.5L8.5 14.5M4 9.5H14.5A5.5 5.5 0 0 1 14.5 20.5H10', width: 2.3 },
  print: {
    lines: 'M3 4.5H21V19.5H3z',
    filled: dot(8, 9.5, 1.6) + dot(14, 8.5, 1.3) + dot(16.5, 14.5, 1.7) + dot(10, 15, 1.3),
    width: 2,
  },
  level: { lines: `M2 8H22V16H2zM9 8V16M15 8V16`, filled: dot(12, 12, 2), width: 2 },
  sweep: { lines: `M2 3V21M2 12H8${dot(14.5, 12, 6.5)}M14.5 12L17.5 8.5`, width: 2 },
};

/**
 * A small mark in the colour of its text.
 *
 * @param size   px
 * @param title  its accessible name; left out, the words beside it say it and it is hidden from readers
 */
export function mark(name: MarkName, size = 24, title?: string): Shape {
  const { lines, filled, dashed, width = 2.2 } = marks[name];
  const stroke = { fill: 'none', stroke: 'currentColor', 'stroke-width': width };
  return framed(
    size,
    title,
    ...(lines ? [shape('path', { d: lines, ...stroke })] : []),
    ...(dashed ? [shape('path', { d: dashed, ...stroke, 'stroke-dasharray': '3.4 2' })] : []),
    ...(filled ? [shape('path', { d: filled, fill: 'currentColor' })] : []),
  );
}

/** Three strokes in the direction of pass k, from 1. */
export const strokesMark = (pass: number, size = 24, title?: string): Shape =>
  mark(strokeAngle(pass) === 45 ? 'strokes' : 'strokes back', size, title);

/** Dot and bars for a verdict; `side` is where the value lies when it is not within. */
export const verdictMark = (verdict: Verdict, side: 'low' | 'high', size = 24, title?: string): Shape =>
  mark(verdict === 'within' ? 'within' : `${verdict} ${side}`, size, title);

/** A number knocked out of a disc: points at the same number in a drawing. */
export const numberMark = (number: number, size = 32, title?: string): Shape =>
  framed(
    size,
    title,
    shape('circle', { cx: 12, cy: 12, r: 12, fill: 'currentColor' }),
    shape(
      'text',
      { x: 12, y: 16.4, 'text-anchor': 'middle', 'font-size': 13, 'font-weight': 700, fill: palette.paper },
      `${number}`,
    ),
  );

function framed(size: number, title: string | undefined, ...shapes: Shape[]): Shape {
  const told = title === undefined ? { 'aria-hidden': 'true' } : { role: 'img' };
  return shape(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', width: size, height: size, viewBox: '0 0 24 24', ...told },
    ...(title === undefined ? [] : [shape('title', {}, title)]),
    ...shapes,
  );
}
