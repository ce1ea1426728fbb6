import { tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { type AlongAnswer, alongSentence, eachLength } from '../../shop/survey/along.ts';
import { drawnText } from './line-draws.ts';
import { table } from './table.ts';

/** Twist or parallelism as a sentence, then station by station; what to look at last. */
export function alongText(answer: AlongAnswer, system: UnitSystem = 'metric'): string {
  const columns = tableColumns(system);
  const each = eachLength(system);
  const of = columns[answer.kind === 'twist' ? 'angle' : 'size'];
  const { figures, unit } = of;
  const change = answer.change_urad ?? answer.change_um ?? [];
  const sizes = answer.twist_urad ?? answer.parallelism_um!;
  // A station less the first is two readings less each other.
  const sd = answer.sd && answer.sd.each * Math.SQRT2;
  const rows = answer.stations_mm.map((station, i) => [
    columns.length.figures(station),
    figures(change[i]!, i === 0 ? undefined : sd),
  ]);
  return [
    alongSentence(answer, system),
    '',
    `range ${figures(sizes.range, answer.sd?.range)} ${unit}   end to end ${figures(sizes.ends, answer.sd?.ends)} ${unit}   ${figures(each.value(sizes.per_m), answer.sd && each.value(answer.sd.per_m))} ${unit} for each ${each.word}`,
    ...(answer.over_bridge_um === undefined
      ? []
      : [`over the bridge ${told(system).size(answer.over_bridge_um, { decimals: 1, signed: false })}`]),
    '',
    table([`station, ${columns.length.unit}`, `from the first, ${unit}`], rows),
    '',
    answer.sd ? '± is two sd.' : 'No doubt is known.',
    ...(answer.monte_carlo ? [drawnText(answer.monte_carlo, 'range', answer.monte_carlo.range, of)] : []),
    ...answer.warnings.map((warning) => `Look at: ${warning.text}`),
  ].join('\n');
}
