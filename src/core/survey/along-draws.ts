import { seededRandom } from '../math/random.ts';
import { type AlongInput, surveyAlong } from './along.ts';
import { type Draws, summed } from './monte-carlo.ts';

/**
 * Range, ends and slope for each metre when every reading is drawn anew about what was surveyed (JCGM 101, from memory). Noise only widens a
 * range: where several stations vie for highest or lowest its mean lies above the one surveyed.
 *
 * @returns undefined when nothing is known of the doubt
 */
export function alongMonteCarlo(input: AlongInput, { draws, seed }: Draws) {
  const { sd, change } = surveyAlong(input);
  if (!sd) return undefined;
  const random = seededRandom(seed);
  const found = Array.from({ length: draws }, () => {
    const drawn = change.map((value) => value + sd.each * random.normal());
    // The mean of all runs is drawn as one run, so that its form is fitted as the survey's own.
    return surveyAlong({ kind: 'parallel', stations_mm: input.stations_mm, heights_um: drawn });
  });
  return {
    range: summed(found.map((one) => one.range)),
    ends: summed(found.map((one) => one.ends)),
    per_m: summed(found.map((one) => one.per_m)),
  };
}
