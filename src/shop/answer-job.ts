import type { Job } from '../core/ledger/job.ts';
import { measured, steerInput } from '../core/ledger/steer-input.ts';
import type { SteerAnswer } from '../core/plan/answer.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import type { Solve } from '../core/plan/program.ts';
import { steer } from './steer.ts';

/** What the tool answers for a job as it stands. */
export interface JobAnswer {
  /** The ledger's place that was answered. */
  readonly seq: number;
  /** The round that the answer is about: the last that was measured, from 1; absent before anything was. */
  readonly round?: number;
  readonly steer?: SteerAnswer | NoAnswer;
}

/** Steers a job: the same computation as `steer` on its exported rounds. */
export async function answerJob(job: Job, solve: Solve): Promise<JobAnswer> {
  const input = steerInput(job);
  if (!input.rounds.some(measured)) return { seq: job.seq };
  return { seq: job.seq, round: input.rounds.length, steer: await steer(input, solve) };
}
