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

/** Results as they are being typed: they stand over the kept ones, line by line, first and final apart. */
const typedResults = z
  .array(z.looseObject({ test: z.string() }))
  .max(1000)
  .optional();
type Results = readonly (Readonly<Record<string, unknown>> & { readonly test: string })[];

export const chartHow = z.looseObject({
  typed: typedResults,
  units: z.enum(['metric', 'inch']).default('metric'),
  paper: z.enum(['a4', 'letter']).default('a4'),
});

/**
 * A chart's file with the units it is shown in and the paper it goes on.
 * @param kept  what a job's ledger holds of the chart; what is asked stands in its place, key by key, and kept results that no
 *              line of the chart takes are passed over
 * @throws BadInput  as {@link chartFile}; units or paper that there are not
 */
export function chartAsked(
  value: unknown,
  lists: readonly TestList[],
  kept?: Readonly<Record<string, unknown>>,
): ChartAskedFor {
  const { units, paper, typed, ...file } = checked(chartHow, value);
  if (!typed?.length) return { file: chartOver(kept, file, lists), units, paper };
  const results = typedOver((kept?.results ?? []) as Results, typed);
  return { file: chartOver({ ...kept, results }, file, lists), units, paper };
}

/** Kept results with typed ones over them. */
function typedOver(kept: Results, typed: Results): Results {
  const tests = [...new Set([...kept, ...typed].map((one) => one.test))];
  return tests.map((test) => ({
    ...kept.find((one) => one.test === test),
    ...typed.find((one) => one.test === test),
    test,
  }));
}

/**
 * What is asked of a chart in place of what a job's ledger holds of it, key by key. Kept results that no line of the chart takes
 * are passed over; asked ones are refused.
 * @throws BadInput
 */
export function chartOver(
  kept: Readonly<Record<string, unknown>> | undefined,
  asked: unknown,
  lists: readonly TestList[],
  named: { readonly list?: string; readonly class?: string } = {},
): ChartFile {
  if (!kept || asked === null || typeof asked !== 'object') return chartFile(asked, lists, named);
  // Another list, and nothing else said: what was put together for the kept one does not go with it.
  const other = named.list ?? (asked as { list?: unknown }).list;
  const goesWith = other === undefined || other === kept.list;
  const { machine, results } = kept;
  const base = goesWith ? kept : { ...(machine ? { machine } : {}), results };
  return chartFile({ ...base, ...asked }, lists, { ...named, passOver: !('results' in asked) });
}
