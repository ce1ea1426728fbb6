import type { Alarm } from '../../core/estimate/cause.ts';
import { causeId } from '../../core/estimate/cause-name.ts';
import type { RoundRecord } from '../../core/ledger/round-record.ts';
import type { Said } from '../../core/quantity/say.ts';
import { type PlacedCause, placedCauses } from './cause-words.ts';
import type { FeatureScale } from './feature-scale.ts';

/** Where the questions of an alarm have come to. */
export interface AlarmState {
  /** The cause to ask about next: the likeliest that was not answered yet. */
  readonly ask?: PlacedCause;
  /** Nothing is left to ask, or an answer settled it. */
  readonly settled: boolean;
}

/** Causes asked about at most: beyond these, the odds are too long to send a person looking. */
const asked = 4;

/**
 * A yes settles an alarm; a no leads to the next cause; "cannot tell" leads on too, and when all were asked the tool goes
 * on with what is likeliest.
 */
export function alarmState(alarm: Alarm, answered: RoundRecord['causes']): AlarmState {
  if (answered.some((one) => one.answer === 'yes')) return { settled: true };
  const known = new Set(answered.map((one) => one.cause));
  // What was answered no is weighed no more and left the list; "cannot tell" stays on it.
  const ask = known.size < asked ? placedCauses(alarm).find((one) => !known.has(causeId(one))) : undefined;
  return ask ? { ask, settled: false } : { settled: true };
}

/** How far the plan was to move the feature, rounded as its forecast's doubt has it. */
export const askedFor = (alarm: Alarm, say: FeatureScale['say']): Said =>
  say(alarm.asked.value - alarm.before.value, { sd: alarm.asked.sd });

/** How far it did move, with the doubt of both rounds' readings. */
export const movedBy = (alarm: Alarm, say: FeatureScale['say']): Said =>
  say(alarm.found.value - alarm.before.value, { sd: Math.hypot(alarm.before.sd, alarm.found.sd) });
