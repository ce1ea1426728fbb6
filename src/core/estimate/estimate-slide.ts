import { poseSize } from '../body/displacement.ts';
import { isHeld, settling } from '../body/settle.ts';
import { isDetermined, symmetricParts } from '../math/symmetric.ts';
import type { SteerInput } from '../observe/round.ts';
import { judged } from './alarm.ts';
import { type History, historyOf, takeRound, takingOf } from './history.ts';
import { slideModel } from './model.ts';
import { poseOfRound } from './pose.ts';
import { featuresRead, featuresSettled, roundEstimate, type WhyUnseen } from './round-estimate.ts';
import type { OtherwiseEstimate, RoundEstimate, SlideEstimate } from './slide-estimate.ts';

/**
 * Where a slide is and how sure that is, from all its rounds: readings, prints and what was scraped, as linear observations
 * of one state, the zone heights with the removal of a pass.
 *
 * The first round's features are those of least squares with nothing believed beforehand; later ones are the settled pose of
 * the state, J h, at rest on clean ways. From the second round on each round is weighed against the mistakes that are
 * made; an alarm goes on with the likeliest.
 * @throws RangeError  no rounds
 */
export function estimateSlide(input: SteerInput): SlideEstimate {
  const model = slideModel(input);
  const held = settling(input.slide);
  const history = historyOf(model, input);
  const rounds: RoundEstimate[] = [];
  const seen = Array.from({ length: poseSize }, () => Array<number>(poseSize).fill(0));
  let whyLast: WhyUnseen = () => 'not read';
  input.rounds.forEach((round, k) => {
    // A sweep's sign changes what it says, not how well it sees.
    addInformation(seen, takingOf(history, k, history.reversed[k]!).readings.information);
    const unread = symmetricParts(seen).free;
    const why: WhyUnseen = (row) => {
      if (!isHeld(held, row)) return 'not held';
      return isDetermined(row, unread) ? undefined : 'not read';
    };
    whyLast = why;
    const recorded = takeRound(history, k, history.known[k - 1]);
    if (k === 0) {
      history.known.push(recorded);
      rounds.push(roundEstimate(model, recorded, k, featuresRead(model, poseOfRound(round), why)));
      return;
    }
    const { known, reversed, alarm, branches } = judged(history, k, recorded);
    for (const [r, names] of reversed ?? []) history.reversed[r] = new Set(names);
    // A plunger that faced the other way in every round so far will go on doing so.
    if (reversed && reversed.size === k + 1)
      for (let r = k + 1; r < input.rounds.length; r++) history.reversed[r] = new Set(history.reversed[k]);
    history.known.push(known);
    history.branches = branches;
    const estimate = roundEstimate(model, known, k, featuresSettled(model, known, why));
    rounds.push(alarm ? { ...estimate, alarm } : estimate);
  });
  const last = rounds.at(-1);
  if (!last) throw new RangeError('no rounds; expected at least one');
  return {
    ...last,
    rounds,
    otherwise: otherBeliefs(history, whyLast),
    sweeps: history.fits.at(-1)!,
    model,
    known: history.known.at(-1)!,
  };
}

/** What an alarm left in doubt, as features with their chances. */
function otherBeliefs({ model, ...history }: History, why: WhyUnseen): OtherwiseEstimate[] {
  // What was never worth speaking of does not hold up a verdict.
  const branches = history.branches.filter((branch) => branch.spoken);
  const odds = branches.map((branch) => Math.exp(branch.logOdds));
  const all = odds.reduce((sum, one) => sum + one, 1);
  return branches.map(({ cause, known }, i) => ({
    ...(cause ? { cause } : {}),
    chance: odds[i]! / all,
    ...featuresSettled(model, known, why),
  }));
}

function addInformation(sum: number[][], information: readonly (readonly number[])[]): void {
  for (let i = 0; i < poseSize; i++) for (let j = 0; j < poseSize; j++) sum[i]![j]! += information[i]![j]!;
}
