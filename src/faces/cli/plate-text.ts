import { type TableColumn, tableColumns } from '../../core/quantity/table-column.ts';
import { told } from '../../core/quantity/told.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { sayWidth } from '../../shop/survey/line-sentence.ts';
import type { PlateAnswer } from '../../shop/survey/plate.ts';
import { plateSentence } from '../../shop/survey/plate-sentence.ts';
import { drawnText } from './line-draws.ts';
import { table } from './table.ts';

/** A surface as a sentence, both flatnesses, what holds them, closings, then point by point; what to look at last. */
export function plateText(answer: PlateAnswer, system: UnitSystem = 'metric'): string {
  const { length, size } = tableColumns(system);
  const words = told(system);
  const { flatness_um, sd, contacts, closures, stepped } = answer;
  const rows = answer.points.map(({ x_mm, y_mm }, i) => [
    length.figures(x_mm),
    length.figures(y_mm),
    size.figures(answer.residual_um[i]!, sd?.residual_um[i]),
    size.bare(answer.depth_um[i]!),
    ...(stepped ? [String(stepped.passes[i])] : []),
    contacts.find((one) => one.index === i)?.side ?? '',
  ]);
  const heads = [
    `x, ${length.unit}`,
    `y, ${length.unit}`,
    `least squares, ${size.unit}`,
    `take off, ${size.unit}`,
    ...(stepped ? ['passes'] : []),
    'zone',
  ];
  return [
    plateSentence(answer, system),
    '',
    `flatness   least squares ${sayWidth(flatness_um.least_squares, system, sd?.least_squares)}   minimum zone ${sayWidth(flatness_um.minimum_zone, system, sd?.minimum_zone)}   held by ${answer.pattern} (highs-lows)`,
    ...(stepped
      ? [
          `scraped    in passes of ${words.size(stepped.pass_um, { signed: false })}, ${stepped.passes.reduce((most, one) => Math.max(most, one), 0)} at most: ${words.size(stepped.after_um, { decimals: 1, signed: false })} left if every pass takes what it should`,
        ]
      : []),
    ...(closures.length
      ? [
          '',
          table(
            ['closing', size.unit],
            closures.map((one) => [one.name, closing(one, size)]),
          ),
        ]
      : []),
    ...(answer.monte_carlo
      ? [drawnText(answer.monte_carlo, 'minimum zone', answer.monte_carlo.minimum_zone, size)]
      : []),
    '',
    table(heads, rows),
    '',
    `Plus is proud. Take off: down to the lower plane of the minimum zone.${sd ? ' ± is two sd.' : ''}`,
    ...answer.warnings.map((warning) => `Look at: ${warning.text}`),
  ].join('\n');
}

const closing = (one: PlateAnswer['closures'][number], { figures }: TableColumn): string =>
  figures(one.closing_um, one.sd_um);
