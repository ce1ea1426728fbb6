import { estimateSlide } from '../core/estimate/estimate-slide.ts';
import type { SlideEstimate } from '../core/estimate/slide-estimate.ts';
import type { Job } from '../core/ledger/job.ts';
import { measured, steerInput } from '../core/ledger/steer-input.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { FeatureAnswer, RemovalAnswer, SteerAnswer } from '../core/plan/answer.ts';
import { featureAnswer } from '../core/plan/answers.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import type { Solve } from '../core/plan/program.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { steerFrom } from './steer.ts';

/** What was known once a round was measured, with nothing from later ones. */
export interface RoundHistory {
  /** From 1. */
  readonly round: number;
  /** The features that anything up to then had seen. */
  readonly features: readonly FeatureAnswer[];
  readonly removal: readonly RemovalAnswer[];
}

/** What the tool answers for a job as it stands. */
export interface JobAnswer {
  /** The ledger's place that was answered. */
  readonly seq: number;
  /** The round that the answer is about: the last that was measured, from 1; absent before anything was. */
  readonly round?: number;
  /** Every measured round, oldest first. */
  readonly rounds: readonly RoundHistory[];
  readonly steer?: SteerAnswer | NoAnswer;
}

/** The measured rounds of a job, each as it was known when it was measured. */
export function roundHistory(input: SteerInput, estimate: SlideEstimate): RoundHistory[] {
  return estimate.rounds.flatMap(({ round, features, removal }) => {
    if (!measured(input.rounds[round]!)) return [];
    return [
      {
        round: round + 1,
        features: features.flatMap((feature) =>
          feature.seen ? [featureAnswer(feature.name, feature.value, feature.sd, input.targets)] : [],
        ),
        removal: removal.map(({ material, whole_um, whole_sd_um }) => ({
          material,
          um: whole_um,
          sd_um: whole_sd_um,
        })),
      },
    ];
  });
}

/**
 * Steers a job: the same computation as `steer` on its exported rounds, with every round before beside it.
 * @param system  units of the warnings
 */
export async function answerJob(job: Job, solve: Solve, system: UnitSystem = 'metric'): Promise<JobAnswer> {
  const input = steerInput(job);
  if (!input.rounds.some(measured)) return { seq: job.seq, rounds: [] };
  const estimate = estimateSlide(input);
  return {
    seq: job.seq,
    round: input.rounds.length,
    rounds: roundHistory(input, estimate),
    steer: await steerFrom(input, estimate, solve, system),
  };
}
