import { type GaugeFigure, jawThick, type Placed } from './gauge-row.ts';
import type { GaugeBand } from './jaws.ts';
import { clearPlace, type Stretch } from './keep-clear.ts';
import { arrow } from './line.ts';
import { palette } from './palette.ts';
import { type PinPlace, pinEnds } from './pin.ts';
import type { Shape } from './shape.ts';
import { label, textWidth } from './text.ts';

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

/** A row's name, its value beside its pin where nothing is in the way, and how far it has to go. */
export function wordsOf(
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

/** What both ends of the axis are called. */
export const endWords = (figure: GaugeFigure, room: Stretch, y: number): Shape[] => {
  const quiet = { size: 15, weight: 500, fill: palette.ink2 };
  return [
    ...(figure.minus_word === undefined ? [] : [label(room[0], y, `− ${figure.minus_word}`, quiet)]),
    ...(figure.plus_word === undefined
      ? []
      : [label(room[1], y, `${figure.plus_word} +`, { ...quiet, anchor: 'end' })]),
  ];
};
