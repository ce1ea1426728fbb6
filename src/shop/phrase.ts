/** A sentence in parts; the parts in `b` are its key words, set bold on a screen and plain on the command line. */
export type Phrase = readonly (string | { readonly b: string })[];

/** The phrase as plain text. */
export const phraseText = (phrase: Phrase): string =>
  phrase.map((part) => (typeof part === 'string' ? part : part.b)).join('');

/** First letter large, as a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A text's first sentence, and what follows it. */
export function firstSentence(words: string): readonly [first: string, rest: string] {
  const end = words.search(/\.\s/);
  return end < 0 ? [words, ''] : [words.slice(0, end + 1), words.slice(end + 1).trim()];
}

/** "1 zone", "16 zones". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** A share of area, 0 to 1, as it is read on a zone: "61 %". */
export const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

/** "a", "a and b", "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
