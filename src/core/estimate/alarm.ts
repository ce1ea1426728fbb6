import { chiSquareBeyond } from '../math/chi-square.ts';
import type { Alarm, Cause, CauseFound } from './cause.ts';
import { causeId, causeName } from './cause-name.ts';
import type { Known } from './filter.ts';
import { type Branch, type History, type Reversals, takeRound } from './history.ts';
import { alarmFeature } from './read-with.ts';
import { suspectsOf } from './suspect.ts';

/** What is believed of a round once its causes are weighed. */
export interface Judged {
  readonly known: Known;
  readonly reversed?: Reversals;
  readonly alarm?: Alarm;
  /** What else may be so. */
  readonly branches: readonly Branch[];
}

/** Chance below which a round is beyond chance, whatever the causes say. Prints have longer tails than the normal: below 0.001 was too often. */
const beyondChance = 0.0003;
/** A cause is spoken of when it beats the record by this, its rarity counted: five to three. */
const clearly = 0.5;
/** Causes that at a guess fall short of the record by more than this are not tried in full. */
const notWorth = -4;
/** Causes are listed, and kept in mind, down to this below the best; so many at most are kept in mind. */
const kept = { below: 7, count: 8 };
/** A cause too faint to speak of is kept in mind for this many rounds; one that was spoken of until the rounds settle it. */
const faintRounds = 3;

/**
 * Weighs the causes that could be behind a round against the record.
 *
 * Speaks when the best cause beats the record clearly, or when readings and print together are beyond chance; then it goes on
 * with the best cause, so that one mistake does not spoil all that follows. What did not win is kept in
 * mind: a cause too faint to speak of may be borne out by the next print, and a wrong belief be given up again. A cause that
 * the round rules out was looked for at the bench and is not weighed again.
 */
export function judged(history: History, k: number, recorded: Known): Judged {
  const { readings, print } = recorded.evidence;
  const degrees = readings.degrees + print.degrees;
  const chance = degrees > 0 ? chiSquareBeyond(readings.square + print.square, degrees) : 1;
  const denied = new Set(history.input.rounds[k]!.ruled_out);
  const astray = chance < beyondChance;

  const branches = [
    ...history.branches.map((branch) => carried(history, k, branch, recorded)),
    ...suspectsOf(history, k, recorded)
      .filter(({ guess, logPrior }) => astray || guess + logPrior > notWorth)
      .map(({ cause, round, logPrior, tried }): Branch => {
        const { known, logRatio, reversed } = tried();
        const logOdds = logRatio + logPrior;
        return { cause, round, since: k, known, logOdds, ...(reversed ? { reversed } : {}) };
      }),
  ]
    .filter(({ cause, round }) => !(cause && denied.has(causeId({ cause, round }))))
    .sort((a, b) => b.logOdds - a.logOdds);

  const best = branches[0];
  const record: Branch = { round: k, since: k, known: recorded, logOdds: 0 };
  // The record itself needs no more than to be likelier again than what was believed in its place.
  const clear = best !== undefined && best.logOdds > (best.cause ? clearly : 0);
  if (!clear && !astray) return { known: recorded, branches: inMind(k, record, branches) };
  // The record may itself be what bears out again, against a cause believed too soon: then nothing needs to be said.
  const withdrawn = clear && best.cause === undefined;
  // Every named cause denied or too faint, and still beyond chance: the record stands, for nothing better is known.
  const winner = best && best.logOdds > 0 ? best : record;
  const others = [record, ...branches].filter((branch) => branch !== winner);
  return {
    ...believed(winner),
    branches: inMind(k, winner, others).map((branch) => ({ ...branch, spoken: true as const })),
    ...(withdrawn ? {} : { alarm: alarmOf(history, k, recorded, chance, branches) }),
  };
}

const believed = ({ known, reversed }: Branch) => ({ known, ...(reversed ? { reversed } : {}) });

/** A branch carried through round k as recorded. */
function carried(history: History, k: number, branch: Branch, recorded: Known): Branch {
  const scale = history.known[k - 1]!.state;
  const known = takeRound(history, k, branch.known, branch.reversed?.get(k), { scale });
  const logOdds = branch.logOdds + known.evidence.logLikelihood - recorded.evidence.logLikelihood;
  return { ...branch, known, logOdds };
}

/** What is kept in mind beside the winner, weighed against it. */
const inMind = (k: number, winner: Branch, others: readonly Branch[]): Branch[] =>
  others
    .map((branch) => ({ ...branch, logOdds: branch.logOdds - winner.logOdds }))
    .filter((branch) => branch.logOdds > -kept.below && (branch.spoken || k - branch.since < faintRounds))
    .sort((a, b) => b.logOdds - a.logOdds)
    .slice(0, kept.count);

function alarmOf(
  history: History,
  k: number,
  recorded: Known,
  chance: number,
  branches: readonly Branch[],
): Alarm {
  const feature = alarmFeature(history, k, recorded);
  const named = branches.flatMap((branch) => (branch.cause ? [{ ...branch, cause: branch.cause }] : []));
  const once = named.filter(
    (one, i) => named.findIndex((other) => causeName(other.cause) === causeName(one.cause)) === i,
  );
  const best = once[0]?.logOdds ?? 0;
  const causes = once
    .filter((one) => one.logOdds > best - kept.below)
    .map(({ cause, round, logOdds, known }): CauseFound => {
      const would_read = feature.wouldRead(cause, round, known);
      return {
        cause: inRound(cause, round, k),
        log_odds: logOdds,
        ...(round === k ? {} : { round }),
        ...(would_read ? { would_read } : {}),
      };
    });
  const { name, before, asked, found } = feature;
  return { round: k, feature: name, before, asked, found, chance, causes };
}

/** A sweep read backwards in a round before the alarm's says so. */
const inRound = (cause: Cause, round: number, k: number): Cause =>
  cause.kind === 'sweep reversed' && cause.rounds === undefined && round !== k
    ? { ...cause, rounds: [round] }
    : cause;
