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

/** How a job's feature becomes µm: a turn as its fall over a length, a shift as it is. */
const inMicrons = (feature: Feature, value: number, over_mm: number): number =>
  feature.kind === 'turn' ? rise(value, over_mm) : value;

/** What repeated readings would not lower: the doubt of the reference face that was not turned over, two sd, in the feature's unit. */
function sharedDoubt(job: Job, feature: Feature, round: number): number {
  const { taken } = roundRecord(job.live, round);
  if (feature.kind !== 'turn') return 0;
  const faces = job.plan.setups.flatMap((setup) => {
    if (setup.kind !== 'sweep' || !setup.tells.includes(feature.name) || !taken[setup.id]?.length) return [];
    return taken[setup.id]!.some((one) => one.record.turned_over) ? [0] : [2 * setup.face_slope_sd_urad];
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

/** What a job tells of a list's tests: results, and the limits it worked to, by test. */
export interface JobTold {
  readonly results: Readonly<Record<string, Results>>;
  readonly worked_to: Readonly<Record<string, LimitBand>>;
  /** Features with a target that no test of the list asks for: lines of the job's own. */
  readonly own: readonly ChartLine[];
}

/** A job's features beside a list's tests. */
export function jobTold(job: Job, answer: JobAnswer, tests: readonly AcceptanceTest[], cls: string): JobTold {
  const results: Record<string, Results> = {};
  const worked: Record<string, LimitBand> = {};
  const own: ChartLine[] = [];
  for (const feature of job.plan.features) {
    const words = job.plan.words.find((one) => one.feature === feature.name);
    const target = job.plan.targets.find((one) => one.feature === feature.name);
    const asking = tests.filter((test) => test.feature === feature.name && test.limits[cls]);
    for (const test of asking) {
      const over_mm = test.limits[cls]!.over_mm ?? words?.span_mm ?? 300;
      results[test.id] = featureResults(job, answer, feature, over_mm);
      if (target) worked[test.id] = bandIn(feature, target, over_mm);
    }
    if (asking.length || !target) continue;
    const over_mm = words?.span_mm ?? 300;
    const setup = job.plan.setups.find((one) => one.tells.includes(feature.name));
    own.push(
      chartLine({
        id: `job:${feature.name}`,
        group: `The ${job.plan.slide.name}, as this job measured it`,
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
  return { results, worked_to: worked, own };
}
