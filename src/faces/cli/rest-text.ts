import type { RestAsk } from '../../contract/rest.ts';
import { chanceWords } from '../../core/prove/chance.ts';
import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { acrossTravel } from '../../core/rest/rest.ts';
import type { Rested } from '../../shop/rest.ts';
import { table } from './table.ts';

const oneDecimal = { decimals: 1 };

/** How the slide rests, as a sentence, its pose, then zone by zone. */
export function restText(input: RestAsk, rested: Rested, system: UnitSystem = 'metric'): string {
  const { size } = tableColumns(system);
  const words = told(system);
  const thick = (um: number): string => words.size(um, { signed: false });
  const zones = input.slide.pads.flatMap((pad) =>
    Array.from({ length: pad.zones }, (_, zone) => ({ pad: pad.name, zone })),
  );
  const touching = rested.gap_um.filter((gap) => gap < 0).length;
  const across = acrossTravel(input.slide.free);
  const rows = zones.map(({ pad, zone }, z) => {
    const gap = rested.gap_um[z]!;
    const state = gap < 0 ? 'pressed' : gap <= input.film_um ? 'blue' : 'clear';
    const { share, sd } = rested.expected_print;
    const blue = `${percent(share[pad]![zone]!)} ± ${percent(2 * sd[pad]![zone]!)}`;
    const seen = input.print ? [input.print[pad] ? percent(input.print[pad][zone]!) : ''] : [];
    return [pad, String(zone + 1), size.figures(gap), rested.force_N[z]!.toFixed(0), blue, ...seen, state];
  });
  return [
    `${input.slide.name} rests on ${touching} of ${zones.length} zones; ${(100 * rested.bearing_fraction).toFixed(0)} % of the pads' area lies within the blue (${thick(input.film_um)}).`,
    '',
    `shift  ${across.map((axis, k) => `${axis} ${words.size(rested.shift_um[k]!, oneDecimal)}`).join('   ')}`,
    `turn   ${['x', 'y', 'z'].map((axis, k) => `about ${axis} ${words.angle(rested.turn_urad[k]!, oneDecimal)}`).join('   ')}`,
    '',
    table(
      [
        'pad',
        'zone',
        `gap, ${size.unit}`,
        'carries, N',
        'blue to expect, %',
        ...(input.print ? ['seen, %'] : []),
        '',
      ],
      rows,
    ),
    ...agreementLines(rested),
    '',
    `Zone 1 is at the minus end of the travel. Gap: minus is pressed, plus is clear. Gaps were taken as given, so no doubt of them is known. Blue to expect: rough to ${thick(rested.roughness_um)} within a zone, the film ${thick(input.film_um)} thick; ± is two sd of where the high spots fall.`,
  ].join('\n');
}

const percent = (share: number): string => (100 * share).toFixed(0);

/** How the print that was seen agrees, and which zones do not. */
function agreementLines({ agreement }: Rested): string[] {
  if (!agreement) return [];
  const apart = agreement.apart.map(
    ({ pad, zone, seen, foretold }) =>
      `  ${pad}, zone ${zone + 1}: seen ${percent(seen)} %, to expect ${percent(foretold)} %`,
  );
  return [
    '',
    `The print that was seen ${agreement.agrees ? 'agrees' : 'does not agree'} with the one to expect: score ${percent(agreement.score)} of 100, ${percent(agreement.within_two_sd)} % of the area within two sd, ${chanceWords(agreement.chance)} of chance doing as much.`,
    ...(apart.length ? ['Beyond three sd:', ...apart] : []),
  ];
}
