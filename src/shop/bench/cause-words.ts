import type { Alarm, Cause, CauseFound } from '../../core/estimate/cause.ts';
import type { Doubtful } from '../../core/estimate/pose.ts';
import type { PlaceWords } from '../../core/ledger/setup.ts';
import { capital } from '../phrase.ts';

/** A cause with the round, from 0, that it is about. */
export type PlacedCause = CauseFound & { readonly round: number };

/** The causes of an alarm, each with its round; where none is said it is the alarm's. */
export const placedCauses = (alarm: Alarm): PlacedCause[] =>
  alarm.causes.map((found) => ({ ...found, round: found.round ?? alarm.round }));

/** "zone 3 from the headstock end" */
export const zonePlace = (zone: number, places: Pick<PlaceWords, 'minus_end'>): string =>
  `zone ${zone + 1} from the ${places.minus_end}`;

/** The mistake by its name, never its maker's. */
export function causeWords(cause: Cause, places: Pick<PlaceWords, 'minus_end'>): string {
  switch (cause.kind) {
    case 'sweep reversed':
      return `${capital(cause.sweep)} read backwards, or plunger facing the other way`;
    case 'reference moved':
      return `${capital(cause.face)} moved`;
    case 'zone missed':
      return `${capital(cause.pad)}, ${zonePlace(cause.zone, places)}, missed`;
    case 'pass too many':
      return `A pass too many on the ${cause.pad}`;
    case 'flanks swapped':
      return `${capital(cause.pads[0])} and ${cause.pads[1]} swapped`;
    case 'map end for end':
      return 'Map read end for end';
    case 'not as recorded':
      return 'Scraped otherwise than ticked off';
  }
}

/** Whether a cause would have read what was found: within two sd of both together. */
export function fitsFound(cause: CauseFound, found: Doubtful): 'fits' | 'does not fit' | 'cannot tell' {
  if (!cause.would_read) return 'cannot tell';
  const off = Math.abs(cause.would_read.value - found.value);
  return off <= 2 * Math.hypot(cause.would_read.sd, found.sd) ? 'fits' : 'does not fit';
}
