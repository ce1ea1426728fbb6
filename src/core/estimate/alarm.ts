import { chiSquareBeyond } from '../math/chi-square.ts';
import type { Alarm, Cause, CauseFound } from './cause.ts';
import type { Known } from './filter.ts';
import type { History } from './history.ts';
import { alarmFeature } from './read-with.ts';
import { type Suspect, suspectsOf, type Trial } from './suspect.ts';

/** An answer from the bench to the question whether a cause was so. Rounds count from 0. */
export interface SettledCause {
  readonly round: number;
  readonly cause: Cause;
  readonly answer: 'yes' | 'no';
}

/** What is believed of a round once its causes are weighed. */
export interface Judged {
  readonly known: Known;
  readonly reversed?: Trial['reversed'];
  readonly alarm?: Alarm;
}

/** Chance below which a round is beyond chance, whatever the causes say. */
const beyondChance = 0.001;
/** A cause is spoken of when it beats the record by this, its rarity counted: e² to one. */
const clearly = 2;
/** Causes that at a guess fall short of the record by more than this are not tried in full. */
const notWorth = -2;
/** Causes are listed down to this below the best. */
const listed = 7;

/**
 * Weighs the causes that could be behind a round against the record.
 *
 * Speaks when the best cause beats the record clearly, or when readings and print together are beyond chance; then it goes on
 * with the best cause, so that one mistake does not spoil all that follows.
 */
export function judged(
  history: History,
  k: number,
  recorded: Known,
  settled: readonly SettledCause[],
): Judged {
  const { readings, print } = recorded.evidence;
  const degrees = readings.degrees + print.degrees;
  const chance = degrees > 0 ? chiSquareBeyond(readings.square + print.square, degrees) : 1;
  const answers = settled.filter((one) => one.round === k);
  const answerTo = (cause: Cause) => answers.find((one) => sameCause(one.cause, cause))?.answer;
  const suspects = suspectsOf(history, k, recorded);
  const sure = suspects.find((one) => answerTo(one.cause) === 'yes');
  if (sure) return believed(sure.tried());

  const astray = chance < beyondChance;
  const tried = suspects
    .filter((one) => answerTo(one.cause) !== 'no' && (astray || one.guess + one.logPrior > notWorth))
    .map((one) => ({ ...one, trial: one.tried() }))
    .map((one) => ({ ...one, log_odds: one.trial.logRatio + one.logPrior }))
    .sort((a, b) => b.log_odds - a.log_odds);
  const best = tried[0];
  const clear = best !== undefined && best.log_odds > clearly;
  if (!clear && !astray) return { known: recorded };
  const alarm = alarmOf(history, k, recorded, chance, tried);
  // Every named cause denied and still beyond chance: the record stands, for nothing better is known.
  const after = best && best.log_odds > 0 ? believed(best.trial) : { known: recorded };
  return { ...after, alarm };
}

const believed = ({ known, reversed }: Trial): Judged => ({ known, ...(reversed ? { reversed } : {}) });

function alarmOf(
  history: History,
  k: number,
  recorded: Known,
  chance: number,
  tried: readonly (Suspect & { readonly trial: Trial; readonly log_odds: number })[],
): Alarm {
  const feature = alarmFeature(history, k, recorded);
  const once = tried.filter(
    (one, i) => tried.findIndex((other) => nameOf(other.cause) === nameOf(one.cause)) === i,
  );
  const best = once[0]?.log_odds ?? 0;
  const causes = once
    .filter((one) => one.log_odds > best - listed)
    .map(({ cause, log_odds, trial }): CauseFound => {
      const would_read = feature.wouldRead(cause, trial.known);
      return { cause, log_odds, ...(would_read ? { would_read } : {}) };
    });
  return {
    round: k,
    feature: feature.name,
    before: feature.before,
    asked: feature.asked,
    found: feature.found,
    chance,
    causes,
  };
}

/** The same mistake in another round has the same name: it is one question at the metal. */
const nameOf = (cause: Cause): string => JSON.stringify({ ...cause, rounds: undefined });

/** Whether an answer is about this cause; an answer that names no rounds is about the alarm's own. */
function sameCause(answered: Cause, cause: Cause): boolean {
  const rounds = (one: Cause) => JSON.stringify('rounds' in one ? (one.rounds ?? null) : null);
  return nameOf(answered) === nameOf(cause) && rounds(answered) === rounds(cause);
}
