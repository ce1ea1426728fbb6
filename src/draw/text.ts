import { leastText, palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';

/**
 * Advance widths of the typeface at weight 600, in hundredths of the size: measured once, so that a drawing can keep its words
 * apart without a screen to measure them on. Letters that are not listed count 60.
 */
const widths: readonly (readonly [number, string])[] = [
  [20, ' '],
  [25, "ijl'"],
  [28, 'I’'],
  [30, '!,./'],
  [31, 'ft'],
  [34, ':;-·'],
  [36, 'r()'],
  [40, '*°'],
  [44, '"“”'],
  [51, 'z–'],
  [54, 'cksvxy'],
  [56, 'aeL1é'],
  [58, '023456789#hnuJ'],
  [60, 'bdgopq?µ'],
  [62, 'FTZ'],
  [64, '+=±−×'],
  [67, 'ESPKV'],
  [69, 'XY'],
  [72, 'ABCDHNRU&'],
  [76, 'w'],
  [78, 'GOQ'],
  [85, 'mM'],
  [96, 'W%'],
];
const widthOf = new Map(widths.flatMap(([width, letters]) => [...letters].map((c) => [c, width] as const)));

/** Breadth of a line of text, px, near enough to keep words apart. */
export const textWidth = (text: string, size: number): number =>
  [...text].reduce((sum, c) => sum + (widthOf.get(c) ?? 60), 0) * (size / 100);

export interface Lettering {
  readonly size?: number;
  readonly weight?: number;
  readonly fill?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** A line of text with its baseline at y. */
export function label(x: number, y: number, words: string, lettering: Lettering = {}): Shape {
  const { size = leastText, weight = 560, fill = palette.ink, anchor } = lettering;
  return shape(
    'text',
    {
      x,
      y,
      'font-size': size,
      'font-weight': weight,
      fill,
      'text-anchor': anchor === 'start' ? undefined : anchor,
    },
    words,
  );
}

/** Words broken into lines no broader than `width` px; a word that is broader has a line to itself. */
export function brokenLines(words: string, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = lines.length ? `${lines.at(-1)} ${word}` : word;
    if (lines.length && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
