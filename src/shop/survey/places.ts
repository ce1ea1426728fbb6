import type { PlaceWords } from '../../core/ledger/setup.ts';

/**
 * Words of a survey with the job's own names for its ends and sides: they are written as for a lathe's bed.
 *
 *     headstock end → minus end,   tailstock → plus end,   the back → plus side,   to you → minus side
 */
export function inPlaces(words: string, places: PlaceWords): string {
  const { minus_end, plus_end, minus_side, plus_side } = places;
  if (minus_end === 'headstock end' && plus_end === 'tailstock end') return words;
  const isBack = /^back\b/.test(plus_side);
  const isOperator = /^operator/.test(minus_side);
  const named = words.replaceAll('headstock end', minus_end).replace(/\btailstock( end)?/g, plus_end);
  const sided = isBack
    ? named
    : named.replace(/\bthe back\b|\bback(?= (high|low|rises|falls)\b)/g, `the ${plus_side}`);
  return isOperator ? sided : sided.replace(/\bto you\b/g, `to the ${minus_side}`);
}
