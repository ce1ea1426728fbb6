import type { SteerInput } from '../observe/round.ts';
import { carriedSettling, printShares } from './bearing.ts';
import type { Cause } from './cause.ts';
import { firstRound, isWhole, type Known, nextRound, type Otherwise, type Taking } from './filter.ts';
import type { SlideModel } from './model.ts';
import { roundReadings } from './readings.ts';
import { type Made, recordedPasses } from './scraping.ts';
import { fitSweep, type SweepFit } from './sweep-fit.ts';

/** The rounds of a job with what is needed to take them, again and otherwise than recorded if need be. */
export interface History {
  readonly model: SlideModel;
  readonly input: SteerInput;
  /** Each round's sweeps looked at by themselves. */
  readonly fits: readonly (readonly SweepFit[])[];
  /** What was known after each round so far, the likeliest cause of each alarm believed. */
  readonly known: Known[];
  /** Sweeps believed to have been entered with the wrong sign, by round. */
  readonly reversed: Set<string>[];
  /** What each round brings, by the sweeps turned back in it: the same for every belief that takes it. */
  readonly takings: readonly Map<string, Taking>[];
  /**
   * What each round came to with nothing otherwise than recorded but signs, by what was known before: the trials of a round go
   * over those of the last one again.
   */
  readonly taken: WeakMap<Taking, Map<Known | undefined, Known>>;
  /** What else may be so, after the round last taken: other beliefs that the coming rounds may yet bear out. */
  branches: readonly Branch[];
}

/** Another belief about the rounds so far than the one gone on with. */
export interface Branch {
  /** Absent: all as recorded. */
  readonly cause?: Cause;
  readonly round: number;
  /** The round in which it came up. */
  readonly since: number;
  /** It stood beside an alarm: it is kept until the rounds settle it. */
  readonly spoken?: true;
  readonly known: Known;
  /** ln of how much likelier it is than what is gone on with, its rarity counted. */
  readonly logOdds: number;
  readonly reversed?: Reversals;
}

/** Sweeps turned back, by round. */
export type Reversals = ReadonlyMap<number, ReadonlySet<string>>;

export const historyOf = (model: SlideModel, input: SteerInput): History => ({
  model,
  input,
  fits: input.rounds.map((round) => round.sweeps.map(fitSweep)),
  known: [],
  reversed: input.rounds.map(() => new Set()),
  takings: input.rounds.map(() => new Map()),
  taken: new WeakMap(),
  branches: [],
});

/** What round k brings, the named sweeps turned back. Gathered once: every belief about the round takes the same. */
export function takingOf(history: History, k: number, reversed: ReadonlySet<string>): Taking {
  const key = JSON.stringify([...reversed].sort());
  const known = history.takings[k]!.get(key);
  if (known) return known;
  const { model, input, fits } = history;
  const round = input.rounds[k]!;
  const print = printShares(model, round.print);
  const taking: Taking = {
    readings: roundReadings(round, fits[k]!, model.layout.faces, reversed),
    print,
    ...(isWhole(print) ? { settled: carriedSettling(model, print) } : {}),
  };
  history.takings[k]!.set(key, taking);
  return taking;
}

/** What the record says was made between round k − 1 and round k. */
export function madeBefore(history: History, k: number): Made | undefined {
  const scraped = history.input.rounds[k - 1]?.scraped;
  return scraped && recordedPasses(history.model, scraped, history.known[k - 1]!.shares);
}

/** Takes round k. @param before  what was known after the round before; absent for the first */
export function takeRound(
  history: History,
  k: number,
  before: Known | undefined,
  reversed: ReadonlySet<string> = history.reversed[k]!,
  otherwise: Otherwise = {},
): Known {
  const taking = takingOf(history, k, reversed);
  if (!before) return once(history, taking, before, () => firstRound(history.model, taking));
  const next = () => nextRound(history.model, before, madeBefore(history, k), taking, otherwise);
  const { made, faceMoved, scale = before.state } = otherwise;
  const signsOnly = !made && !faceMoved && scale === history.known[k - 1]!.state;
  return signsOnly ? once(history, taking, before, next) : next();
}

function once({ taken }: History, taking: Taking, before: Known | undefined, take: () => Known): Known {
  const cameTo = taken.get(taking) ?? new Map<Known | undefined, Known>();
  taken.set(taking, cameTo);
  const known = cameTo.get(before) ?? take();
  cameTo.set(before, known);
  return known;
}
