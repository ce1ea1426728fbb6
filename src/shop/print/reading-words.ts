import type { PlaceWords } from '../../core/ledger/setup.ts';
import { fullCover } from '../../core/print/cover.ts';
import type { PrintReading } from '../../core/print/reading.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted, type Phrase, percent } from '../phrase.ts';

/** Side of the squares that are counted in, by the units in use, mm. */
export const squareSide_mm = (units: UnitSystem): 25 | 25.4 => (units === 'metric' ? 25 : 25.4);

/** "a 25 mm square", "a square inch". */
export const squareWords = (units: UnitSystem): string =>
  units === 'metric' ? 'a 25\u00a0mm square' : 'a square inch';

/** Spots a square of the units in use; the reading's density is for 25 mm. */
export const spotsPerSquare = (density_per_25mm: number, units: UnitSystem): number =>
  density_per_25mm * (squareSide_mm(units) / 25) ** 2;

/** A length on the surface, "14 mm" or "0.55 in". */
export const lengthWords = (mm: number, units: UnitSystem): string =>
  units === 'metric' ? `${Math.round(mm)}\u00a0mm` : `${(mm / 25.4).toFixed(2)}\u00a0in`;

/** "31 %", with a decimal below 3. */
export const pct = (value: number): string => `${value.toFixed(value < 2.95 ? 1 : 0)}\u00a0%`;

/** A rise over the whole surface that is worth a word: 5 points and three tenths of what bears. Common practice, no source. */
const isTrend = (points: number, bearing_pct: number): boolean =>
  Math.abs(points) > Math.max(5, 0.3 * bearing_pct);

type Read = Pick<PrintReading, 'bearing_pct' | 'density_per_25mm' | 'evenness'>;

/** Where the blue is richest, or that it is even. */
function richest({ bearing_pct, evenness }: Read, places: PlaceWords): string {
  const end =
    isTrend(evenness.along_pct, bearing_pct) && (evenness.along_pct > 0 ? places.plus_end : places.minus_end);
  const side =
    isTrend(evenness.across_pct, bearing_pct) &&
    (evenness.across_pct > 0 ? places.plus_side : places.minus_side);
  if (end && side) return `Richest at the ${end}, toward the ${bare(side)}.`;
  if (end) return `Richest at the ${end}.`;
  if (side) return `Even from end to end, richest toward the ${bare(side)}.`;
  return 'Even from end to end.';
}

/** "the back of the machine" and "operator's side" both stand after "the". */
const bare = (side: string): string => side.replace(/^the /, '');

/** What the print says, in a line: bears on how much, how many spots, where most. */
export function readingSentence(reading: Read, places: PlaceWords, units: UnitSystem): Phrase {
  if (reading.bearing_pct < 0.05) return ['It bears ', { b: 'nowhere' }, '. No blue is seen on it.'];
  const spots = Math.round(spotsPerSquare(reading.density_per_25mm, units));
  return [
    'Bears on ',
    { b: pct(reading.bearing_pct) },
    '. ',
    { b: counted(spots, 'spot') },
    ` ${squareWords(units)}. `,
    richest(reading, places),
  ];
}

/** How evenly it bears, a sentence a line. Spread is held against chance by the chi-square of the counts, two sd. */
export function evennessWords(
  reading: Pick<PrintReading, 'bearing_pct' | 'cells' | 'evenness'>,
  places: PlaceWords,
  units: UnitSystem,
): string[] {
  const { evenness, bearing_pct } = reading;
  const whole = reading.cells.filter((cell) => !cell.partial && cell.unreadable_pct <= 5).length;
  return [
    spreadWords(evenness.dispersion, whole),
    whole === 0
      ? ''
      : evenness.empty_squares === 0
        ? 'No whole square is bare.'
        : `${counted(evenness.empty_squares, 'whole square')} of ${whole} ${evenness.empty_squares === 1 ? 'is' : 'are'} bare.`,
    `Longest bare run along it: ${lengthWords(evenness.longest_bare_mm, units)}.`,
    trendWords(evenness.along_pct, bearing_pct, places.minus_end, places.plus_end, 'end to end'),
    trendWords(evenness.across_pct, bearing_pct, places.minus_side, places.plus_side, 'edge to edge'),
  ].filter((line) => line !== '');
}

function spreadWords(dispersion: number | undefined, whole: number): string {
  if (dispersion === undefined || whole < 3)
    return 'Too few whole squares to tell how evenly the spots stand.';
  const chance = 2 * Math.sqrt(2 / (whole - 1));
  if (dispersion < 1 - chance) return 'The spots stand more evenly than chance would throw them.';
  if (dispersion > 1 + chance) return 'The spots stand in clumps: some squares have many, others few.';
  return 'The spots stand as chance would throw them.';
}

const trendWords = (points: number, bearing_pct: number, minus: string, plus: string, run: string): string =>
  isTrend(points, bearing_pct)
    ? `${Math.round(Math.abs(points))} points more at the ${bare(points > 0 ? plus : minus)} than at the ${bare(points > 0 ? minus : plus)}.`
    : `Even from ${run}.`;

/** Why a zone bears more than it is blue. */
export const coverNote = `A scraped face that bears all over shows ${percent(fullCover)} blue: metal stays bare between its spots. The plan counts each zone against that.`;

/** A figure and its doubt, two sd, whole; to one decimal below 3, as `pct`: "28" and "1", "2.4" and "0.3". No doubt is said to be nothing. */
export function withDoubt(value: number, sd: number): { readonly value: string; readonly doubt: string } {
  const decimals = value < 2.95 ? 1 : 0;
  return { value: value.toFixed(decimals), doubt: Math.max(2 * sd, decimals ? 0.1 : 1).toFixed(decimals) };
}
