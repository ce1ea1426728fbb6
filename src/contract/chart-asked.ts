import { z } from 'zod';
import type { TestList } from '../core/chart/acceptance-test.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { type ChartFile, chartFile } from './chart.ts';
import { checked } from './refusal.ts';

/** A chart as it is asked for over HTTP. */
export interface ChartAskedFor {
  readonly file: ChartFile;
  readonly units: UnitSystem;
  readonly paper: 'a4' | 'letter';
}

const how = z.looseObject({
  units: z.enum(['metric', 'inch']).default('metric'),
  paper: z.enum(['a4', 'letter']).default('a4'),
});

/**
 * A chart's file with the units it is shown in and the paper it goes on.
 * @throws BadInput  as {@link chartFile}; units or paper that there are not
 */
export function chartAsked(value: unknown, lists: readonly TestList[]): ChartAskedFor {
  const { units, paper, ...file } = checked(how, value);
  return { file: chartFile(file, lists), units, paper };
}
