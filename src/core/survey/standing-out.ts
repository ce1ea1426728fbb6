import { divisionOf } from './follow-on.ts';
import type { Suspect } from './suspect.ts';

/** A slip that makes a number too large or too small, and how many times rougher than put right the readings must be before it is claimed. */
interface Slip {
  readonly times: number;
  readonly rougher: number;
}

/**
 * A decimal place is the commonest slip; a sign, an inch for a millimetre or mm for µm are rarer, and each that is tried may fit by chance.
 * The numbers are measured on surveys without slips, of smooth and of worn ways and plates (checks/survey-slips.check.ts): of a thousand, fewer
 * than ten are suspected of anything.
 */
const slips: readonly Slip[] = [
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
/** Of fewer readings a peak is as likely the way's own. */
const leastUnexplained = 7;
/** Few readings tell little of how rough a way is of itself. */
export const fewMore = (many: number): number => 1 + 1.6 / many;
/** At an end a way's own wear is seen from one side only. */
const atEnd = 1.3;
/** Share of all readings that are no rougher than what counts of the whole. */
const usualShare = 0.8;

/** Readings side by side, along a way or over a surface, and how each follows on from those beside it. */
export interface Readings {
  /** How far a reading is off what its neighbours lead to, for each unit of noise in that difference. */
  readonly off: (values: readonly number[], i: number) => number;
  /** What they lead to. */
  readonly expected: (values: readonly number[], i: number) => number;
  /** Readings whose `off` this one's value is part of, itself among them. */
  readonly touched: (i: number) => readonly number[];
  /** Readings beside it, where the roughness of the thing itself is looked for; itself not among them. */
  readonly near: (i: number) => readonly number[];
  /** Whether it has neighbours on some sides only. */
  readonly isEnd: (i: number) => boolean;
  /** Share of what is needed along a way that is needed here. */
  readonly needed: number;
  /** Most slips that are named. */
  readonly most: number;
}

/** How rough they are about a place, the place itself left out: the roughest near by, or what most of all stay below. */
export function roughness(offs: readonly number[], about: number, near: readonly number[]): number {
  const others = offs.filter((_, k) => k !== about).sort((a, b) => a - b);
  return Math.max(
    ...near.map((k) => offs[k]!),
    others[Math.min(others.length - 1, Math.floor(usualShare * others.length))]!,
  );
}

/** A reading weighed: how many times rougher it all is with it than put right. */
interface Weighed {
  readonly index: number;
  readonly times?: number;
  /** Over what is needed. */
  readonly share: number;
}

/**
 * The slips, one after another: the clearest first, then the readings with it put right.
 *
 *     rougher = off(as typed) / max(off(put right), roughness with it put right, division)          (1)
 *
 * Put right is a value divided by the slip's own factor, so that a worn place, which no factor explains, is not suspected.
 *
 * @param typed  as they were typed, where `values` has signs turned back
 */
export function standingOut(
  readings: Readings,
  values: readonly number[],
  typed: readonly number[],
): Suspect[] {
  const kept = [...values];
  const found: Suspect[] = [];
  while (found.length < Math.min(readings.most, values.length / 4)) {
    const worst = clearest(readings, kept, found);
    if (!worst) break;
    const { index, times } = worst;
    const expected = readings.expected(kept, index);
    found.push({
      code: 'stands out',
      index,
      found: typed[index]!,
      expected: typed[index] === values[index] ? expected : -expected,
      ...(times === undefined ? {} : { times }),
    });
    kept[index] = times === undefined ? expected : kept[index]! / times;
  }
  return found;
}

function clearest(
  readings: Readings,
  values: readonly number[],
  named: readonly Suspect[],
): Weighed | undefined {
  const offs = values.map((_, i) => readings.off(values, i));
  const more = fewMore(values.length);
  const division = divisionOf(values);
  let best: Weighed | undefined;
  const tried = [...values];
  const weigh = (index: number, righted: number, own: boolean, rougher: number, times?: number) => {
    const needed = rougher * more * readings.needed * (readings.isEnd(index) ? atEnd : 1);
    tried[index] = righted;
    const itself = Math.max(division, own ? readings.off(tried, index) : 0);
    // Most are settled by the reading itself or its neighbours; all the others are looked at for the few that are not.
    const floor =
      offs[index]! > itself * needed
        ? Math.max(itself, roughnessOf(readings, tried, offs, index, needed))
        : Infinity;
    tried[index] = values[index]!;
    const share = offs[index]! / (floor * needed);
    if (share > 1 && !(best && best.share >= share))
      best = { index, share, ...(times === undefined ? {} : { times }) };
  };
  // A reading off by less than this many divisions is nothing to ask about.
  const least = division * slips[0]!.rougher * readings.needed;
  const open = [...values.keys()].filter((i) => offs[i]! > least && !named.some((one) => one.index === i));
  for (const index of open)
    for (const { times, rougher } of slips) weigh(index, values[index]! / times, true, rougher, times);
  if (best || values.length < leastUnexplained) return best;
  for (const index of open)
    if (!readings.isEnd(index)) weigh(index, readings.expected(values, index), false, unexplained);
  return best;
}

/** Roughness about a place whose value was put right; what it touches is reckoned anew. Past any need where the neighbours alone are too rough. */
function roughnessOf(
  readings: Readings,
  tried: readonly number[],
  offs: readonly number[],
  index: number,
  needed: number,
): number {
  const anew = new Map(readings.touched(index).map((k) => [k, readings.off(tried, k)]));
  const near = readings.near(index);
  const beside = Math.max(0, ...near.map((k) => anew.get(k) ?? offs[k]!));
  if (offs[index]! <= beside * needed) return Infinity;
  return roughness(
    offs.map((off, k) => anew.get(k) ?? off),
    index,
    near,
  );
}
