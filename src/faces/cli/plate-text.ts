import { say } from '../../core/quantity/say.ts';
import { sayWidth } from '../../shop/survey/line-sentence.ts';
import type { PlateAnswer } from '../../shop/survey/plate.ts';
import { plateSentence } from '../../shop/survey/plate-sentence.ts';
import { drawnText } from './line-draws.ts';
import { figures } from './line-text.ts';
import { table } from './table.ts';

const place = (mm: number): string => String(Number(mm.toFixed(3)));

/** A surface as a sentence, both flatnesses, what holds them, closings, then point by point; what to look at last. */
export function plateText(answer: PlateAnswer): string {
  const { flatness_um, sd, contacts, closures, stepped } = answer;
  const rows = answer.points.map(({ x_mm, y_mm }, i) => [
    place(x_mm),
    place(y_mm),
    figures(answer.residual_um[i]!, sd?.residual_um[i]),
    answer.depth_um[i]!.toFixed(1),
    ...(stepped ? [String(stepped.passes[i])] : []),
    contacts.find((one) => one.index === i)?.side ?? '',
  ]);
  const heads = [
    'x, mm',
    'y, mm',
    'least squares, µm',
    'take off, µm',
    ...(stepped ? ['passes'] : []),
    'zone',
  ];
  return [
    plateSentence(answer),
    '',
    `flatness   least squares ${sayWidth(flatness_um.least_squares, 'metric', sd?.least_squares)}   minimum zone ${sayWidth(flatness_um.minimum_zone, 'metric', sd?.minimum_zone)}   held by ${answer.pattern} (highs-lows)`,
    ...(stepped
      ? [
          `scraped    in passes of ${stepped.pass_um} µm, ${stepped.passes.reduce((most, one) => Math.max(most, one), 0)} at most: ${stepped.after_um.toFixed(1)} µm left if every pass takes what it should`,
        ]
      : []),
    ...(closures.length
      ? [
          '',
          table(
            ['closing', 'µm'],
            closures.map((one) => [one.name, closing(one)]),
          ),
        ]
      : []),
    ...(answer.monte_carlo ? [drawnText(answer.monte_carlo, answer.monte_carlo.minimum_zone)] : []),
    '',
    table(heads, rows),
    '',
    `Plus is proud. Take off: down to the lower plane of the minimum zone.${sd ? ' ± is two sd.' : ''}`,
    ...answer.warnings.map((warning) => `Look at: ${warning.text}`),
  ].join('\n');
}

function closing(one: PlateAnswer['closures'][number]): string {
  const said = say(one.closing_um, '', {
    decimals: 1,
    ...(one.sd_um === undefined ? {} : { sd: one.sd_um }),
  });
  return `${said.sign}${said.number}${said.doubt === undefined ? '' : ` ±${said.doubt}`}`;
}
