import type { Cause } from '../../core/estimate/cause.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import { capital } from '../phrase.ts';
import { zonePlace } from './cause-words.ts';

/** One question, answerable by looking at metal, with two answers a thumb can hit. */
export interface CauseQuestion {
  readonly text: string;
  readonly answers: readonly { readonly words: string; readonly answer: 'yes' | 'no' }[];
}

type ByPad = Readonly<Record<string, readonly number[]>>;

const sum = (row: readonly number[]): number => row.reduce((a, b) => a + b, 0);

/** How much more was to come off the minus end of a row than off its plus end, in passes. */
const lean = (row: readonly number[]): number => {
  const half = Math.floor(row.length / 2);
  return sum(row.slice(0, half)) - sum(row.slice(row.length - half));
};

/**
 * The look at the metal that tells a cause from the record.
 *
 * @param scraped  passes ticked off in the round before, by pad and zone
 */
export function causeQuestion(
  cause: Cause,
  plan: Pick<JobPlan, 'places' | 'slide'>,
  scraped: ByPad,
): CauseQuestion {
  const { places } = plan;
  switch (cause.kind) {
    case 'map end for end': {
      const pad = [...plan.slide.pads].sort(
        (a, b) => Math.abs(lean(scraped[b.name] ?? [])) - Math.abs(lean(scraped[a.name] ?? [])),
      )[0]!;
      const minusHeavy = lean(scraped[pad.name] ?? []) > 0;
      return {
        text: `Look at the ${pad.name}. Which end has the most fresh scraping?`,
        answers: [
          { words: capital(places.plus_end), answer: minusHeavy ? 'yes' : 'no' },
          { words: capital(places.minus_end), answer: minusHeavy ? 'no' : 'yes' },
        ],
      };
    }
    case 'flanks swapped': {
      const [a, b] = cause.pads;
      const [rowA, rowB] = [scraped[a] ?? [], scraped[b] ?? []];
      const apart = rowA.map((passes, z) => passes - (rowB[z] ?? 0));
      const zone = apart.reduce((best, d, z) => (Math.abs(d) > Math.abs(apart[best]!) ? z : best), 0);
      const moreOnA = (apart[zone] ?? 0) > 0;
      return {
        text: `Look at ${zonePlace(zone, places)}. Which flank has the more fresh scraping there?`,
        answers: [
          { words: capital(a), answer: moreOnA ? 'no' : 'yes' },
          { words: capital(b), answer: moreOnA ? 'yes' : 'no' },
        ],
      };
    }
    case 'sweep reversed':
      return {
        text: `Set up “${cause.sweep}” again and read two stops. Which way does the number go?`,
        answers: [
          { words: 'The other way', answer: 'yes' },
          { words: 'As written', answer: 'no' },
        ],
      };
    case 'reference moved':
      return {
        text: `Run the indicator along the ${cause.face} as when you set it true. Is it still true?`,
        answers: [
          { words: 'It moved', answer: 'yes' },
          { words: 'Still true', answer: 'no' },
        ],
      };
    case 'zone missed':
      return {
        text: `Look at the ${cause.pad}, ${zonePlace(cause.zone, places)}. Is it freshly scraped?`,
        answers: [
          { words: 'Not scraped', answer: 'yes' },
          { words: 'Scraped', answer: 'no' },
        ],
      };
    case 'pass too many':
      return {
        text: `Look at the strokes on the ${cause.pad}. Was it gone over once more than ticked off?`,
        answers: [
          { words: 'Once more', answer: 'yes' },
          { words: 'As ticked off', answer: 'no' },
        ],
      };
    case 'not as recorded':
      return {
        text: 'Look at the fresh scraping. Does it lie where it was ticked off?',
        answers: [
          { words: 'Elsewhere', answer: 'yes' },
          { words: 'As ticked off', answer: 'no' },
        ],
      };
  }
}
