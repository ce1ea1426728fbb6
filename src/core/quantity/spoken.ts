import { andShare, readAmount } from './amount.ts';
import { type Token, tidy, tokens } from './token.ts';
import type { Spellings } from './unit.ts';

/** One number with the unit that was spoken behind it, if one was. */
interface Term<Unit extends string> {
  readonly value: number;
  readonly unit: Unit | undefined;
}

/** What was said: a sign and one or more terms ("1 thou 2 tenths"). */
export interface Spoken<Unit extends string> {
  readonly ok: true;
  readonly sign: -1 | 1;
  readonly terms: readonly Term<Unit>[];
  /** The only number as it was typed ("0005", ".0150"), when it was typed in figures alone. */
  readonly figures: string | undefined;
}

/** What could be read before the reading broke off, and what could not. */
export interface Unread {
  readonly ok: false;
  readonly kind: 'empty' | 'long' | 'nothing read' | 'rest' | 'comma' | 'mil' | 'ten thousandths';
  /** Numbers and units read so far, as typed. */
  readonly read: string;
  readonly rest: string;
  /** The number read last, if any. */
  readonly value: number | undefined;
}

/** A reading is short; anything longer is a slip of the clipboard. */
const longest = 60;

/** Longest run of tokens at `at` that spells a unit. */
function readUnit<Unit extends string>(list: readonly Token[], at: number, spellings: Spellings<Unit>) {
  for (let size = 4; size > 0; size--) {
    const said = list.slice(at, at + size);
    if (said.length < size) continue;
    const unit = spellings.get(said.map((token) => token.word).join(' '));
    if (unit === undefined) continue;
    const next = at + size;
    return { unit, next: list[next]?.text === '.' ? next + 1 : next };
  }
  return undefined;
}

/**
 * Reads a spoken quantity: sign, number, unit, and again for each smaller unit after it.
 *
 * @param spellings  how units may be spoken, in lower case
 */
export function readSpoken<Unit extends string>(
  typed: string,
  spellings: Spellings<Unit>,
): Spoken<Unit> | Unread {
  const text = tidy(typed);
  const list = tokens(text);
  const fail = (kind: Unread['kind'], at: number, value?: number): Unread => {
    const cut = list[at]?.start ?? text.length;
    return { ok: false, kind, read: text.slice(0, cut).trim(), rest: shown(text.slice(cut)), value };
  };
  if (text === '') return fail('empty', 0);
  if (text.length > longest)
    return { ok: false, kind: 'long', read: '', rest: shown(text), value: undefined };
  const comma = list.findIndex((token) => token.text === ',');
  if (comma >= 0) return fail('comma', comma);

  let at = 0;
  let sign: -1 | 1 = 1;
  const first = list[0]!.word;
  if (first === '-' || first === 'minus') sign = -1;
  if (first === '-' || first === '+' || first === 'minus' || first === 'plus') at = 1;
  const begin = at;

  const terms: Term<Unit>[] = [];
  let last: number | undefined;
  while (at < list.length) {
    const joined = terms.length > 0 && list[at]!.word === 'and' ? at + 1 : at;
    const amount = readAmount(list, joined);
    if (!amount) return fail(last === undefined ? 'nothing read' : 'rest', at, last);
    if (list[amount.next - 1]!.word === 'ten' && /^thousandths?$/.test(list[amount.next]?.word ?? ''))
      return fail('ten thousandths', 0);
    const found = readUnit(list, amount.next, spellings);
    if (/^mils?$/.test(list[amount.next]?.word ?? '')) return fail('mil', amount.next, amount.value);
    if (amount.article && !found) return fail(last === undefined ? 'nothing read' : 'rest', at, last);
    let { value } = amount;
    at = found?.next ?? amount.next;
    const more = found && andShare(list, at);
    if (more) {
      value += more.value;
      at = more.next;
    }
    last = value;
    // A second number needs a unit on both sides of it: "7 5" is two readings, not one.
    if (!found && (terms.length > 0 || at < list.length))
      return fail('rest', at < list.length ? at : joined, last);
    terms.push({ value, unit: found?.unit });
  }
  if (terms.length === 0) return fail('nothing read', 0);
  const only = list[begin]!;
  const figures = terms.length === 1 && readsAsFigures(list, begin) ? only.text : undefined;
  return { ok: true, sign, terms, figures };
}

/**
 * The sum of what was said, with its sign; each term must be less than one of the unit before it.
 *
 * @param sizes    of each unit, in whatever the sum is to be
 * @param missing  size for a number without a unit
 * @returns        undefined when the terms do not go from large to small ("5 tenths 1 thou")
 */
export function addUp<Unit extends string>(
  spoken: Spoken<Unit>,
  sizes: Readonly<Record<Unit, number>>,
  missing: number,
): number | undefined {
  let sum = 0;
  let before = Infinity;
  for (const { value, unit } of spoken.terms) {
    const size = unit === undefined ? missing : sizes[unit];
    // Rounding of binary fractions must not let 60 min pass for less than 1 degree.
    if (size >= before || (sum > 0 && value * size > before * (1 - 1e-12))) return undefined;
    before = size;
    sum += value * size;
  }
  return sum === 0 ? 0 : spoken.sign * sum;
}

/** Whether the number is one token of figures, with no fraction or word joined to it. */
const readsAsFigures = (list: readonly Token[], begin: number): boolean =>
  list[begin]!.kind === 'number' &&
  !list
    .slice(begin + 1)
    .some((token) => token.kind === 'number' || token.text === '/' || token.word === 'and');

/** Text a person can recognise in a sentence: no control characters, not too long. */
export function shown(text: string): string {
  const plain = text.replace(/\p{C}/gu, '').trim();
  return plain.length > 24 ? `${plain.slice(0, 24)}…` : plain;
}
