import type { Sum, SumGroup } from '../../../core/sums/sum.ts';
import { sums } from '../../../core/sums/sums.ts';

/** Groups in the order of the list, with their heads. */
export const groupHeads: Readonly<Record<SumGroup, string>> = {
  'dovetails and Vs': 'Dovetails and Vs over rolls',
  'angles and tapers': 'Angles, tapers and gibs',
  'sag and warmth': 'Sag, supports and warmth',
  'the lathe': 'Lathe heads',
  heights: 'Liners, shims and stacks',
  reversals: 'Reversals',
};

/** What of a sum is searched: its name, what it asks, its letters' words. */
const wordsOf = (sum: Sum): string =>
  [
    sum.name,
    sum.title,
    sum.question,
    groupHeads[sum.group],
    ...Object.values(sum.inputs).map((input) => input.label),
    ...Object.values(sum.results).map((result) => result.label),
  ]
    .join(' ')
    .toLowerCase();

/**
 * Sums in which every word that was typed occurs, in groups; all of them when nothing is typed. Those that have the words
 * in their name come first in their group.
 */
export function sumsFound(
  typed: string,
): readonly { readonly head: string; readonly sums: readonly Sum[] }[] {
  const words = typed
    .toLowerCase()
    .split(/[\s-]+/)
    .filter((word) => word !== '');
  const named = (sum: Sum): boolean => {
    const name = `${sum.name} ${sum.title}`.toLowerCase();
    return words.every((word) => name.includes(word));
  };
  const found = sums.filter((sum) => {
    const text = wordsOf(sum);
    return words.every((word) => text.includes(word));
  });
  return Object.entries(groupHeads)
    .map(([group, head]) => {
      const its = found.filter((sum) => sum.group === group);
      return { head, sums: [...its.filter(named), ...its.filter((sum) => !named(sum))] };
    })
    .filter((one) => one.sums.length > 0);
}
