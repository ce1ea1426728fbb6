import { paragraph } from './chart-sheet.ts';
import type { ChartPiece as Piece } from './chart-told.ts';
import { palette } from './palette.ts';
import type { Shape } from './shape.ts';

/** A drawing as a piece of a document. */
export const drawn = (drawing: Shape, more: { keep?: true; head?: Shape; above?: number } = {}): Piece => ({
  kind: 'drawing',
  drawing,
  ...more,
});
export const body = { size: 15 };
export const quiet = { size: 14, fill: palette.ink2 };
export const heading = (words: string): Piece =>
  drawn(paragraph(words, { size: 20, weight: 640 }), { keep: true, above: 22 });
/** Paragraphs. */
export const words = (texts: readonly string[], lettering: object = body): Piece[] =>
  texts.map((text) => drawn(paragraph(text, lettering), { above: 4 }));

/** A part of the report with its heading; nothing at all when there is nothing to say. */
export const section = (title: string, pieces: readonly Piece[]): Piece[] =>
  pieces.length ? [heading(title), ...pieces] : [];
