import { sayLength } from '../../core/quantity/length.ts';
import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineAnswer } from '../../shop/survey/line.ts';
import { lineSentence, sayWidth } from '../../shop/survey/line-sentence.ts';
import { drawnText } from './line-draws.ts';
import { table } from './table.ts';

/** A line as a sentence, its three straightnesses, then station by station; what to look at last. */
export function lineText(answer: LineAnswer, system: UnitSystem = 'metric'): string {
  const { length, size } = tableColumns(system);
  const { figures } = size;
  const words = told(system);
  const { straightness_um, sd, contacts, closure, wear, reference } = answer;
  const width = (key: keyof typeof straightness_um) =>
    sayWidth(straightness_um[key], system, sd?.straightness_um[key]);
  const heads = [`station, ${length.unit}`, `from ends, ${size.unit}`, `least squares, ${size.unit}`, 'zone'];
  if (wear) heads.splice(3, 0, `worn, ${size.unit}`);
  if (reference) heads.splice(3, 0, `straightedge, ${size.unit}`);
  const bend = answer.edge_bend_um;
  if (bend) heads.splice(3, 0, `its bend, ${size.unit}`);
  const rows = answer.stations_mm.map((station, i) => {
    const held = contacts.find((one) => one.index === i);
    return [
      length.figures(station),
      figures(answer.endpoint_um[i]!, sd?.endpoint_um[i]),
      figures(answer.least_squares_um[i]!, sd?.least_squares_um[i]),
      ...(bend ? [figures(bend[i]!, answer.edge_bend_sd_um?.[i])] : []),
      ...(reference ? [figures(reference.form_um[i]!, reference.sd_um?.[i])] : []),
      ...(wear ? [figures(wear.wear_um[i]!, wear.sd_um?.[i])] : []),
      held ? held.side : '',
    ];
  });
  return [
    lineSentence(answer, system),
    '',
    `straightness   end-point ${width('endpoint')}   least squares ${width('least_squares')}   minimum zone ${width('minimum_zone')}`,
    ...(wear
      ? [
          `deepest wear   ${sayWidth(wear.deepest.um, system, wear.deepest.sd_um)} at ${sayLength(wear.deepest.station_mm, system).text}`,
        ]
      : []),
    ...(closure
      ? [
          `run back       ${closure.closes ? 'closes' : 'does not close'}: ${words.size(closure.closing_um, { decimals: 1, sd: closure.closing_sd_um ?? 0 })}; drift ${words[closure.drift_urad === undefined ? 'size' : 'angle'](closure.drift_urad ?? closure.drift_um ?? 0, { sd: closure.drift_sd })} a reading, taken out`,
        ]
      : []),
    ...(answer.monte_carlo
      ? [drawnText(answer.monte_carlo, 'minimum zone', answer.monte_carlo.minimum_zone, size)]
      : []),
    '',
    table(heads, rows),
    '',
    `Plus is ${answer.direction === 'vertical' ? 'proud' : 'toward the back'}. High and low hold the minimum zone.${sd ? ' ± is two sd.' : ''}`,
    ...(bend
      ? [
          'Its bend: the straightedge’s own sag and warmth at each station, worked out and taken out; plus is up.',
        ]
      : []),
    ...answer.warnings.map((warning) => `Look at: ${warning.text}`),
  ].join('\n');
}
