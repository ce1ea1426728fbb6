import { drawing } from './drawing.ts';
import { type GaugeFigure, type GaugeRow, jawThick, type Placed } from './gauge-row.ts';
import { gaugeDomain, linear } from './gauge-scale.ts';
import {
  endHeight,
  endWords,
  limitTexts,
  type RowWords,
  rowWords,
  underHeight,
  wordsOf,
} from './gauge-words.ts';
import { jaws } from './jaws.ts';
import type { Stretch } from './keep-clear.ts';
import { line } from './line.ts';
import { palette } from './palette.ts';
import { type PinPlace, pin } from './pin.ts';
import type { Shape } from './shape.ts';
import { textWidth } from './text.ts';

export type { GaugeFigure, GaugeRow };

const pitch = { past: 24, now: 46, forecast: 36 } as const;
/** Room over the pin for the words of the arrow. */
const goalRoom = 9;
const pinHeight = { past: 11, now: 26, forecast: 17 } as const;
const headHeight = 28;

/** Jaws and pins: a tolerance band as two jaws, each round's value as a pin as wide as its doubt, the trend down the page. */
export function gauge(figure: GaugeFigure): Shape {
  const { width, band, rows } = figure;
  const labelWidth = Math.max(0, ...rows.map((row) => textWidth(row.label, 15))) + (rows.length ? 12 : 0);
  const room: Stretch = [labelWidth, width - 2];
  const x = linear(figure.domain ?? gaugeDomain(band, rows), [room[0] + jawThick, room[1] - jawThick]);
  const low = band.low === undefined ? undefined : x(band.low);
  const high = band.high === undefined ? undefined : x(band.high);
  const top = headHeight;
  const hasWords = figure.minus_word !== undefined || figure.plus_word !== undefined;
  const jawStretches: Stretch[] = [
    ...(low === undefined ? [] : [[low - jawThick - 3, low + 3] as const]),
    ...(high === undefined ? [] : [[high - 3, high + jawThick + 3] as const]),
  ];
  const findWords = (here: Placed): RowWords | undefined =>
    rowWords(here, figure, room, jawStretches, low, high);
  const { placed, height } = placeRows(rows, x, room, top + 8, findWords);
  const bottom = top + Math.max(height + 14, 60);
  return drawing(
    {
      ...figure,
      desc: figure.desc ?? inWords(figure),
      height: bottom + (hasWords ? 7 + endHeight(figure, room) : 6),
    },
    zeroTicks(x(0), top, bottom, room, jawStretches),
    jaws({ low, high, top, bottom, left: room[0], right: room[1], thick: jawThick, chamfer: 4 }),
    limitTexts(band, low, high, x(0), room),
    joins(placed),
    placed.map(({ row, place }) => pin(place, lookOf(row))),
    placed.flatMap((here) => wordsOf(here, here.words, room, jawStretches, low, high)),
    hasWords ? endWords(figure, room, bottom + 20) : [],
  );
}

/** The same picture as sentences: the band, each round, and what the two ends of the scale are called. */
function inWords({ band, rows, minus_word, plus_word }: GaugeFigure): string {
  const { low_text: low, high_text: high } = band;
  const limits =
    low !== undefined && high !== undefined
      ? `Between ${low} and ${high}.`
      : low !== undefined
        ? `${low} or more.`
        : high !== undefined
          ? `${high} or less.`
          : 'No limits.';
  const ends = [minus_word && `minus is ${minus_word}`, plus_word && `plus is ${plus_word}`].filter(Boolean);
  return [
    limits,
    ...(ends.length > 0 ? [`Here ${ends.join(', ')}.`] : []),
    ...rows.map((row) => `${row.label}: ${[row.text, row.verdict, row.to_go].filter(Boolean).join(', ')}.`),
  ].join(' ');
}

const lookOf = (row: GaugeRow) => (row.kind === 'now' ? (row.verdict ?? 'not proven') : row.kind);

const tallOf = (row: GaugeRow): number => pitch[row.kind] + (row.to_go === undefined ? 0 : goalRoom);

interface Worded extends Placed {
  readonly words: RowWords | undefined;
}

/** Rows one below the other; one whose value has no room beside its pin is taller by a line. */
function placeRows(
  rows: readonly GaugeRow[],
  x: (value: number) => number,
  room: Stretch,
  top: number,
  findWords: (here: Placed) => RowWords | undefined,
): { readonly placed: Worded[]; readonly height: number } {
  let y = top;
  const placed = rows.map((row): Worded => {
    const place = {
      x: x(row.value),
      half: x(row.doubt) - x(0),
      y: y + tallOf(row) - pitch[row.kind] / 2,
      height: pinHeight[row.kind],
      left: room[0],
      right: room[1],
    };
    const words = findWords({ row, place });
    y += tallOf(row) + (words?.under ? underHeight(row) : 0);
    return { row, place, words };
  });
  return { placed, height: y - top };
}

/** Lines that join the centres, round to round; to and from a forecast they are dashed. */
function joins(placed: readonly Placed[]): Shape[] {
  const shapes: Shape[] = [];
  let last: Placed | undefined;
  for (const here of placed) {
    if (last) {
      const dashed = here.row.kind === 'forecast';
      const from = last.place;
      const to = here.place;
      shapes.push(
        line(
          [held(from), from.y + from.height / 2],
          [held(to), to.y - to.height / 2],
          palette.edge,
          1.3,
          dashed ? { 'stroke-dasharray': '3 3' } : {},
        ),
      );
    }
    if (here.row.kind !== 'forecast') last = here;
  }
  return shapes;
}

/** A pin that runs off the scale is joined at the edge. */
const held = (place: PinPlace): number => Math.min(Math.max(place.x, place.left + 4), place.right - 4);

function zeroTicks(
  x: number,
  top: number,
  bottom: number,
  room: Stretch,
  taken: readonly Stretch[],
): Shape[] {
  const isHidden = taken.some((stretch) => x > stretch[0] && x < stretch[1]);
  if (isHidden || x < room[0] || x > room[1]) return [];
  return [
    line([x, top - 4], [x, top + 4], palette.edge, 2),
    line([x, bottom - 6], [x, bottom + 2], palette.edge, 2),
  ];
}
