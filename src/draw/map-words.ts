import type { BenchWords } from './bench-side.ts';
import type { LyingPad, MapRow } from './map-rows.ts';
import { palette } from './palette.ts';
import type { Shape } from './shape.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** Words round a map, line by line. */
export interface WordLine {
  readonly at: 'left' | 'right' | 'pads';
  readonly words: string;
  readonly look: 'name' | 'corner' | 'quiet';
  /** Clear of the corner's bracket. */
  readonly inset?: boolean;
  /** Left edge of the pad it names, px. */
  readonly from?: number;
}

/** The first letter large: names are kept as the job spells them. */
export const asHeading = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

const first = 'find this corner first';
const cornerInset = 18;

/** Lines over the casting, top first; each holds words that stand side by side without meeting. */
export function wordsAbove(
  row: MapRow,
  words: BenchWords,
  size: number,
  width: number,
  spans: readonly Span[],
): WordLine[][] {
  const names = nameLines(spans, size);
  const isSingle = row.pads.length === 1;
  const { corner } = words;
  if (corner.edge === 'far') {
    const other = corner.at === 'left' ? ('right' as const) : ('left' as const);
    const place: WordLine = {
      at: corner.at,
      words: `${corner.end}, ${corner.side}`,
      look: 'quiet',
      inset: true,
    };
    const head: WordLine = { at: corner.at, words: first, look: 'corner', inset: true };
    const name = names[0]?.[0];
    if (isSingle && names.length === 1 && name) {
      const beside: WordLine = { ...name, at: other };
      if (fits([place.words, name.words], size, width - cornerInset)) return [[head], [place, beside]];
      if (fits([head.words, name.words], size, width - cornerInset)) return [[place], [head, beside]];
    }
    // The bracket stands over the first pad's name when it lies on the left.
    const clear = names.map((line) =>
      line.map((part, i) => (i === 0 && corner.at === 'left' ? { ...part, from: part.from! + 40 } : part)),
    );
    return [[head], [place], ...clear];
  }
  const side: WordLine = { at: 'right', words: words.far, look: 'quiet' };
  const name = names.at(-1)?.[0];
  if (isSingle && name && fits([side.words, name.words], size, width))
    return [...names.slice(0, -1), [name, side]];
  return [[side], ...names];
}

/** Lines under the casting, top first. */
export function wordsBelow(words: BenchWords, size: number, width: number): WordLine[][] {
  const { corner } = words;
  const otherAt = corner.at === 'left' ? ('right' as const) : ('left' as const);
  const otherEnd = corner.at === 'left' ? words.right : words.left;
  const end: WordLine = { at: otherAt, words: otherEnd, look: 'quiet' };
  if (corner.edge === 'far') {
    const side: WordLine = { at: corner.at, words: words.near, look: 'quiet' };
    return fits([end.words, side.words], size, width) ? [[side, end]] : [[side], [end]];
  }
  const head: WordLine = { at: corner.at, words: first, look: 'corner', inset: true };
  const place: WordLine = {
    at: corner.at,
    words: `${corner.end}, ${corner.side}`,
    look: 'quiet',
    inset: true,
  };
  return fits([head.words, end.words], size, width - cornerInset)
    ? [[head, end], [place]]
    : [[head], [place], [end]];
}

const fits = (words: readonly string[], size: number, width: number): boolean =>
  words.reduce((sum, part) => sum + textWidth(part, size) + 12, 0) <= width;

/** Where a pad's name may stand, px. */
export interface Span {
  readonly lying: LyingPad;
  readonly x: number;
  readonly width: number;
}

/** The names of a row's pads, broken to the room each has; the lines of all pads side by side, the last ones level. */
export function nameLines(spans: readonly Span[], size: number): WordLine[][] {
  const broken = spans.map((span) =>
    brokenLines(
      asHeading(span.lying.pad.name),
      size,
      spans.length > 1 ? span.width - 6 : Number.POSITIVE_INFINITY,
    ),
  );
  const tall = Math.max(...broken.map((lines) => lines.length));
  return Array.from({ length: tall }, (_, k) =>
    broken.flatMap((lines, i): WordLine[] => {
      const words = lines[k - (tall - lines.length)];
      return words === undefined ? [] : [{ at: 'pads', words, look: 'name', from: spans[i]!.x }];
    }),
  );
}

/** One line of words between two edges, its baseline at y. */
export const wordLine = (
  line: readonly WordLine[],
  left: number,
  right: number,
  y: number,
  size: number,
): Shape[] =>
  line.map((part) => {
    const inset = part.inset ? cornerInset : 0;
    const x = part.at === 'pads' ? (part.from ?? left) : part.at === 'left' ? left + inset : right - inset;
    return label(x, y, part.words, {
      size,
      weight: part.look === 'quiet' ? 480 : part.look === 'corner' ? 680 : 640,
      fill: part.look === 'quiet' ? palette.ink2 : palette.ink,
      anchor: part.at === 'right' ? 'end' : 'start',
    });
  });
