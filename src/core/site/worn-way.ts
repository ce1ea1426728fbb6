import { lineZone } from '../survey/line-zone.ts';
import type { Bed } from './bed.ts';

/** The way that is least straight, by its minimum zone along the pad's normal, µm. */
export function leastStraight(bed: Bed): { readonly pad: string; readonly um: number } {
  return bed.ways
    .map(({ pad, height_um }) => ({ pad, um: lineZone(bed.stations_mm, height_um).width_um }))
    .reduce((worst, one) => (one.um > worst.um ? one : worst));
}
