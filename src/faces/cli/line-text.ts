import { sayLength } from '../../core/quantity/length.ts';
import { say } from '../../core/quantity/say.ts';
import type { LineAnswer } from '../../shop/survey/line.ts';
import { lineSentence, sayWidth } from '../../shop/survey/line-sentence.ts';
import { drawnText } from './line-draws.ts';
import { table } from './table.ts';

/** A departure with its doubt, for a column that has its unit at its head. */
export function figures(value: number, sd: number | undefined): string {
  const said = say(value, '', { decimals: 1, ...(sd === undefined ? {} : { sd }) });
  return `${said.sign}${said.number}${said.doubt === undefined ? '' : ` ±${said.doubt}`}`;
}

/** A line as a sentence, its three straightnesses, then station by station; what to look at last. */
export function lineText(answer: LineAnswer): string {
  const { straightness_um, sd, contacts, closure, wear, reference } = answer;
  const width = (key: keyof typeof straightness_um) =>
    sayWidth(straightness_um[key], 'metric', sd?.straightness_um[key]);
  const heads = ['station, mm', 'from ends, µm', 'least squares, µm', 'zone'];
  if (wear) heads.splice(3, 0, 'worn, µm');
  if (reference) heads.splice(3, 0, 'straightedge, µm');
  const bend = answer.edge_bend_um;
  if (bend) heads.splice(3, 0, 'its bend, µm');
  const rows = answer.stations_mm.map((station, i) => {
    const held = contacts.find((one) => one.index === i);
    return [
      String(Number(station.toFixed(3))),
      figures(answer.endpoint_um[i]!, sd?.endpoint_um[i]),
      figures(answer.least_squares_um[i]!, sd?.least_squares_um[i]),
      ...(bend ? [figures(bend[i]!, answer.edge_bend_sd_um?.[i])] : []),
      ...(reference ? [figures(reference.form_um[i]!, reference.sd_um?.[i])] : []),
      ...(wear ? [figures(wear.wear_um[i]!, wear.sd_um?.[i])] : []),
      held ? held.side : '',
    ];
  });
  return [
    lineSentence(answer),
    '',
    `straightness   end-point ${width('endpoint')}   least squares ${width('least_squares')}   minimum zone ${width('minimum_zone')}`,
    ...(wear
      ? [
          `deepest wear   ${sayWidth(wear.deepest.um, 'metric', wear.deepest.sd_um)} at ${sayLength(wear.deepest.station_mm, 'metric').text}`,
        ]
      : []),
    ...(closure
      ? [
          `run back       ${closure.closes ? 'closes' : 'does not close'}: ${say(closure.closing_um, 'µm', { decimals: 1, sd: closure.closing_sd_um ?? 0 }).text}; drift ${say(closure.drift_urad ?? closure.drift_um ?? 0, closure.drift_urad === undefined ? 'µm' : 'µrad', { sd: closure.drift_sd }).text} a reading, taken out`,
        ]
      : []),
    ...(answer.monte_carlo ? [drawnText(answer.monte_carlo, answer.monte_carlo.minimum_zone)] : []),
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
