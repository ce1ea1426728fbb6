import { plain } from '../../core/quantity/show.ts';
import { bandRule, bandSource, bandWorked, type Worked } from '../worked.ts';
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
      return [
        {
          what,
          formula: bandRule,
          worked: bandWorked(value, doubt, line, unit, line.verdict),
          source: bandSource,
        },
      ];
    }),
  );
