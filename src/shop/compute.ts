import type { KitQuestion } from '../contract/kit.ts';
import type { PartsAsk } from '../contract/parts.ts';
import type { SiteAsk } from '../contract/site.ts';
import type { SumQuestion } from '../contract/sums.ts';
import type { Entry } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { SteerAnswer } from '../core/plan/answer.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import type { Solve } from '../core/plan/program.ts';
import type { RestInput } from '../core/rest/rest.ts';
import type { AlongInput } from '../core/survey/along.ts';
import type { LineInput } from '../core/survey/line-input.ts';
import type { PlateInput } from '../core/survey/plate-input.ts';
import { answerJob, type JobAnswer } from './answer-job.ts';
import { type KitReport, kitReport } from './kit/kit-report.ts';
import { type PartsAnswer, parts } from './parts.ts';
import {
  measurePractice,
  type PracticeMeasured,
  type PracticePrinted,
  type PracticeTruth,
  printPractice,
  truthOfPractice,
} from './practise/practice-job.ts';
import { practiceOf } from './practise/practice-of.ts';
import { type Rested, rest } from './rest.ts';
import { type SiteAnswer, site } from './site.ts';
import { steer } from './steer.ts';
import { type SumAnswer, sumAnswer } from './sums/sum-answer.ts';
import { type AlongAnswer, along } from './survey/along.ts';
import { type LineAnswer, line } from './survey/line.ts';
import { type PlateAnswer, plate } from './survey/plate.ts';

/** The heavy questions, as data, so that they can be asked of another thread. */
export interface Questions {
  readonly steer: { readonly ask: SteerInput; readonly answer: SteerAnswer | NoAnswer };
  readonly rest: { readonly ask: RestInput; readonly answer: Rested | NoAnswer };
  readonly site: { readonly ask: SiteAsk; readonly answer: SiteAnswer | NoAnswer };
  readonly parts: { readonly ask: PartsAsk; readonly answer: PartsAnswer | NoAnswer };
  readonly line: { readonly ask: LineInput; readonly answer: LineAnswer };
  readonly along: { readonly ask: AlongInput; readonly answer: AlongAnswer };
  readonly plate: { readonly ask: PlateInput; readonly answer: PlateAnswer };
  readonly kit: { readonly ask: KitQuestion; readonly answer: KitReport };
  readonly sum: { readonly ask: SumQuestion; readonly answer: SumAnswer };
  /** Undefined: the job is of a real part. */
  readonly 'practice measure': {
    readonly ask: PracticeAsk & { readonly repeat: number };
    readonly answer: PracticeMeasured | undefined;
  };
  readonly 'practice print': { readonly ask: PracticeAsk; readonly answer: PracticePrinted | undefined };
  readonly 'practice truth': {
    readonly ask: readonly Entry[];
    readonly answer: PracticeTruth | undefined;
  };
  readonly job: { readonly ask: readonly Entry[]; readonly answer: JobAnswer };
}

/** A practice job and the round that is measured or printed. */
interface PracticeAsk {
  readonly entries: readonly Entry[];
  readonly round: number;
}

/** Answers a heavy question somewhere that does not hold up whoever asks; one that is stopped is worked on no longer where that can be. */
export type Compute = <K extends keyof Questions>(
  kind: K,
  ask: Questions[K]['ask'],
  stop?: AbortSignal,
) => Promise<Questions[K]['answer']>;

/** Answers them here and now. */
export const computeWith =
  (solve: Solve): Compute =>
  async (kind, ask) => {
    const answers: { [K in keyof Questions]: (ask: Questions[K]['ask']) => unknown } = {
      steer: (input) => steer(input, solve),
      rest: (input) => rest(input),
      site: (input) => site(input),
      parts: (input) => parts(input),
      line: (input) => line(input),
      along: (input) => along(input),
      plate: (input) => plate(input),
      kit: (question) => kitReport(question),
      sum: (question) => sumAnswer(question),
      'practice measure': ({ entries, round, repeat }) => {
        const job = foldJob(entries);
        const record = practiceOf(job);
        return record && measurePractice(job, record, round, repeat);
      },
      'practice print': ({ entries, round }) => {
        const job = foldJob(entries);
        const record = practiceOf(job);
        return record && printPractice(job, record, round);
      },
      'practice truth': (entries) => {
        const job = foldJob(entries);
        const record = practiceOf(job);
        return record && truthOfPractice(job, record);
      },
      job: (entries) => answerJob(foldJob(entries), solve),
    };
    return (await answers[kind](ask as never)) as never;
  };
