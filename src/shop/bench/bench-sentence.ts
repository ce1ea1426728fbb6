import type { Setup } from '../../core/ledger/setup.ts';
import { capital, counted, type Phrase } from '../phrase.ts';
import type { FeatureLine } from './feature-line.ts';

/** Half a minute a reading, and as long again to set up: what a round's first set-up takes, in minutes. */
const minutesFor = (readings: number): number => Math.max(2, Math.ceil(readings / 2));

/**
 * The round has no answer yet: what to do next, how many readings, how long.
 * @param next   the set-up to do next
 * @param taken  names of the set-ups that have readings already
 */
export function measuringSentence(next: Setup | undefined, taken: readonly string[]): Phrase {
  const start = taken.length === 0 ? 'No readings in this round.' : `${capital(taken.join(', '))}: kept.`;
  if (!next) return [`${start} Enter the print.`];
  const readings = next.kind === 'sweep' ? next.points : 1;
  const what = taken.length === 0 ? next.kind : next.name;
  return [
    `${start} ${taken.length === 0 ? 'Start with the' : 'Next:'} `,
    { b: what },
    `, ${counted(readings, 'reading')}, about ${minutesFor(readings)} minutes.`,
  ];
}

/** "Facing comes out convex. At the back the cross ways lean to the tailstock." */
export function offSentence(line: FeatureLine): Phrase {
  const { way, said, scale, name } = line;
  if (way === undefined) return [`${capital(name)} is `, { b: said.text }, '.'];
  const place = said.sign === '−' ? scale.words?.minus_sentence : scale.words?.plus_sentence;
  const start: Phrase = [`${capital(name)} comes out `, { b: way }, '.'];
  return place ? [...start, ` ${place}`] : start;
}

/** Alignment in, bearing not. */
export const spotSentence: Phrase = [
  'Alignment is proven. ',
  { b: 'Bearing is thin' },
  ': scrape only the blue.',
];

/** Stop is reward enough. */
export function stopSentence(line: FeatureLine): Phrase {
  const size = `${line.said.number}\u00a0${line.said.unit}`;
  return line.way === undefined
    ? [`${capital(line.name)} is within its limits. Leave it.`]
    : [`${capital(line.name)} comes out `, { b: line.way }, `, ${size}, as wanted. Leave it.`];
}
