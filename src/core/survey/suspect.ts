import { divisionOf, type FollowOn, followOn } from './follow-on.ts';
import { fewMore, type Readings, roughness, standingOut } from './standing-out.ts';

/** A reading that looks like a slip. It is named, never dropped: only whoever took it knows. */
export interface Suspect {
  readonly code: 'stands out' | 'signs turned from here' | 'other unit' | 'station missing';
  /** Which reading, from 0; for a missing station the one after the gap. */
  readonly index: number;
  readonly found: number;
  /** What its neighbours lead to. */
  readonly expected: number;
  /** What would explain it: the value is this many times its neighbours' (10, 25.4, 1000, −1, …). */
  readonly times?: number;
}

/** How far to both sides the way's own roughness is looked for. */
const nearby = 8;
/**
 * Readings along a way that look like slips: one that does not follow on from its neighbours, all signs turned from some place on,
 * one written in another unit.
 *
 * @param places  rising; the readings' own places
 * @param values  as many readings: heights, or angles of steps
 */
export function suspects(places: readonly number[], values: readonly number[]): Suspect[] {
  if (values.length < 5) return [];
  const follows = followOn(places);
  const turned = signsTurnedFrom(follows, values);
  const alike = turned ? values.map((value, i) => (i < turned.index ? value : -value)) : values;
  const found = [
    ...(turned ? [turned] : []),
    ...otherUnit(values),
    ...standingOut(rowOf(follows, values.length), alike, values),
  ];
  return found.filter((one, i) => found.findIndex((other) => other.index === one.index) === i);
}

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

/** Decimals that a number is written with, six at most: more are worked out and not read. */
const decimalsOf = (value: number): number => Math.min(6, String(Math.abs(value)).split('.')[1]?.length ?? 0);

/** A row's readings as they are weighed: what one touches lies two to either side. */
const rowOf = (follows: FollowOn, many: number): Readings => ({
  off: follows.off,
  expected: follows.expected,
  touched: (i) => beside(i, 2, many),
  near: (i) => beside(i, nearby, many).filter((k) => k !== i),
  isEnd: (i) => i < 2 || i > many - 3,
  needed: 1,
  most: many,
});

/** Places up to so many to either side. */
const beside = (i: number, away: number, many: number): number[] =>
  Array.from({ length: 2 * away + 1 }, (_, k) => i - away + k).filter((k) => k >= 0 && k < many);

/** Times rougher than turned back that the row must be before its signs are suspected. */
const brokenMore = 5;
/** So many readings stand on either side of a turn. */
const eitherSide = 3;
/** So many on either side show the level there. */
const sideBySide = 3;

/** The place from which on every sign looks turned: the row breaks there, and turning what follows mends it. */
function signsTurnedFrom(follows: FollowOn, values: readonly number[]): Suspect | undefined {
  const division = divisionOf(values);
  const breaks = values.map((_, k) => (k < 2 || k > values.length - 2 ? 0 : follows.broken(values, k)));
  const needed = brokenMore * fewMore(values.length);
  let best: { readonly index: number; readonly share: number } | undefined;
  for (let k = eitherSide; k <= values.length - eitherSide; k++) {
    if (!(breaks[k]! > division * needed) || !levelsAgree(values, k)) continue;
    const turned = values.map((value, i) => (i < k ? value : -value));
    const others = breaks.map((one, i) => (Math.abs(i - k) <= 1 ? 0 : one));
    const near = beside(k, nearby, values.length).filter((i) => i !== k);
    const floor = Math.max(division, follows.broken(turned, k), roughness(others, k, near));
    const share = breaks[k]! / (floor * needed);
    if (share > 1 && !(best && best.share >= share)) best = { index: k, share };
  }
  if (!best) return undefined;
  const found = values[best.index]!;
  return { code: 'signs turned from here', index: best.index, found, expected: -found, times: -1 };
}

/** Whether the readings before and behind a place lie nearer to each other when the ones behind are turned. */
function levelsAgree(values: readonly number[], k: number): boolean {
  const before = median(values.slice(Math.max(0, k - sideBySide), k));
  const behind = median(values.slice(k, k + sideBySide));
  return Math.abs(before + behind) < Math.abs(before - behind);
}

/** A number with two more decimals than the others are written with, and fifty times smaller: mm in a column of µm. */
export function otherUnit(values: readonly number[]): Suspect[] {
  const size = median(values.map(Math.abs));
  const decimals = median(values.map(decimalsOf));
  return values.flatMap((found, index): Suspect[] => {
    const isOther = found !== 0 && Math.abs(found) < size / 50 && decimalsOf(found) >= decimals + 2;
    if (!isOther) return [];
    return [{ code: 'other unit', index, found, expected: size * Math.sign(found), times: 0.001 }];
  });
}

/** Stations that are missing from an even row: a gap of two or more steps among steps that are otherwise alike. */
export function missingStations(stations_mm: readonly number[]): Suspect[] {
  if (stations_mm.length < 5) return [];
  const steps = stations_mm.slice(1).map((at, i) => at - stations_mm[i]!);
  const step = median(steps);
  const alike = steps.filter((one) => Math.abs(one - step) <= 0.1 * step).length;
  if (alike < 0.7 * steps.length) return [];
  return steps.flatMap((one, i): Suspect[] => {
    const many = Math.round(one / step);
    if (many < 2 || Math.abs(one - many * step) > 0.05 * many * step) return [];
    return [
      {
        code: 'station missing',
        index: i + 1,
        found: stations_mm[i + 1]!,
        expected: stations_mm[i]! + step,
      },
    ];
  });
}
