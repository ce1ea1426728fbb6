import { plain } from './show.ts';
import { shown, type Unread } from './spoken.ts';

/** Why something typed was not taken, as a sentence that says how to write it. */
export interface Unreadable {
  readonly ok: false;
  readonly why: string;
}

export const refuse = (why: string): Unreadable => ({ ok: false, why });

export const doNotAddUp = (write: string): string =>
  `The parts do not add up: each must be less than one of the unit before it. Write ${write}.`;

/** A sentence on what could be read, what could not, and how to write it (`write`). */
export function unreadSentence(unread: Unread, write: string): string {
  const { kind, read, rest } = unread;
  if (kind === 'empty') return `Nothing is written. ${write}`;
  if (kind === 'long') return `“${rest}” is too long for one value. ${write}`;
  if (kind === 'comma')
    return `A comma may part whole from decimal or thousands from hundreds. Write a point for the decimal: 0.02, not 0,02.`;
  if (kind === 'mil')
    return `“mil” is a thousandth of an inch to some and a millimetre to others. Write ${plain(unread.value ?? 7, 4)} thou or ${plain(unread.value ?? 7, 4)} mm.`;
  if (kind === 'ten thousandths')
    return 'Ten thousandths may be .010 in or .0001 in. Write 10 thou or 1 tenth.';
  if (kind === 'nothing read') return `I cannot read “${rest || shown(read)}”. ${write}`;
  return `I can read ${shown(read)}, but not “${rest}”. ${write}`;
}
