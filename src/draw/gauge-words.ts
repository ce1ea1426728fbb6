import { type GaugeFigure, type GaugeRow, jawThick, type Placed } from './gauge-row.ts';
import type { GaugeBand } from './jaws.ts';
import { clearPlace, freePlace, type Stretch } from './keep-clear.ts';
import { arrow } from './line.ts';
import { palette } from './palette.ts';
import { type PinPlace, pinEnds } from './pin.ts';
import type { Shape } from './shape.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** The limits in bold over their jaws, moved apart when they would meet, and the zero when there is room for it. */
export function limitTexts(
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

/** Where the words of a row stand: beside its pin, or on a line of their own under it. */
export interface RowWords {
  readonly size: number;
  readonly at: number;
  readonly under: boolean;
}

/** Letter size of a row's value. */
const sizeOf = (row: GaugeRow): number => (row.kind === 'now' ? 17 : row.kind === 'forecast' ? 15 : 14);

/** Height of a line of words that stands under a pin, px. */
export const underHeight = (row: GaugeRow): number => sizeOf(row) + 5;

/** Finds room for a row's value; undefined for one that the page says elsewhere. Its place need not know its height yet. */
export function rowWords(
  { row, place }: Placed,
  figure: GaugeFigure,
  room: Stretch,
  jawStretches: readonly Stretch[],
  low: number | undefined,
  high: number | undefined,
): RowWords | undefined {
  const isNow = row.kind === 'now';
  if (isNow && !figure.show_now_text) return undefined;
  const size = sizeOf(row);
  const width = textWidth(row.text, size);
  const [from, to] = pinEnds(place);
  const isTowardRight = low !== undefined && place.x < low;
  const right = to + 9;
  const left = from - 9 - width;
  const outside = [
    ...(low === undefined ? [] : [low - jawThick - 8 - width]),
    ...(high === undefined ? [] : [high + jawThick + 8]),
  ];
  const isLeftFirst = isNow ? isTowardRight : row.kind === 'forecast';
  const offered = [...(isLeftFirst ? [left, right] : [right, left]), ...outside];
  // The arrow and its words stand on the side of the near jaw; a value there would be written through it.
  const goal = isNow ? goalPlace(row, place, room, jawStretches, low, high) : undefined;
  const taken: Stretch[] = [
    ...jawStretches,
    [from - 4, to + 4],
    ...(goal ? [goal.shaft, goal.words].filter((one) => one !== undefined) : []),
  ];
  const clear = freePlace(offered, width, room, taken);
  if (clear !== undefined) return { size, at: clear, under: false };
  const middle = Math.min(Math.max((from + to - width) / 2, room[0]), Math.max(room[1] - width, room[0]));
  // Under the pin, hard beside a jaw if need be: no edge of the band is drawn through the words while there is room.
  const beside = [room[0], room[1] - width, ...jawStretches.flatMap(([a, b]) => [a - width, b])].sort(
    (a, b) => Math.abs(a - middle) - Math.abs(b - middle),
  );
  const under = freePlace([middle, ...offered, ...beside], width, room, jawStretches);
  return { size, at: under ?? middle, under: true };
}

/** A row's name, its value where there is room for it, and how far it has to go. */
export function wordsOf(
  { row, place }: Placed,
  words: RowWords | undefined,
  room: Stretch,
  jawStretches: readonly Stretch[],
  low: number | undefined,
  high: number | undefined,
): Shape[] {
  const isNow = row.kind === 'now';
  const goal = isNow ? goalPlace(row, place, room, jawStretches, low, high) : undefined;
  return [
    label(0, place.y + 5, row.label, {
      size: 15,
      weight: isNow ? 700 : 500,
      fill: isNow ? palette.ink : palette.ink2,
    }),
    ...(words
      ? [
          label(
            words.at,
            words.under ? place.y + place.height / 2 + words.size : place.y + words.size * 0.35,
            row.text,
            {
              size: words.size,
              weight: row.kind === 'past' ? 480 : 640,
              fill: row.kind === 'past' ? palette.ink2 : palette.ink,
            },
          ),
        ]
      : []),
    ...(goal ? goalShapes(row, place, goal) : []),
  ];
}

interface GoalPlace {
  /** From the pin to the jaw; absent where the two are too near for an arrow. */
  readonly shaft?: Stretch;
  readonly isBelow: boolean;
  readonly words: Stretch;
  /** Baseline against the middle of the pin, px. */
  readonly baseline: number;
}

/** Where the arrow from the pin to the near jaw stands, and the words of the gap to the near limit. */
function goalPlace(
  row: GaugeRow,
  place: PinPlace,
  room: Stretch,
  jawStretches: readonly Stretch[],
  low: number | undefined,
  high: number | undefined,
): GoalPlace | undefined {
  if (row.verdict !== 'outside' || row.to_go === undefined) return undefined;
  const [from, to] = pinEnds(place);
  const isBelow = low !== undefined && place.x < low;
  const goal = isBelow ? low - jawThick : high === undefined ? undefined : high + jawThick;
  if (goal === undefined) return undefined;
  const start = isBelow ? to + 6 : from - 6;
  const gap = isBelow ? goal - start : start - goal;
  const width = textWidth(row.to_go, 16);
  const shaft: { shaft?: Stretch } =
    gap >= 14 ? { shaft: isBelow ? [start, goal - 1] : [goal + 1, start] } : {};
  const at = (left: number, baseline: number): GoalPlace => ({
    ...shaft,
    isBelow,
    words: [left, left + width],
    baseline,
  });
  if (gap >= width + 4) return at(isBelow ? start : start - width, -7);
  const over = -place.height / 2;
  const isNearlyThere = gap >= width - 24;
  const near = isBelow ? goal - 4 - width : goal + 4;
  if (isNearlyThere && near >= room[0] && near + width <= room[1]) return at(near, over - 4);
  const beyond = isBelow ? from - 9 - width : to + 9;
  if (beyond >= room[0] && beyond + width <= room[1]) return at(beyond, 6);
  return at(clearPlace([isBelow ? from : to - width], width, room, jawStretches), over - 5);
}

function goalShapes(row: GaugeRow, place: PinPlace, goal: GoalPlace): Shape[] {
  const { shaft, isBelow, words, baseline } = goal;
  const ends = shaft && (isBelow ? shaft : ([shaft[1], shaft[0]] as const));
  return [
    ...(ends ? [arrow([ends[0], place.y], [ends[1], place.y], palette.lead, 2)] : []),
    label(words[0], place.y + baseline, row.to_go!, { size: 16, weight: 660, fill: palette.lead }),
  ];
}

const quiet = { size: 15, weight: 500, fill: palette.ink2 };
const lineHeight = 19;

/** What the ends of the axis are called, as lines: each in its own half, broken where it would meet the other. */
function endLines(figure: GaugeFigure, room: Stretch): { minus: string[]; plus: string[] } {
  const minus = figure.minus_word === undefined ? undefined : `− ${figure.minus_word}`;
  const plus = figure.plus_word === undefined ? undefined : `${figure.plus_word} +`;
  const wide = room[1] - room[0];
  const air = 14;
  const fits = textWidth(minus ?? '', quiet.size) + textWidth(plus ?? '', quiet.size) + air <= wide;
  const most = fits || minus === undefined || plus === undefined ? wide : (wide - air) / 2;
  const broken = (words: string | undefined): string[] =>
    words === undefined ? [] : fits ? [words] : brokenLines(words, quiet.size, most);
  return { minus: broken(minus), plus: broken(plus) };
}

/** Height that the words at the ends of the axis take, px. */
export function endHeight(figure: GaugeFigure, room: Stretch): number {
  const { minus, plus } = endLines(figure, room);
  return Math.max(minus.length, plus.length, 1) * lineHeight;
}

/** What both ends of the axis are called. */
export function endWords(figure: GaugeFigure, room: Stretch, y: number): Shape[] {
  const { minus, plus } = endLines(figure, room);
  return [
    ...minus.map((words, k) => label(room[0], y + k * lineHeight, words, quiet)),
    ...plus.map((words, k) => label(room[1], y + k * lineHeight, words, { ...quiet, anchor: 'end' })),
  ];
}
