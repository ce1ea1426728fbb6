import type { ChartFile } from '../../contract/chart.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { ChartFrom } from './bench-jobs.ts';
import { type ChartReport, chartReport } from './chart-report.ts';
import { jobTold } from './job-results.ts';

/** A list of tests as it is offered: what it is for, its classes and the machine's sizes. */
export type ListOffered = Pick<TestList, 'id' | 'machine' | 'about' | 'classes' | 'dimensions'>;

export const listOffered = ({ id, machine, about, classes, dimensions }: TestList): ListOffered => ({
  id,
  machine,
  about,
  classes,
  dimensions,
});

/** A chart for a screen where results are typed. */
export interface ChartAnswer {
  readonly report: ChartReport;
  /** Ids of lines that the job itself measured: nothing is typed there. */
  readonly by_job: readonly string[];
}

/** A job's chart, and which of its lines the job itself or one of its benches answers. */
export function chartAnswer(file: ChartFile, from: ChartFrom, system: UnitSystem): ChartAnswer {
  const { results, own } = jobTold(from, file.tests, file.class);
  const measured = Object.keys(results).filter((test) => results[test]?.first || results[test]?.final);
  return {
    report: chartReport(file, from, system),
    by_job: [...measured, ...own.map((line) => line.id)],
  };
}
