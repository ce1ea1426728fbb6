import { drawing } from './drawing.ts';
import { pathThrough, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { twoFigures } from './sweep-plot.ts';
import { brokenLines, label } from './text.ts';

/** A face of a block, seen from a corner, its form drawn too tall. */
export interface PartsFaceFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  readonly words?: string;
  /** Places along both axes of the face, mm. */
  readonly places_mm: readonly [readonly number[], readonly number[]];
  /** First axis by second; plus: stands out. */
  readonly out_um: readonly (readonly number[])[];
  /** What the axes are, at their plus ends. */
  readonly ends: readonly [string, string];
}

const size = 14;
/** Where the page lacks the typeface, its stand-in is broader. */
const wordShare = 0.84;
/** The tallest form takes this share of the width. */
const tall = 0.16;
/** µm in mm. */
const um = 0.001;

/** The face as a net over the plane it should be; lead where it stands out, ink where it lies under. */
export function partsFace(figure: PartsFaceFigure): Shape {
  const { width, places_mm, out_um } = figure;
  const [first, second] = places_mm;
  const words = figure.words ? brokenLines(figure.words, size, width * wordShare) : [];
  const lead = words.length * 18 + (words.length ? 8 : 0);
  const [along, across] = [first.at(-1)! - first[0]!, second.at(-1)! - second[0]!];
  // The second axis goes back and to the right at half its length.
  const lean: Spot = [0.42, 0.3];
  const scale = (width - 40) / (along + lean[0] * across);
  const largest = Math.max(1e-9, ...out_um.flat().map(Math.abs));
  const lift = (tall * width) / Math.max(largest, 0.5);
  const rise = tall * width;
  const floor = lead + 34 + rise + scale * lean[1] * across;
  const ends = brokenLines(
    `right: ${figure.ends[0]}; back: ${figure.ends[1]}`,
    size,
    (width - 12) * wordShare,
  );
  const height = floor + rise + 26 + 18 * ends.length;
  const at = (i: number, j: number, lifted: boolean): Spot => {
    const [a, b] = [first[i]! - first[0]!, second[j]! - second[0]!];
    return [
      12 + scale * (a + lean[0] * b),
      floor - scale * lean[1] * b - (lifted ? lift * out_um[i]![j]! : 0),
    ];
  };
  const strips = (lifted: boolean): Spot[][] => [
    ...second.map((_, j) => first.map((_, i) => at(i, j, lifted))),
    ...first.map((_, i) => second.map((_, j) => at(i, j, lifted))),
  ];
  const plane: Spot[] = [
    at(0, 0, false),
    at(first.length - 1, 0, false),
    at(first.length - 1, second.length - 1, false),
    at(0, second.length - 1, false),
  ];
  const posts = out_um.flatMap((row, i) =>
    row.flatMap((value, j) => {
      const isEdge = i === 0 || j === 0 || i === first.length - 1 || j === second.length - 1;
      return isEdge && (i + j) % 2 === 0 && value !== 0
        ? [
            shape('path', {
              d: pathThrough([at(i, j, false), at(i, j, true)]),
              stroke: value > 0 ? palette.lead : palette.edge,
              'stroke-width': 1.2,
            }),
          ]
        : [];
    }),
  );
  const quiet = { size, weight: 500, fill: palette.ink2 };
  return drawing(
    { title: figure.title, ...(figure.desc ? { desc: figure.desc } : {}), width, height },
    words.map((words, k) => label(0, 15 + 18 * k, words, { size, weight: 560 })),
    label(width - 2, lead + 16, `heights × ${twoFigures(lift / um / scale)}`, { ...quiet, anchor: 'end' }),
    shape('path', { d: pathThrough(plane, true), fill: palette.steel, 'fill-opacity': 0.5 }),
    posts,
    shape('path', {
      d: strips(true)
        .map((strip) => pathThrough(strip))
        .join(''),
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 1.3,
    }),
    ends.map((line, k) => label(12, height - 8 - 18 * (ends.length - 1 - k), line, quiet)),
  );
}
