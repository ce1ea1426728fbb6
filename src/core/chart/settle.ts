import type { LimitBand } from './limit.ts';
import type { Result } from './result.ts';

/** What would turn "not proven" into a verdict. */
export type Settle =
  /** So many more readings like those that were taken. */
  | { readonly by: 'more readings'; readonly more: number }
  /** Repeating cannot do it: what it is held against must be known better, so that the whole doubt comes to this, two sd. */
  | { readonly by: 'less doubt'; readonly to_um: number }
  /** No measurement will do: it lies on the limit. */
  | { readonly by: 'other work'; readonly from_limit_um: number }
  /** Its doubt was not told. */
  | { readonly by: 'doubt told' }
  /** It was never measured. */
  | { readonly by: 'first measurement' };

/** More readings than this nobody takes. */
const mostReadings = 20;
/** Nearer to a limit than this, µm, no shop can part the two. */
const least_um = 0.1;

/** From a value to the nearest limit, on whichever side of it, µm. */
export const toLimit = (value: number, band: LimitBand): number =>
  Math.min(
    band.low === undefined ? Infinity : Math.abs(value - band.low),
    band.high === undefined ? Infinity : Math.abs(band.high - value),
  );

/**
 * What settles a line that is not proven, when the value stays where it is.
 *
 *     doubt(n + m)² = shared² + (doubt² − shared²) · n / (n + m)  ≤  d²
 *
 * with d the distance to the nearest limit: a doubt below it settles the line either way.
 */
export function settle(result: Result | undefined, band: LimitBand): Settle {
  if (!result) return { by: 'first measurement' };
  const { value_um, doubt_um, shared_um = 0, readings = 1 } = result;
  if (doubt_um === undefined) return { by: 'doubt told' };
  const d = toLimit(value_um, band);
  if (d < least_um) return { by: 'other work', from_limit_um: d };
  const chance = Math.max(0, doubt_um ** 2 - shared_um ** 2);
  const room = d ** 2 - shared_um ** 2;
  const more = room > 0 ? Math.ceil((readings * chance) / room - readings - 1e-9) : Infinity;
  return more <= mostReadings
    ? { by: 'more readings', more: Math.max(1, more) }
    : { by: 'less doubt', to_um: d };
}
