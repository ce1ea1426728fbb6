import { typeface } from './palette.ts';
import { type Shape, shape } from './shape.ts';

export interface Drawing {
  /** What it shows, in a line: its accessible name. */
  readonly title: string;
  /** What it says, in sentences, for whoever cannot see it. */
  readonly desc?: string;
  /** Natural size, px. */
  readonly width: number;
  readonly height: number;
}

/** The root of a figure: named, described, and as wide as it was asked to be unless the page is narrower. */
export function drawing(frame: Drawing, ...children: (Shape | readonly Shape[])[]): Shape {
  return shape(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      role: 'img',
      width: frame.width,
      height: frame.height,
      viewBox: `0 0 ${Math.round(frame.width * 100) / 100} ${Math.round(frame.height * 100) / 100}`,
      'font-family': typeface,
      style: 'max-width: 100%; height: auto; font-variant-numeric: tabular-nums lining-nums',
    },
    shape('title', {}, frame.title),
    ...(frame.desc === undefined ? [] : [shape('desc', {}, frame.desc)]),
    ...children,
  );
}

/** A group. */
export const group = (
  attributes: Record<string, string | number | undefined>,
  ...children: (Shape | readonly Shape[])[]
): Shape => shape('g', attributes, ...children);
