import type { AcceptanceTest, ClassLimit } from './acceptance-test.ts';
import { type ChartLine, chartLine } from './chart-line.ts';
import { bandOf, type LimitBand, type Scaling } from './limit.ts';
import type { Result } from './result.ts';

/** First and final results by test; a local limit's under the test's id and {@link localSuffix}. */
export interface Results {
  readonly first?: Result;
  readonly final?: Result;
}

/** What a chart is made from. */
export interface ChartAsked {
  readonly groups: readonly string[];
  readonly tests: readonly AcceptanceTest[];
  readonly class: string;
  readonly scaling: Scaling;
  /** The machine's sizes, mm. */
  readonly dimensions: Readonly<Record<string, number>>;
  readonly results: Readonly<Record<string, Results>>;
  /** What a job worked to, by test. */
  readonly worked_to?: Readonly<Record<string, LimitBand>>;
}

/** Behind a test's id: its limit over a shorter length. */
export const localSuffix = ':local';

/** The tally of a chart. */
export interface Tally {
  readonly within: number;
  readonly outside: number;
  readonly 'not proven': number;
  readonly 'not measured': number;
}

/** The local limit of a machine of this size. */
export const localOf = (limit: ClassLimit, size_mm: number | undefined) =>
  limit.local?.find(
    (one) => one.up_to_mm === undefined || (size_mm !== undefined && size_mm <= one.up_to_mm),
  );

function linesOf(test: AcceptanceTest, asked: ChartAsked): ChartLine[] {
  const limit = test.limits[asked.class];
  if (!limit) return [];
  const { dimensions, results } = asked;
  const size = test.by === undefined ? undefined : dimensions[test.by];
  const { first, final } = results[test.id] ?? {};
  const length =
    (test.kind === 'slope' ? (final ?? first)?.over_mm : undefined) ??
    (typeof test.length === 'string' ? dimensions[test.length] : test.length) ??
    limit.over_mm;
  const worked = asked.worked_to?.[test.id];
  const { id, limits: _limits, length: _length, by: _by, feature: _feature, ...told } = test;
  const line = chartLine({
    ...told,
    id,
    band: bandOf(limit, asked.scaling, length, size),
    source: limit.source,
    ...(length === undefined ? {} : { over_mm: length }),
    ...(first ? { first } : {}),
    ...(final ? { final } : {}),
    ...(worked ? { worked_to: worked } : {}),
  });
  const local = localOf(limit, size);
  if (!local) return [line];
  const its = results[id + localSuffix] ?? {};
  const { plus: _plus, direction: _direction, ...plain } = told;
  return [
    line,
    chartLine({
      ...plain,
      id: id + localSuffix,
      name: `${test.name}, over any shorter length`,
      kind: 'size',
      band: { high: local.um },
      any_mm: local.any_mm,
      source: limit.source,
      ...its,
    }),
  ];
}

/** The lines of a chart, group by group, in the order of the tests. A test without a limit of this class has no line. */
export const chartLines = (asked: ChartAsked): ChartLine[] =>
  asked.groups.flatMap((group) =>
    asked.tests.filter((test) => test.group === group).flatMap((test) => linesOf(test, asked)),
  );

/** How many lines of each verdict. */
export function tally(lines: readonly ChartLine[]): Tally {
  const count = (verdict: ChartLine['verdict']): number =>
    lines.filter((line) => line.verdict === verdict).length;
  return {
    within: count('within'),
    outside: count('outside'),
    'not proven': count('not proven'),
    'not measured': count('not measured'),
  };
}
