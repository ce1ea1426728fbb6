import { say } from '../../core/quantity/say.ts';
import type { RestInput } from '../../core/rest/rest.ts';
import { acrossTravel } from '../../core/rest/rest.ts';
import type { Rested } from '../../shop/rest.ts';
import { table } from './table.ts';

const oneDecimal = { decimals: 1 };

/** Sign and figures alone, for a column that has its unit at its head. */
function figures(value: number): string {
  const said = say(value, '', oneDecimal);
  return said.sign + said.number;
}

/** How the slide rests, as a sentence, its pose, then zone by zone. */
export function restText(input: RestInput, rested: Rested): string {
  const zones = input.slide.pads.flatMap((pad) =>
    Array.from({ length: pad.zones }, (_, zone) => ({ pad: pad.name, zone })),
  );
  const touching = rested.gap_um.filter((gap) => gap < 0).length;
  const across = acrossTravel(input.slide.free);
  const rows = zones.map(({ pad, zone }, z) => {
    const gap = rested.gap_um[z]!;
    const state = gap < 0 ? 'pressed' : gap <= input.film_um ? 'blue' : 'clear';
    return [pad, String(zone + 1), figures(gap), rested.force_N[z]!.toFixed(0), state];
  });
  return [
    `${input.slide.name} rests on ${touching} of ${zones.length} zones; ${(100 * rested.bearing_fraction).toFixed(0)} % of the pads' area lies within the blue (${input.film_um} µm).`,
    '',
    `shift  ${across.map((axis, k) => `${axis} ${say(rested.shift_um[k]!, 'µm', oneDecimal).text}`).join('   ')}`,
    `turn   ${['x', 'y', 'z'].map((axis, k) => `about ${axis} ${say(rested.turn_urad[k]!, 'µrad', oneDecimal).text}`).join('   ')}`,
    '',
    table(['pad', 'zone', 'gap, µm', 'carries, N', ''], rows),
    '',
    'Zone 1 is at the minus end of the travel. Gap: minus is pressed, plus is clear. Gaps were taken as given, so no doubt is known.',
  ].join('\n');
}
