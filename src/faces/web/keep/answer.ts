import type { FeatureAnswer } from '../../../core/plan/answer.ts';
import type { JobAnswer as Answered } from '../../../shop/answer-job.ts';

/** What the server answers for a job; features round by round when it tells them. */
export type JobAnswer = Answered & {
  readonly rounds?: readonly { readonly round: number; readonly features: readonly FeatureAnswer[] }[];
};
