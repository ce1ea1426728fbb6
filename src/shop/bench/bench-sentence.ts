import type { Setup } from '../../core/ledger/setup.ts';
import { capital, counted, type Phrase } from '../phrase.ts';
import type { FeatureLine } from './feature-line.ts';

/** Half a minute a reading, and as long again to set up: what a round's first set-up takes, in minutes. */
const minutesFor = (readings: number): number => Math.max(2, Math.ceil(readings / 2));

/** The round has no readings: what to do first, how many readings, how long. */
export function emptySentence(first: Setup | undefined): Phrase {
  if (!first) return ['No readings in this round. Enter the print.'];
  const readings = first.kind === 'sweep' ? first.points : 1;
  const what = { sweep: 'sweep', level: 'level', height: 'height' }[first.kind];
  return [
    'No readings in this round. Start with the ',
    { b: what },
    `: ${counted(readings, 'reading')}, about ${minutesFor(readings)} minutes.`,
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
  const size = `${line.said.number} ${line.said.unit}`;
  return line.way === undefined
    ? [`${capital(line.name)} is within its limits. Leave it.`]
    : [`${capital(line.name)} comes out `, { b: line.way }, `, ${size}, as wanted. Leave it.`];
}
