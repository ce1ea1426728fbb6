import type { Verdict } from '../../../core/prove/verdict.ts';
import { type MarkName, mark, strokesMark, verdictMark } from '../../../draw/mark.ts';
import type { Shape } from '../../../draw/shape.ts';
import { shapeElement } from '../figure.tsx';

/** A mark is as large as the letters it stands by: where a phone's letters are made larger, it grows with them. */
const withLetters = (drawn: Shape) =>
  shapeElement(drawn, (node) =>
    node === drawn ? { width: rem(node.attributes.width), height: rem(node.attributes.height) } : undefined,
  );
const rem = (px: unknown): string => `${Number(px) / 16}rem`;

/** A small drawn mark in the colour of the text it stands by; the words beside it carry the meaning. */
export const Mark = ({ name, size }: { readonly name: MarkName; readonly size?: number }) =>
  withLetters(mark(name, size));

/** Strokes of one pass: odd passes lean one way, even ones the other, as on the metal. */
export const Strokes = ({ pass, size }: { readonly pass: number; readonly size?: number }) =>
  withLetters(strokesMark(pass, size));

/** A verdict's word with its mark, in its colour. */
export const VerdictWord = (props: { readonly verdict: Verdict; readonly side: 'low' | 'high' }) => (
  <span className={`verdict ${props.verdict.replace(' ', '-')}`}>
    {withLetters(verdictMark(props.verdict, props.side))}
    {props.verdict}
  </span>
);
