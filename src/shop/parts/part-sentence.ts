import type { Faced } from '../../core/parts/faced.ts';
import type { Doubted } from '../../core/parts/spindle.ts';
import type { Turned } from '../../core/parts/turned.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Phrase } from '../phrase.ts';

/** Less than this is nothing in any shop, µm, where no doubt says so. */
const nothing_um = 0.05;

/** Whether a value is lost in its doubt. */
export const isLost = ({ value, sd }: Required<Doubted>): boolean =>
  Math.abs(value) <= Math.max(2 * sd, nothing_um);

/** A value with its sign and, where one is known, its doubt. */
export const signedText = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  sayDeviation(value, system, { sd }).text;

/** A size for the middle of a sentence. */
const sizeText = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  sayDeviation(Math.abs(value), system, { sd, signed: false }).text;

/** What a face comes out as, in one word. */
export const faceWord = (concave_um: Required<Doubted>): 'flat' | 'concave' | 'convex' =>
  isLost(concave_um) ? 'flat' : concave_um.value > 0 ? 'concave' : 'convex';

/** "Faces come out convex now: at the centre they stand proud of the rim by 5.1 ± 1.4 µm. As planned they come out concave, by 4 ± 3 µm." */
export function facesSentence(
  now: Pick<Faced, 'concave_um'>,
  planned: Pick<Faced, 'concave_um'> | undefined,
  rim_mm: number,
  system: UnitSystem,
): Phrase {
  const word = faceWord(now.concave_um);
  const over = sayLength(rim_mm, system).text;
  const first: Phrase =
    word === 'flat'
      ? ['Faces come out ', { b: 'flat' }, ` now, as far as can be told over ${over} from rim to centre.`]
      : [
          'Faces come out ',
          { b: word },
          ` now: ${sizeText(now.concave_um, system)} over ${over} from rim to centre.`,
        ];
  if (!planned) return first;
  const then = faceWord(planned.concave_um);
  return [
    ...first,
    then === 'flat' ? ' The plan brings them ' : ' The plan makes them ',
    { b: then },
    then === 'flat' ? ' as far as can be told.' : `, ${sizeText(planned.concave_um, system)}.`,
  ];
}

/** Height's share of the whole worth a word. */
const wordsFrom = 0.1;

/** "Over 300 mm the diameter grows 6 ± 2 µm toward the tailstock, with a hollow of 2 µm in its middle." */
export function turnedSentence(made: Turned, system: UnitSystem): Phrase {
  const { taper_um, bow_um, places_mm } = made;
  const over = sayLength(places_mm.at(-1)! - places_mm[0]!, system).text;
  const taper: Phrase = isLost(taper_um)
    ? ['the diameter ', { b: 'stays the same' }, ' as far as can be told']
    : [
        'the diameter ',
        { b: taper_um.value > 0 ? 'grows' : 'shrinks' },
        ` ${sizeText(taper_um, system)} toward the tailstock`,
      ];
  const bow: Phrase = isLost(bow_um)
    ? []
    : [
        ', with a ',
        { b: bow_um.value > 0 ? 'barrel' : 'hollow' },
        ` of ${sizeText(bow_um, system)} in its middle`,
      ];
  return [`Over ${over} `, ...taper, ...bow, '.'];
}

/** How much the tool's rising and falling adds, where that is worth a word. */
export function heightSentence(made: Turned, radius_mm: number, system: UnitSystem): string | undefined {
  const whole_um = Math.max(...made.diameter_um) - Math.min(...made.diameter_um);
  const { from_height_um } = made;
  if (Math.abs(from_height_um) <= Math.max(nothing_um, wordsFrom * whole_um)) return undefined;
  return `${sayDeviation(from_height_um, system, { decimals: system === 'metric' ? 1 : 2 }).text} of the largest difference comes from the tool’s rising and falling on a diameter of ${sayLength(2 * radius_mm, system).text}.`;
}
