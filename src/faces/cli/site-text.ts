import { say } from '../../core/quantity/say.ts';
import type { SiteAnswer } from '../../shop/site.ts';
import { table } from './table.ts';

const one = (value: number): string => value.toFixed(1);

/** Where to print, then what every place costs. */
export function siteText(answer: SiteAnswer): string {
  const rows = answer.candidates.map((place) => [
    `${place.at_mm}${place.at_mm === answer.best.at_mm ? ' *' : ''}${place.allowed ? '' : ' !'}`,
    one(place.parts.diameter_rms_um),
    one(place.parts.facing_rms_um),
    one(place.yaw_rms_urad),
    one(place.tool_across_rms_um),
    (100 * place.bearing_fraction).toFixed(0),
    `${say(Math.min(...place.yaw_urad), 'µrad', { decimals: 1 }).text} … ${say(Math.max(...place.yaw_urad), 'µrad', { decimals: 1 }).text}`,
  ]);
  const others = answer.candidates
    .filter((place) => place.at_mm !== answer.best.at_mm)
    .map((place) => `  ${place.text}`);
  return [
    answer.best.why,
    ...(answer.best.as_good_mm.length
      ? [`As good within a tenth: ${answer.best.as_good_mm.join(', ')} mm.`]
      : []),
    ...(others.length ? ['', 'What each other place would cost:', ...others] : []),
    '',
    table(
      [
        'printed at, mm',
        'diameter, µm',
        'facing, µm',
        'yaw, µrad',
        'tool across, µm',
        'bears, %',
        'yaw from … to',
      ],
      rows,
    ),
    '',
    `* best.${answer.candidates.some((place) => !place.allowed) ? ` ! more than is allowed: diameters ${one(answer.allow.diameter_um)} µm, faces ${one(answer.allow.facing_um)} µm.` : ''} All but the last column rms over the duty; facing over a radius of ${answer.facing_mm} mm. Against the rest at the place of printing; the survey was taken as given, so no doubt is known.`,
  ].join('\n');
}
