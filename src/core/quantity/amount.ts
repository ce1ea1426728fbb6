import type { Token } from './token.ts';

/** A number as spoken, and how many tokens it took. */
export interface Amount {
  readonly value: number;
  readonly next: number;
  /** It stands for one of a unit and needs one to follow: "a", "an". */
  readonly article?: boolean;
}

const numberWords: Readonly<Record<string, number>> = Object.fromEntries(
  'zero one two three four five six seven eight nine ten eleven twelve'
    .split(' ')
    .map((word, value) => [word, value]),
);
const shares: Readonly<Record<string, number>> = { half: 0.5, quarter: 0.25, quarters: 0.25 };

const whole = (token: Token | undefined): boolean => token?.kind === 'number' && /^\d+$/.test(token.text);

/** A fraction INT / INT at this place. */
function fraction(list: readonly Token[], at: number): Amount | undefined {
  const [top, bar, bottom] = [list[at], list[at + 1], list[at + 2]];
  if (!whole(top) || bar?.text !== '/' || !whole(bottom) || Number(bottom!.text) === 0) return undefined;
  return { value: Number(top!.text) / Number(bottom!.text), next: at + 3 };
}

/** "and a half", "and three quarters": what follows a whole number or a unit. */
export function andShare(list: readonly Token[], at: number): Amount | undefined {
  if (list[at]?.word !== 'and') return undefined;
  let next = at + 1;
  const many = list[next]?.word === 'three' || list[next]?.text === '3' ? 3 : 1;
  if (['a', 'one', 'three', '3'].includes(list[next]?.word ?? '')) next++;
  const share = shares[list[next]?.word ?? ''];
  if (share === undefined || (many === 3 && share === 0.5)) return undefined;
  return { value: many * share, next: next + 1 };
}

/** Skips "a", "an", "of a", "of an" between a share and its unit: "half a thou", "three quarters of a thou". */
function skipArticle(list: readonly Token[], at: number): number {
  const next = list[at]?.word === 'of' ? at + 1 : at;
  const article = list[next]?.word === 'a' || list[next]?.word === 'an';
  return article ? next + 1 : at;
}

function wordAmount(list: readonly Token[], at: number): Amount | undefined {
  const word = list[at]?.word ?? '';
  const after = list[at + 1]?.word ?? '';
  if (word === 'three' && after === 'quarters') return { value: 0.75, next: skipArticle(list, at + 2) };
  if (word === 'half' || word === 'quarter') return { value: shares[word]!, next: skipArticle(list, at + 1) };
  if (word === 'a' || word === 'an') {
    if (after === 'half' || after === 'quarter')
      return { value: shares[after]!, next: skipArticle(list, at + 2) };
    return { value: 1, next: at + 1, article: true };
  }
  if (word === 'nil' || word === 'nought') return { value: 0, next: at + 1 };
  const value = Object.hasOwn(numberWords, word) ? numberWords[word] : undefined;
  return value === undefined ? undefined : { value, next: at + 1 };
}

/**
 * Reads one number at `at`: `7`, `.0005`, `1/2`, `1 1/2`, `1-1/2`, `half`, `one and a half`, `a`.
 * @returns undefined when no number stands there
 */
export function readAmount(list: readonly Token[], at: number): Amount | undefined {
  const first = list[at];
  if (first?.kind !== 'number') {
    const spoken = wordAmount(list, at);
    const more = spoken && Number.isInteger(spoken.value) && !spoken.article && andShare(list, spoken.next);
    return more ? { value: spoken.value + more.value, next: more.next } : spoken;
  }
  const alone = fraction(list, at);
  if (alone) return alone;
  const value = Number(first.text);
  if (!whole(first)) return { value, next: at + 1 };
  for (const gap of [0, 1]) {
    const join = list[at + 1];
    if (gap === 1 && join?.text !== '-' && join?.word !== 'and') continue;
    const part = fraction(list, at + 1 + gap);
    if (part && part.value < 1) return { value: value + part.value, next: part.next };
  }
  const more = andShare(list, at + 1);
  return more ? { value: value + more.value, next: more.next } : { value, next: at + 1 };
}
