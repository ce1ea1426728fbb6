import { poseSize } from '../body/displacement.ts';
import { isHeld, settling } from '../body/settle.ts';
import { isDetermined, symmetricParts } from '../math/symmetric.ts';
import type { SteerInput } from '../observe/round.ts';
import { printShares } from './bearing.ts';
import { firstRound, type Known, nextRound } from './filter.ts';
import { slideModel } from './model.ts';
import { poseOfRound } from './pose.ts';
import { type RoundReadings, roundReadings } from './readings.ts';
import { featuresRead, featuresSettled, roundEstimate, type WhyUnseen } from './round-estimate.ts';
import { recordedPasses } from './scraping.ts';
import type { RoundEstimate, SlideEstimate } from './slide-estimate.ts';
import { fitSweep, type SweepFit } from './sweep-fit.ts';

/**
 * Where a slide is and how sure that is, from all its rounds: readings, prints and what was scraped, as linear observations
 * of one state, the zone heights with the removal of a pass.
 *
 * The first round's features are those of least squares with nothing believed beforehand; later ones are the settled pose of
 * the state, J h, at rest on clean ways.
 */
export function estimateSlide(input: SteerInput): SlideEstimate {
  const model = slideModel(input);
  const held = settling(input.slide);
  const rounds: RoundEstimate[] = [];
  const read: RoundReadings[] = [];
  let known: Known | undefined;
  let fits: readonly SweepFit[] = [];
  input.rounds.forEach((round, k) => {
    fits = round.sweeps.map(fitSweep);
    const readings = roundReadings(round, fits, model.layout.faces);
    read.push(readings);
    const unread = unreadDirections(read);
    const why: WhyUnseen = (row) => {
      if (!isHeld(held, row as never)) return 'not held';
      return isDetermined(row, unread) ? undefined : 'not read';
    };
    const taking = { readings, print: printShares(model, round.print) };
    if (!known) {
      known = firstRound(model, taking);
      rounds.push(roundEstimate(model, known, k, featuresRead(model, poseOfRound(round), why)));
      return;
    }
    const scraped = input.rounds[k - 1]!.scraped;
    const made = scraped && recordedPasses(model, scraped, known.shares);
    known = nextRound(model, known, made, taking);
    rounds.push(roundEstimate(model, known, k, featuresSettled(model, known, why)));
  });
  if (!known) throw new RangeError('no rounds; expected at least one');
  return { ...rounds.at(-1)!, rounds, sweeps: fits, model, known };
}

/** Pose directions that no reading of any round so far has seen. */
function unreadDirections(read: readonly RoundReadings[]): number[][] {
  const sum = Array.from({ length: poseSize }, (_, i) =>
    Array.from({ length: poseSize }, (_, j) =>
      read.reduce((total, { information }) => total + information[i]![j]!, 0),
    ),
  );
  return symmetricParts(sum).free;
}
