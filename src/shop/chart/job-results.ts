import { rise } from '../../core/body/displacement.ts';
import type { Feature, Target } from '../../core/body/feature.ts';
import type { AcceptanceTest } from '../../core/chart/acceptance-test.ts';
import type { Results } from '../../core/chart/chart.ts';
import { type ChartLine, chartLine } from '../../core/chart/chart-line.ts';
import type { LimitBand } from '../../core/chart/limit.ts';
import type { Result } from '../../core/chart/result.ts';
import type { Job } from '../../core/ledger/job.ts';
import { roundRecord } from '../../core/ledger/round-record.ts';
import type { FeatureAnswer } from '../../core/plan/answer.ts';
import type { JobAnswer } from '../answer-job.ts';
import type { BenchJob, ChartFrom } from './bench-jobs.ts';

/** How a job's feature becomes µm: a turn as its fall over a length, a shift as it is. */
const inMicrons = (feature: Feature, value: number, over_mm: number): number =>
  feature.kind === 'turn' ? rise(value, over_mm) : value;

/** What repeated readings would not lower: the doubt of the reference face that was not turned over, two sd, in the feature's unit. */
function sharedDoubt(job: Job, feature: Feature, round: number): number {
  const { taken } = roundRecord(job.live, round);
  if (feature.kind !== 'turn') return 0;
  const faces = job.plan.setups.flatMap((setup) => {
    if (setup.kind !== 'sweep' || !setup.tells.includes(feature.name) || !taken[setup.id]?.length) return [];
    return taken[setup.id]!.some((one) => one.record.turned_over || one.bar)
      ? [0]
      : [2 * setup.face_slope_sd_urad];
  });
  return faces.length ? Math.min(...faces) : 0;
}

/** How many times the round's set-ups told of the feature. */
function readingsOf(job: Job, feature: string, round: number): number {
  const { taken } = roundRecord(job.live, round);
  return job.plan.setups
    .filter((setup) => setup.tells[0] === feature)
    .reduce((sum, setup) => sum + (taken[setup.id]?.length ?? 0), 0);
}

function resultOf(job: Job, feature: Feature, known: FeatureAnswer, round: number, over_mm: number): Result {
  const um = (value: number): number => inMicrons(feature, value, over_mm);
  const doubt = um(2 * known.sd);
  return {
    value_um: um(known.value),
    doubt_um: doubt,
    shared_um: Math.min(doubt, um(sharedDoubt(job, feature, round))),
    readings: Math.max(1, readingsOf(job, feature.name, round)),
    ...(feature.kind === 'turn' ? { over_mm } : {}),
  };
}

/**
 * A job's feature as first and final result: as its first measured round knew it, and as its last does. A job measured in one
 * round only has been found, not finished, so it has no final result.
 */
export function featureResults(job: Job, answer: JobAnswer, feature: Feature, over_mm: number): Results {
  const seen = answer.rounds.flatMap(({ round, features }) => {
    const known = features.find((one) => one.name === feature.name);
    return known ? [{ round, known }] : [];
  });
  const [first] = seen;
  const last = seen.at(-1);
  if (!first || !last) return {};
  const result = (one: { round: number; known: FeatureAnswer }): Result =>
    resultOf(job, feature, one.known, one.round, over_mm);
  return last === first ? { first: result(first) } : { first: result(first), final: result(last) };
}

const bandIn = (feature: Feature, target: Target, over_mm: number): LimitBand => ({
  low: inMicrons(feature, target.low, over_mm),
  high: inMicrons(feature, target.high, over_mm),
});

/** The job that measured a line, and in which rounds it saw it first and last. */
export interface BenchTrace {
  readonly job: string;
  /** The step whose bench it is, by title. */
  readonly step?: string;
  readonly first_round: number;
  readonly last_round: number;
}

function traceOf({ id, step, answer }: BenchJob, feature: string): BenchTrace | undefined {
  const seen = answer.rounds.filter((one) => one.features.some((known) => known.name === feature));
  const [first] = seen;
  if (!first) return undefined;
  return {
    job: id,
    ...(step === undefined ? {} : { step }),
    first_round: first.round,
    last_round: seen.at(-1)!.round,
  };
}

/** What a job tells of a list's tests: results, and the limits it worked to, by test. */
export interface JobTold {
  readonly results: Readonly<Record<string, Results>>;
  /** Where each measured line's results come from, by line: of the list and of the job's own. */
  readonly traces: Readonly<Record<string, BenchTrace>>;
  readonly worked_to: Readonly<Record<string, LimitBand>>;
  /** Features with a target that no test of the list asks for: lines of the job's own. */
  readonly own: readonly ChartLine[];
}

/**
 * A job's features beside a list's tests.
 * @param is_bench  of a machine whose benches are jobs of their own: its own lines stand under the step, and know the bench
 * @param taken     tests that another bench answers: the feature becomes a line of the bench's own
 */
function benchTold(
  bench: BenchJob,
  tests: readonly AcceptanceTest[],
  cls: string,
  is_bench: boolean,
  taken: ReadonlySet<string>,
): JobTold {
  const { job, answer, id, step } = bench;
  const results: Record<string, Results> = {};
  const worked: Record<string, LimitBand> = {};
  const traces: Record<string, BenchTrace> = {};
  const own: ChartLine[] = [];
  for (const feature of job.plan.features) {
    const words = job.plan.words.find((one) => one.feature === feature.name);
    const target = job.plan.targets.find((one) => one.feature === feature.name);
    const trace = traceOf(bench, feature.name);
    const asking = tests.filter(
      (test) => test.feature === feature.name && test.limits[cls] && !taken.has(test.id),
    );
    for (const test of asking) {
      const over_mm = test.limits[cls]!.over_mm ?? words?.span_mm ?? 300;
      results[test.id] = featureResults(job, answer, feature, over_mm);
      if (trace) traces[test.id] = trace;
      if (target) worked[test.id] = bandIn(feature, target, over_mm);
    }
    if (asking.length || !target) continue;
    const over_mm = words?.span_mm ?? 300;
    const setup = job.plan.setups.find((one) => one.tells.includes(feature.name));
    const line = is_bench ? `job:${id}:${feature.name}` : `job:${feature.name}`;
    if (trace) traces[line] = trace;
    own.push(
      chartLine({
        id: line,
        group:
          is_bench && step !== undefined
            ? `${step}, as its bench measured it`
            : `The ${job.plan.slide.name}, as this job measured it`,
        name: feature.name.charAt(0).toUpperCase() + feature.name.slice(1),
        kind: feature.kind === 'turn' ? 'slope' : 'size',
        plus: words?.plus ?? 'plus',
        how: setup
          ? `${setup.name}: rides ${setup.rides_words} Touches ${setup.touches_words}`
          : 'by the job’s own set-ups',
        band: bandIn(feature, target, over_mm),
        ...(feature.kind === 'turn' ? { over_mm } : {}),
        source: { came: "shop's own", words: 'the limits this job worked to' },
        minutes: 20,
        ...featureResults(job, answer, feature, over_mm),
      }),
    );
  }
  return { results, worked_to: worked, traces, own };
}

const isMeasured = (results: Results | undefined): boolean =>
  results?.first !== undefined || results?.final !== undefined;

/**
 * What a job tells of a list's tests, and of a whole machine all its benches together. Where two benches measured what one test
 * asks for, the one later in the order of work answers it, since nothing was scraped after; the other keeps its line.
 */
export function jobTold({ own, benches }: ChartFrom, tests: readonly AcceptanceTest[], cls: string): JobTold {
  const taken = new Set<string>();
  const results: Record<string, Results> = {};
  const worked: Record<string, LimitBand> = {};
  const traces: Record<string, BenchTrace> = {};
  const lines: ChartLine[] = [];
  for (const bench of [own, ...benches].toReversed()) {
    const its = benchTold(bench, tests, cls, bench !== own, taken);
    for (const [test, found] of Object.entries(its.results)) {
      if (results[test] && !isMeasured(found)) continue;
      results[test] = found;
      const band = its.worked_to[test];
      if (band) worked[test] = band;
      if (isMeasured(found)) taken.add(test);
    }
    Object.assign(traces, its.traces);
    lines.unshift(...its.own);
  }
  return { results, worked_to: worked, traces, own: lines };
}
