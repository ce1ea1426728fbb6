import { plain } from '../../core/quantity/show.ts';
import type { Worked } from '../worked.ts';
import type { ChartReport } from './chart-report.ts';

const n = (value: number): string => plain(value, 6);

/** How each measured line's verdict comes about: value less and plus its doubt against its limits, in the unit that is shown. */
export const chartWorking = (report: ChartReport): Worked[] =>
  report.groups.flatMap((group) =>
    group.lines.flatMap((line): Worked[] => {
      const shown = line.now ?? line.first;
      if (!shown) return [];
      const { value, doubt } = shown;
      const what = `${line.number} ${line.name}${line.bench ? ` (${line.bench.text})` : ''}`;
      const unit = line.unit_text.replace(/\u00a0/g, ' ');
      if (doubt === undefined)
        return [
          {
            what,
            formula: 'nothing is proven without a doubt',
            worked: `${n(value)} ${unit}: ${line.verdict}`,
          },
        ];
      const low =
        line.low === undefined
          ? ''
          : `${n(line.low)} against ${n(value)} − ${n(doubt)} = ${n(value - doubt)}`;
      const high =
        line.high === undefined
          ? ''
          : `${n(value)} + ${n(doubt)} = ${n(value + doubt)} against ${n(line.high)}`;
      return [
        {
          what,
          formula: 'within: low ≤ value − doubt and value + doubt ≤ high; outside: wholly beyond one of them',
          worked: `${[low, high].filter((one) => one !== '').join('; ')} ${unit}: ${line.verdict}`,
          source: 'ISO 14253-1’s rule: the doubt counts against whoever makes the statement',
        },
      ];
    }),
  );
