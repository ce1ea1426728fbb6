/** A piece of what was typed. */
export interface Token {
  readonly kind: 'number' | 'word' | 'mark';
  /** As typed, for showing. */
  readonly text: string;
  /** Lower case, for comparing. */
  readonly word: string;
  /** Where it begins in the tidied text. */
  readonly start: number;
}

const halves: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for what keyboards, phones and papers write in many: minus signs, µ, quotes, fractions, spaces. */
export function tidy(typed: string): string {
  return typed
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (c) => ` ${halves[c]}`)
    .replace(/[″“”„]|''/g, '"')
    .replace(/[′‘’]/g, "'")
    .normalize('NFKC')
    .replace(/[\u200b-\u200d\u2060\ufeff]/g, '')
    .replace(/[\u2010-\u2015\u2212\ufe63]/g, '-')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[µμ]/g, 'u')
    .replace(/\s+/g, ' ')
    .trim();
}

const pattern = /(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+(?![\p{L}\d.]))?|\p{L}+|\S/giu;

export function tokens(tidied: string): Token[] {
  return [...tidied.matchAll(pattern)].map((match) => {
    const text = match[0];
    const kind = /^\.?\d/.test(text) ? 'number' : /^\p{L}/u.test(text) ? 'word' : 'mark';
    return { kind, text, word: text.toLowerCase(), start: match.index };
  });
}
