import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { SiteAnswer } from '../../shop/site.ts';
import { siteFigures, siteSize } from '../../shop/site-words.ts';
import { table } from './table.ts';

/** Where to print, then what every place costs. */
export function siteText(answer: SiteAnswer, system: UnitSystem = 'metric'): string {
  const { length, size, angle } = tableColumns(system);
  const columns = { um: size, urad: angle };
  const figures = siteFigures(answer);
  const rows = answer.candidates.map((place) => [
    `${length.figures(place.at_mm)}${place.at_mm === answer.best.at_mm ? ' *' : ''}${place.allowed ? '' : ' !'}`,
    ...figures.map(({ unit }, k) => columns[unit].bare(place.cost[k]!)),
    angle.bare(place.yaw_rms_urad),
    size.bare(place.tool_across_rms_um),
    (100 * place.bearing_fraction).toFixed(0),
    `${angle.figures(Math.min(...place.yaw_urad))} … ${angle.figures(Math.max(...place.yaw_urad))}`,
  ]);
  const others = answer.candidates
    .filter((place) => place.at_mm !== answer.best.at_mm)
    .map((place) => `  ${place.text}`);
  return [
    answer.best.why,
    ...(answer.best.as_good_mm.length
      ? [`As good within a tenth: ${answer.best.as_good_mm.map(length.figures).join(', ')} ${length.unit}.`]
      : []),
    ...(others.length ? ['', 'What each other place would cost:', ...others] : []),
    '',
    table(
      [
        `printed at, ${length.unit}`,
        ...figures.map(({ head, unit }) => `${head.toLowerCase()}, ${columns[unit].unit}`),
        `yaw, ${angle.unit}`,
        `tool across, ${size.unit}`,
        'bears, %',
        `yaw from … to, ${angle.unit}`,
      ],
      rows,
    ),
    '',
    `* best.${answer.candidates.some((place) => !place.allowed) ? ` ! more than is allowed: ${figures.map((figure, k) => `${figure.head.toLowerCase()} ${siteSize(figure, answer.limits[k]!, system)}`).join(', ')}.` : ''} All but the last column rms over the duty${answer.shows === 'turned' ? `; faces over a radius of ${told(system).place(answer.facing_mm)}` : ''}. Against the rest at the place of printing; the survey was taken as given, so no doubt is known.`,
  ].join('\n');
}
