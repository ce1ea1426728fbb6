import type { Verdict } from '../core/prove/verdict.ts';
import { drawing } from './drawing.ts';
import { gaugeDomain, linear } from './gauge-scale.ts';
import { type GaugeBand, jaws } from './jaws.ts';
import { clearPlace, type Stretch } from './keep-clear.ts';
import { arrow, line } from './line.ts';
import { palette } from './palette.ts';
import { type PinPlace, pin, pinEnds } from './pin.ts';
import type { Shape } from './shape.ts';
import { label, textWidth } from './text.ts';

/** A round on the gauge. Value and doubt (two sd) in the shown unit; the text is how they are spoken. */
export interface GaugeRow {
  readonly kind: 'past' | 'now' | 'forecast';
  /** "R1", "before". */
  readonly label: string;
  readonly value: number;
  readonly doubt: number;
  /** "−43 ± 5"; of a forecast "forecast +11 ± 10". */
  readonly text: string;
  /** Of the row that is now. */
  readonly verdict?: Verdict;
  /** "21 to go": of the row that is now, when it is outside. */
  readonly to_go?: string;
}

export interface GaugeFigure {
  readonly title: string;
  readonly desc?: string;
  readonly width: number;
  readonly band: GaugeBand;
  /** Oldest first; they stack down the same axis and their centres are joined. */
  readonly rows: readonly GaugeRow[];
  /** What the two directions are called: "convex", "concave". */
  readonly minus_word?: string;
  readonly plus_word?: string;
  /** Ends of the scale; left out: all that must be seen. */
  readonly domain?: readonly [number, number];
  /** Writes the value beside the pin that is now too; left out, the page's hero number says it. */
  readonly show_now_text?: boolean;
}

const pitch = { past: 24, now: 46, forecast: 36 } as const;
/** Room over the pin for the words of the arrow. */
const goalRoom = 9;
const pinHeight = { past: 11, now: 26, forecast: 17 } as const;
const jawThick = 7;
const headHeight = 28;

interface Placed {
  readonly row: GaugeRow;
  readonly place: PinPlace;
}

/** Jaws and pins: a tolerance band as two jaws, each round's value as a pin as wide as its doubt, the trend down the page. */
export function gauge(figure: GaugeFigure): Shape {
  const { width, band, rows } = figure;
  const labelWidth = Math.max(0, ...rows.map((row) => textWidth(row.label, 15))) + (rows.length ? 12 : 0);
  const room: Stretch = [labelWidth, width - 2];
  const x = linear(figure.domain ?? gaugeDomain(band, rows), [room[0] + jawThick, room[1] - jawThick]);
  const low = band.low === undefined ? undefined : x(band.low);
  const high = band.high === undefined ? undefined : x(band.high);
  const top = headHeight;
  const placed = placeRows(rows, x, room, top + 8);
  const rowsHeight = rows.reduce((sum, row) => sum + tallOf(row), 0);
  const bottom = top + Math.max(rowsHeight + 14, 60);
  const hasWords = figure.minus_word !== undefined || figure.plus_word !== undefined;
  const jawStretches: Stretch[] = [
    ...(low === undefined ? [] : [[low - jawThick - 3, low + 3] as const]),
    ...(high === undefined ? [] : [[high - 3, high + jawThick + 3] as const]),
  ];
  return drawing(
    { ...figure, height: bottom + (hasWords ? 26 : 6) },
    zeroTicks(x(0), top, bottom, room, jawStretches),
    jaws({ low, high, top, bottom, left: room[0], right: room[1], thick: jawThick, chamfer: 4 }),
    limitTexts(band, low, high, x(0), room),
    joins(placed),
    placed.map(({ row, place }) => pin(place, lookOf(row))),
    placed.flatMap((here) => wordsOf(here, figure, room, jawStretches, low, high)),
    hasWords ? endWords(figure, room, bottom + 20) : [],
  );
}

const lookOf = (row: GaugeRow) => (row.kind === 'now' ? (row.verdict ?? 'not proven') : row.kind);

const tallOf = (row: GaugeRow): number => pitch[row.kind] + (row.to_go === undefined ? 0 : goalRoom);

function placeRows(
  rows: readonly GaugeRow[],
  x: (value: number) => number,
  room: Stretch,
  top: number,
): Placed[] {
  let y = top;
  return rows.map((row) => {
    const middle = y + tallOf(row) - pitch[row.kind] / 2;
    y += tallOf(row);
    const half = x(row.doubt) - x(0);
    return {
      row,
      place: { x: x(row.value), half, y: middle, height: pinHeight[row.kind], left: room[0], right: room[1] },
    };
  });
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

/** The limits in bold over their jaws, moved apart when they would meet, and the zero when there is room for it. */
function limitTexts(
  band: GaugeBand,
  low: number | undefined,
  high: number | undefined,
  zero: number,
  room: Stretch,
): Shape[] {
  const size = 17;
  const y = 19;
  const stretch = (middle: number, words: string): Stretch => {
    const width = textWidth(words, size);
    const from = Math.min(Math.max(middle - width / 2, room[0]), room[1] - width);
    return [from, from + width];
  };
  let lowAt = low === undefined ? undefined : stretch(low - jawThick / 2, band.low_text ?? '');
  let highAt = high === undefined ? undefined : stretch(high + jawThick / 2, band.high_text ?? '');
  if (lowAt && highAt && lowAt[1] + 8 > highAt[0]) {
    const overlap = (lowAt[1] + 8 - highAt[0]) / 2;
    const pushed = Math.max(overlap, highAt[1] + overlap - room[1] > 0 ? overlap * 2 : overlap);
    highAt = [Math.min(highAt[0] + overlap, room[1] - (highAt[1] - highAt[0])), room[1]];
    lowAt = [lowAt[0] - pushed, lowAt[1] - pushed];
  }
  const bold = { size, weight: 680 };
  const taken = [lowAt, highAt].filter((at): at is Stretch => at !== undefined);
  const zeroHalf = textWidth('0', 15) / 2 + 6;
  const zeroFits =
    zero - zeroHalf > room[0] - 6 &&
    zero + zeroHalf < room[1] + 6 &&
    !taken.some((at) => zero + zeroHalf > at[0] && zero - zeroHalf < at[1]);
  return [
    ...(lowAt ? [label(lowAt[0], y, band.low_text ?? '', bold)] : []),
    ...(highAt ? [label(highAt[0], y, band.high_text ?? '', bold)] : []),
    ...(zeroFits
      ? [label(zero, y, '0', { size: 15, weight: 480, fill: palette.ink2, anchor: 'middle' })]
      : []),
  ];
}

function wordsOf(
  here: Placed,
  figure: GaugeFigure,
  room: Stretch,
  jawStretches: readonly Stretch[],
  low: number | undefined,
  high: number | undefined,
): Shape[] {
  const { row, place } = here;
  const isNow = row.kind === 'now';
  const name = label(0, place.y + 5, row.label, {
    size: 15,
    weight: isNow ? 700 : 500,
    fill: isNow ? palette.ink : palette.ink2,
  });
  const goal =
    isNow && row.verdict === 'outside' && row.to_go !== undefined
      ? toGo(row.to_go, place, room, jawStretches, low, high)
      : [];
  if (isNow && !figure.show_now_text) return [name, ...goal];
  const size = isNow ? 17 : row.kind === 'forecast' ? 15 : 14;
  const width = textWidth(row.text, size);
  const [from, to] = pinEnds(place);
  const isTowardRight = low !== undefined && place.x < low;
  const right = to + 9;
  const left = from - 9 - width;
  const outside = [
    low === undefined ? [] : [low - jawThick - 8 - width],
    high === undefined ? [] : [high + jawThick + 8],
  ];
  const offered = isNow
    ? isTowardRight
      ? [left, right]
      : [right, left]
    : row.kind === 'forecast'
      ? [left, right]
      : [right, left];
  const taken: Stretch[] = [...jawStretches, [from - 4, to + 4]];
  return [
    name,
    label(clearPlace([...offered, ...outside.flat()], width, room, taken), place.y + size * 0.35, row.text, {
      size,
      weight: row.kind === 'past' ? 480 : 640,
      fill: row.kind === 'past' ? palette.ink2 : palette.ink,
    }),
    ...goal,
  ];
}

/** The arrow from the pin to the near jaw, with the gap to the near limit. */
function toGo(
  words: string,
  place: PinPlace,
  room: Stretch,
  jawStretches: readonly Stretch[],
  low: number | undefined,
  high: number | undefined,
): Shape[] {
  const [from, to] = pinEnds(place);
  const isBelow = low !== undefined && place.x < low;
  const goal = isBelow ? low - jawThick : high === undefined ? undefined : high + jawThick;
  if (goal === undefined) return [];
  const start = isBelow ? to + 6 : from - 6;
  const gap = isBelow ? goal - start : start - goal;
  const width = textWidth(words, 16);
  const lettering = { size: 16, weight: 660, fill: palette.lead };
  const shaft =
    gap >= 14 ? [arrow([start, place.y], [goal - (isBelow ? 1 : -1), place.y], palette.lead, 2)] : [];
  if (gap >= width + 4)
    return [...shaft, label(isBelow ? start : start - width, place.y - 7, words, lettering)];
  const isNearlyThere = gap >= width - 24;
  if (isNearlyThere) {
    const at = isBelow ? goal - 4 - width : goal + 4;
    return [...shaft, label(at, place.y - place.height / 2 - 4, words, lettering)];
  }
  const beyond = isBelow ? from - 9 - width : to + 9;
  const over = isBelow ? from : to - width;
  const isBeyondFree = beyond >= room[0] && beyond + width <= room[1];
  return isBeyondFree
    ? [...shaft, label(beyond, place.y + 6, words, lettering)]
    : [
        ...shaft,
        label(
          clearPlace([over], width, room, jawStretches),
          place.y - place.height / 2 - 5,
          words,
          lettering,
        ),
      ];
}

const endWords = (figure: GaugeFigure, room: Stretch, y: number): Shape[] => {
  const quiet = { size: 15, weight: 500, fill: palette.ink2 };
  return [
    ...(figure.minus_word === undefined ? [] : [label(room[0], y, `− ${figure.minus_word}`, quiet)]),
    ...(figure.plus_word === undefined
      ? []
      : [label(room[1], y, `${figure.plus_word} +`, { ...quiet, anchor: 'end' })]),
  ];
};
