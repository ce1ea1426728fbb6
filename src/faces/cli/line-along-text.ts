import { type AlongAnswer, alongSentence } from '../../shop/survey/along.ts';
import { figures } from './line-text.ts';
import { table } from './table.ts';

/** Twist or parallelism as a sentence, then station by station; what to look at last. */
export function alongText(answer: AlongAnswer): string {
  const unit = answer.kind === 'twist' ? 'µrad' : 'µm';
  const change = answer.change_urad ?? answer.change_um ?? [];
  const sizes = answer.twist_urad ?? answer.parallelism_um!;
  // A station less the first is two readings less each other.
  const sd = answer.sd && answer.sd.each * Math.SQRT2;
  const rows = answer.stations_mm.map((station, i) => [
    String(Number(station.toFixed(3))),
    figures(change[i]!, i === 0 ? undefined : sd),
  ]);
  return [
    alongSentence(answer),
    '',
    `range ${figures(sizes.range, answer.sd?.range)} ${unit}   end to end ${figures(sizes.ends, answer.sd?.ends)} ${unit}   ${figures(sizes.per_m, answer.sd?.per_m)} ${unit} for each metre`,
    ...(answer.over_bridge_um === undefined
      ? []
      : [`over the bridge ${answer.over_bridge_um.toFixed(1)} µm`]),
    '',
    table(['station, mm', `from the first, ${unit}`], rows),
    '',
    answer.sd ? '± is two sd.' : 'No doubt is known.',
    ...(answer.monte_carlo
      ? [
          `drawn      ${answer.monte_carlo.draws} times (seed ${answer.monte_carlo.seed}): range ${answer.monte_carlo.range.mean.toFixed(1)} ${unit}, sd ${answer.monte_carlo.range.sd.toFixed(2)}, 19 in 20 from ${answer.monte_carlo.range.low.toFixed(1)} to ${answer.monte_carlo.range.high.toFixed(1)} ${unit}`,
        ]
      : []),
    ...answer.warnings.map((warning) => `Look at: ${warning.text}`),
  ].join('\n');
}
