/** A sentence in parts; the parts in `b` are its key words, set bold on a screen and plain on the command line. */
export type Phrase = readonly (string | { readonly b: string })[];

/** The phrase as plain text. */
export const phraseText = (phrase: Phrase): string =>
  phrase.map((part) => (typeof part === 'string' ? part : part.b)).join('');

/** First letter large, as a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "1 zone", "16 zones". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/**
 * A chance in words a person bets with: "8 chances in 10". Near certainty is told in 100 or 1000; "never" and "always"
 * are not said of anything under 999 in 1000.
 */
export function chanceWords(chance: number): string {
  if (chance > 0.999) return 'as good as sure';
  if (chance < 0.001) return 'as good as none';
  if (chance > 0.99) return `${Math.min(999, Math.round(chance * 1000))} chances in 1000`;
  if (chance > 0.95 || chance < 0.05)
    return `${counted(Math.max(1, Math.min(99, Math.round(chance * 100))), 'chance')} in 100`;
  return `${counted(Math.max(1, Math.min(9, Math.round(chance * 10))), 'chance')} in 10`;
}
