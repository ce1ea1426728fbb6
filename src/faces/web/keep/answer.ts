import type { FeatureAnswer, SteerAnswer } from '../../../core/plan/answer.ts';
import type { NoAnswer } from '../../../core/plan/problem.ts';

/** What the server answers for a job. */
export interface JobAnswer {
  readonly seq: number;
  readonly rounds: readonly { readonly round: number; readonly features: readonly FeatureAnswer[] }[];
  readonly steer: SteerAnswer | NoAnswer;
}
