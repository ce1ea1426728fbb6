import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../adapters/solver/highs.ts';
import { jobFile } from '../contract/job-file.ts';
import { foldJob } from '../core/ledger/job.ts';
import { steerInput } from '../core/ledger/steer-input.ts';
import { answerJob } from './answer-job.ts';
import { steer } from './steer.ts';

const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
const job = foldJob(demo.entries);

describe('what is answered for a job', () => {
  it('is what steer answers for its rounds', async () => {
    const answer = await answerJob(job, solveWithHighs);
    expect(answer.seq).toBe(demo.entries.length);
    expect(answer.round).toBe(job.round);
    expect(answer.steer).toEqual(await steer(steerInput(job), solveWithHighs));
  });

  it('tells each round as it was known then: later rounds change nothing of it', async () => {
    const { rounds } = await answerJob(job, solveWithHighs);
    expect(rounds.map((one) => one.round)).toEqual([1, 2, 3, 4]);
    const closing = demo.entries.findIndex((entry) => entry.kind === 'round closed' && entry.round === 2);
    const before = foldJob(demo.entries.slice(0, closing));
    expect((await answerJob(before, solveWithHighs)).rounds).toEqual(rounds.slice(0, 2));
  });

  it('learns from round to round: the doubt of a pass falls', async () => {
    const { rounds } = await answerJob(job, solveWithHighs);
    const doubts = rounds.map((one) => one.removal[0]!.sd_um / one.removal[0]!.um);
    expect(doubts.at(-1)!).toBeLessThan(doubts[0]! / 2);
  });

  it('is silent before anything is measured', async () => {
    expect(await answerJob(foldJob(demo.entries.slice(0, 1)), solveWithHighs)).toEqual({
      seq: 1,
      rounds: [],
    });
  });
});
