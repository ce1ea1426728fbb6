import { cardShape } from '../core/print/card-shape.ts';
import { type Shape, shape } from './shape.ts';

/** Sheets the card can be printed on, mm. */
export const papers = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;
export type Paper = keyof typeof papers;

/** Printers leave a rim of some mm unprinted; the card keeps well clear of it. */
const top_mm = 30;
/** Letters on paper, mm high. */
const small_mm = 3.2;

const words = [
  'How to use it',
  '1 Print at 100 %, not fitted to the page. Hold a rule against the line: it is 100 mm long, or the print is not to scale.',
  '2 Cut along the thin line and glue it flat onto card. It must not curl.',
  '3 Lay it beside the printed surface, face up and in its plane, on packing of the same height where the surface stands proud.',
  '4 Photograph both in one picture, from above, in soft light, with the four squares and the four corners in view.',
];

/** Words are broken where the card ends; a letter of this face is about half as wide as high. */
function lines(text: string, most: number): string[] {
  const broken: string[] = [''];
  for (const word of text.split(' ')) {
    const last = broken.at(-1)!;
    if (last !== '' && `${last} ${word}`.length > most) broken.push(word);
    else broken[broken.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return broken;
}

const letters = (x: number, y: number, text: string, size = small_mm): Shape =>
  shape('text', { x, y, 'font-size': size, fill: '#000000' }, text);

const stroke = (x1: number, y1: number, x2: number, y2: number, width: number): Shape =>
  shape('line', { x1, y1, x2, y2, stroke: '#000000', 'stroke-width': width });

/** The card's own face, its top left corner at (x, y). White is left round every square: that is what it is found by. */
function face(x: number, y: number): Shape[] {
  const { length_mm, width_mm, square_mm, squares, dot_radius_mm, check_mm } = cardShape;
  const half = square_mm / 2;
  const [first] = squares;
  const from = x + (length_mm - check_mm) / 2;
  const middle = y + width_mm / 2;
  return [
    shape('rect', {
      x,
      y,
      width: length_mm,
      height: width_mm,
      fill: '#ffffff',
      stroke: '#808080',
      'stroke-width': 0.1,
    }),
    ...squares.map((at) =>
      shape('rect', { x: x + at.x, y: y + at.y, width: square_mm, height: square_mm, fill: '#000000' }),
    ),
    shape('circle', { cx: x + first.x + half, cy: y + first.y + half, r: dot_radius_mm, fill: '#ffffff' }),
    stroke(from, middle, from + check_mm, middle, 0.25),
    stroke(from, middle - 3, from, middle + 3, 0.25),
    stroke(from + check_mm, middle - 3, from + check_mm, middle + 3, 0.25),
    letters(from, middle - 5, `${check_mm} mm from end to end`),
    letters(from, middle + 7, `Corner card, ${length_mm} × ${width_mm} mm`),
  ];
}

/** The corner card on a sheet, to true scale: a unit of the drawing is a mm. */
export function cornerCard(paper: Paper): Shape {
  const { width, height } = papers[paper];
  const x = (width - cardShape.length_mm) / 2;
  const below = top_mm + cardShape.width_mm + 12;
  const text = words.flatMap((one) => lines(one, 88));
  return shape(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
      'font-family': 'Helvetica, Arial, sans-serif',
    },
    shape('title', {}, 'Corner card'),
    shape('rect', { x: 0, y: 0, width, height, fill: '#ffffff' }),
    ...face(x, top_mm),
    ...text.map((line, k) => letters(x, below + 1.6 * small_mm * k, line)),
  );
}
