import type { ChartReport } from '../../shop/chart/chart-report.ts';
import type { LineShown } from '../../shop/chart/line-shown.ts';
import { table } from './table.ts';

const cells = (line: LineShown): string[] => [
  String(line.number),
  line.name,
  line.limit_text,
  line.unit_text,
  line.first?.text ?? 'not taken',
  line.is_final || !line.first ? (line.now?.text ?? 'not taken') : 'as found',
  line.verdict,
];

/** The chart as tables: a table of each group, what is still to be proven, and how it was judged. */
export function chartText(report: ChartReport): string {
  const heads = ['', 'line', 'limit', 'unit', 'as found', 'now', 'verdict'];
  return [
    `Acceptance chart: ${report.title}${report.note === undefined ? '' : ` (${report.note})`}`,
    ...report.facts.map(([key, value]) => `${key}: ${value}`),
    '',
    report.sentence,
    ...report.groups.flatMap((group) => [
      '',
      group.name,
      table(heads, group.lines.map(cells)),
      ...notes(group.lines),
    ]),
    ...(report.remaining.length
      ? [
          '',
          'Still to be proven, the least work first',
          table(
            ['line', 'what', 'minutes', 'what settles it'],
            report.remaining.map((one) => [
              String(one.number),
              one.name,
              one.minutes === undefined ? '' : `about ${one.minutes}`,
              one.text,
            ]),
          ),
        ]
      : []),
    '',
    'Where the limits come from',
    ...report.sources.map((source) => `  ${source}`),
    ...(report.scaling === undefined ? [] : [`  ${report.scaling}`]),
    ...(report.left_out.length ? ['', 'Left out', ...report.left_out.map((one) => `  ${one}`)] : []),
    '',
    ...report.rules,
    ...report.cautions,
  ].join('\n');
}

/** What plus means, which way is permitted and why, and how far out: below each table. */
function notes(lines: readonly LineShown[]): string[] {
  return lines.flatMap((line) => {
    const parts = [
      line.plus_text,
      line.direction && `${line.direction.allowed} (${line.direction.reason})`,
      line.worked_to_text && `worked to ${line.worked_to_text}`,
      line.verdict === 'outside' ? line.note : undefined,
      line.bench?.text,
    ].filter((one) => one !== undefined);
    return parts.length ? [`  ${line.number}: ${parts.join('; ')}`] : [];
  });
}
