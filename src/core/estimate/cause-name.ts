import type { Cause } from './cause.ts';

/**
 * A cause's name in a record: short, stable, the same for the same mistake in the same round.
 *
 * @param round  the round it is about, from 0; named from 1, as people count
 */
export const causeId = ({ cause, round }: { readonly cause: Cause; readonly round: number }): string =>
  `${causeName(cause)}, round ${round + 1}`;

/** The mistake by its name, whatever the round: it is one question at the metal. */
export function causeName(cause: Cause): string {
  switch (cause.kind) {
    case 'sweep reversed':
      return `${cause.kind}: ${cause.sweep}`;
    case 'reference moved':
      return `${cause.kind}: ${cause.face}`;
    case 'zone missed':
      return `${cause.kind}: ${cause.pad} ${cause.zone + 1}`;
    case 'pass too many':
      return `${cause.kind}: ${cause.pad}`;
    case 'flanks swapped':
      return `${cause.kind}: ${cause.pads.join(', ')}`;
    default:
      return cause.kind;
  }
}
