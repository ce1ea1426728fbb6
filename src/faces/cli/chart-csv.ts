import Papa from 'papaparse';
import type { ChartReport } from '../../shop/chart/chart-report.ts';

/** The chart for a spreadsheet: one row a line, numbers as numbers in the unit of their own column. */
export function chartCsv(report: ChartReport): string {
  const rows = report.groups
    .flatMap((group) => group.lines)
    .map((line) => ({
      line: line.number,
      test: line.id,
      group: line.group,
      name: line.name,
      curve: line.curve ?? '',
      plus_is: line.plus_text?.replace(/^\+ means /, '') ?? '',
      unit: line.unit_text.replaceAll('\u00a0', ' '),
      low: line.low ?? '',
      high: line.high ?? '',
      first: line.first?.value ?? '',
      first_doubt_2sd: line.first?.doubt ?? '',
      final: line.is_final ? (line.now?.value ?? '') : '',
      final_doubt_2sd: line.is_final ? (line.now?.doubt ?? '') : '',
      verdict: line.verdict,
      note: line.note ?? '',
      limit_from: line.source_text,
      measured_by: line.bench?.text ?? '',
    }));
  return `${Papa.unparse(rows, { newline: '\n', escapeFormulae: true })}\n`;
}
