import type { RestAsk } from '../contract/rest.ts';
import { zonesOf } from '../core/body/slide.ts';
import { unit } from '../core/body/vector.ts';
import { plain } from '../core/quantity/show.ts';
import type { Rested } from './rest.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 5);
const source = 'elastic foundation: zones as springs that press and never pull';

/** How a slide's rest comes about: the rule, what each pressed zone carries, the balance that it was found by, the bearing. mm, µm, N. */
export function restWorking(input: RestAsk, rested: Rested): Worked[] {
  const zones = zonesOf(input.slide);
  const { load, stiffness_N_per_mm3: k, film_um } = input;
  const pressed = zones.flatMap((zone, z) => (rested.force_N[z]! > 0 ? [{ zone, z }] : []));
  const whole = zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
  const blued = zones.reduce((sum, zone, z) => sum + (rested.gap_um[z]! <= film_um ? zone.area_mm2 : 0), 0);
  return [
    {
      what: 'where it comes to rest',
      formula:
        'the pose of least ½ Σ stiffness × area × (gap below 0)² − work of the load; gap = gap as given + movement along the pad’s normal',
      worked: `${n(k)} N/mm³, ${zones.length} zones, load ${n(load.force_N)} N at [${load.at_mm.map(n).join(', ')}] mm`,
      source,
    },
    ...pressed.map(
      ({ zone, z }): Worked => ({
        what: `what zone ${zone.index + 1} of ${zone.pad.name} carries`,
        formula: 'stiffness N/mm³ × area mm² × how far it is pressed, µm/1000',
        worked: `${n(k)} × ${n(zone.area_mm2)} × ${n(-rested.gap_um[z]!)}/1000 = ${n(rested.force_N[z]!)} N`,
      }),
    ),
    {
      what: 'the balance: the pads push back as hard as the load, where pads hold at all',
      formula: 'Σ force × normal, against load × its direction; x, y, z',
      worked: `[${pushed(zones, rested.force_N).map(n).join(', ')}] N from the pads; [${unit(load.direction)
        .map((part) => n(part * load.force_N))
        .join(', ')}] N of load`,
    },
    {
      what: 'share of the pads’ area within the blue',
      formula: 'area of the zones whose gap is no more than the film / area of all, mm²',
      worked: `100 × ${n(blued)}/${n(whole)} = ${n(100 * rested.bearing_fraction)} %; film ${n(film_um)} µm`,
    },
  ];
}

/** What the ways give back to the slide, N along x, y and z. */
const pushed = (zones: ReturnType<typeof zonesOf>, force_N: readonly number[]): number[] =>
  [0, 1, 2].map((axis) => clean(zones.reduce((sum, zone, z) => sum + force_N[z]! * zone.normal[axis]!, 0)));

/** Forces are sums of forces: what is left of their rounding is no force. */
const clean = (force_N: number): number => Math.round(force_N * 1e6) / 1e6 || 0;
