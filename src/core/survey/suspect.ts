import { divisionOf, type FollowOn, followOn } from './follow-on.ts';

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

/** A slip that makes a number too large or too small, and how many times rougher than put right the row must be before it is claimed. */
interface Slip {
  readonly times: number;
  readonly rougher: number;
}

/**
 * A decimal place is the commonest slip; a sign, an inch for a millimetre or mm for µm are rarer, and each that is tried may fit by chance.
 * The numbers are measured on surveys without slips, of smooth and of worn ways (checks/survey-slips.check.ts): of a thousand, fewer than ten
 * are suspected of anything.
 */
export const slips: readonly Slip[] = [
  { times: 10, rougher: 5.5 },
  { times: -1, rougher: 9 },
  { times: 100, rougher: 9 },
  { times: 0.1, rougher: 9 },
  { times: 25.4, rougher: 12 },
  { times: 1 / 25.4, rougher: 12 },
  { times: 1000, rougher: 12 },
  { times: 0.001, rougher: 12 },
  { times: -10, rougher: 12 },
];
/** The same where nothing explains the reading. */
const unexplained = 40;
/** Few readings tell little of how rough a way is of itself. */
const fewMore = (many: number): number => 1 + 1.6 / many;
/** At an end a way's own wear is seen from one side only. */
const atEnd = 1.3;
/** How far to both sides the way's own roughness is looked for. */
const nearby = 8;
/** Share of all readings that are no rougher than what counts of the whole way. */
const usualShare = 0.8;

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
  const found = [...(turned ? [turned] : []), ...otherUnit(values), ...standingOut(follows, alike, values)];
  return found.filter((one, i) => found.findIndex((other) => other.index === one.index) === i);
}

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

/** Decimals that a number is written with. */
const decimalsOf = (value: number): number => String(Math.abs(value)).split('.')[1]?.length ?? 0;

/** How rough a row is about a place, the place itself left out: the roughest near by, or what most of the row stays below. */
function roughness(offs: readonly number[], about: number): number {
  let near = 0;
  const others: number[] = [];
  for (const [k, off] of offs.entries()) {
    if (k === about) continue;
    others.push(off);
    if (Math.abs(k - about) <= nearby) near = Math.max(near, off);
  }
  others.sort((a, b) => a - b);
  return Math.max(near, others[Math.min(others.length - 1, Math.floor(usualShare * others.length))]!);
}

/** A reading weighed: how many times rougher the row is with it than put right. */
interface Weighed {
  readonly index: number;
  readonly times?: number;
  /** Over what is needed. */
  readonly share: number;
}

/**
 * The slips, one after another: the clearest first, then the row with it put right.
 *
 *     rougher = off(as typed) / max(off(put right), roughness of the row put right, division)          (1)
 *
 * Put right is a value divided by the slip's own factor, so that a worn place, which no factor explains, is not suspected.
 */
function standingOut(follows: FollowOn, values: readonly number[], typed: readonly number[]): Suspect[] {
  const kept = [...values];
  const found: Suspect[] = [];
  while (found.length < values.length / 4) {
    const worst = clearest(follows, kept, found);
    if (!worst) break;
    const { index, times } = worst;
    const righted = times === undefined ? follows.expected(kept, index) : kept[index]! / times;
    const expected = follows.expected(kept, index);
    found.push({
      code: 'stands out',
      index,
      found: typed[index]!,
      expected: typed[index] === values[index] ? expected : -expected,
      ...(times === undefined ? {} : { times }),
    });
    kept[index] = righted;
  }
  return found;
}

function clearest(
  follows: FollowOn,
  values: readonly number[],
  named: readonly Suspect[],
): Weighed | undefined {
  const offs = values.map((_, i) => follows.off(values, i));
  const more = fewMore(values.length);
  const division = divisionOf(values);
  let best: Weighed | undefined;
  const row = [...values];
  const weigh = (index: number, righted: number, own: boolean, rougher: number, times?: number) => {
    const isEnd = index < 2 || index > values.length - 3;
    const needed = rougher * more * (isEnd ? atEnd : 1);
    row[index] = righted;
    const itself = Math.max(division, own ? follows.off(row, index) : 0);
    // Most are settled by the reading itself; the whole row is looked at for the others only.
    const floor =
      offs[index]! > itself * needed
        ? Math.max(
            itself,
            roughness(
              offs.map((off, k) => (Math.abs(k - index) <= 2 ? follows.off(row, k) : off)),
              index,
            ),
          )
        : Infinity;
    row[index] = values[index]!;
    const share = offs[index]! / (floor * needed);
    if (share > 1 && !(best && best.share >= share))
      best = { index, share, ...(times === undefined ? {} : { times }) };
  };
  // A reading off by less than this many divisions is nothing to ask about.
  const least = division * slips[0]!.rougher;
  for (const index of values.keys()) {
    if (!(offs[index]! > least) || named.some((one) => one.index === index)) continue;
    for (const { times, rougher } of slips) weigh(index, values[index]! / times, true, rougher, times);
  }
  if (best) return best;
  for (let index = 2; index < values.length - 2; index++)
    if (offs[index]! > least && !named.some((one) => one.index === index))
      weigh(index, follows.expected(values, index), false, unexplained);
  return best;
}

/** Times rougher than turned back that the row must be before its signs are suspected. */
const brokenMore = 5;
/** So many readings stand on either side of a turn. */
const eitherSide = 3;
/** So many on either side show the level there. */
const beside = 3;

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
    const floor = Math.max(division, follows.broken(turned, k), roughness(others, k));
    const share = breaks[k]! / (floor * needed);
    if (share > 1 && !(best && best.share >= share)) best = { index: k, share };
  }
  if (!best) return undefined;
  const found = values[best.index]!;
  return { code: 'signs turned from here', index: best.index, found, expected: -found, times: -1 };
}

/** Whether the readings before and behind a place lie nearer to each other when the ones behind are turned. */
function levelsAgree(values: readonly number[], k: number): boolean {
  const before = median(values.slice(Math.max(0, k - beside), k));
  const behind = median(values.slice(k, k + beside));
  return Math.abs(before + behind) < Math.abs(before - behind);
}

/** A number with two more decimals than the others are written with, and fifty times smaller: mm in a column of µm. */
function otherUnit(values: readonly number[]): Suspect[] {
  const size = median(values.map(Math.abs));
  return values.flatMap((found, index): Suspect[] => {
    const others = values.filter((_, i) => i !== index);
    const decimals = median(others.map(decimalsOf));
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
