import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeDemo } from '../../demo/make-demo.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { jobFile, jobFileText } from '../../src/contract/job-file.ts';
import { foldJob } from '../../src/core/ledger/job.ts';
import { steerInput } from '../../src/core/ledger/steer-input.ts';
import { steer } from '../../src/shop/steer.ts';

const text = readFileSync('demo/saddle.job.json', 'utf8');

describe('the demo job', () => {
  const file = jobFile(JSON.parse(text));
  const job = foldJob(file.entries);

  it('says that it is invented, and that no metal was measured', () => {
    expect(job.plan.demo).toContain('Invented');
    expect(
      file.entries.some((entry) => entry.kind === 'note' && entry.text.includes('Nothing here was measured')),
    ).toBe(true);
  });

  it('stands in its fourth round, measured and printed, with a plan waiting', async () => {
    expect(job.round).toBe(4);
    const input = steerInput(job);
    expect(input.rounds).toHaveLength(4);
    for (const round of input.rounds.slice(0, 3)) expect(round.scraped).toBeDefined();
    for (const round of input.rounds) {
      expect(round.sweeps.length).toBeGreaterThan(0);
      expect(round.print).toBeDefined();
    }
    const answer = await steer(input, solveWithHighs);
    if (!answer.ok) throw new Error(answer.text);
    expect(answer.plan.action).not.toBe('stop');
    expect(answer.plan.zones.reduce((sum, zone) => sum + zone.passes_now, 0)).toBeGreaterThan(0);
  });

  it('is typed as a person types, and what was taken back stays in the ledger', () => {
    const typed = file.entries.flatMap((entry) => (entry.kind === 'sweep taken' ? entry.readings : []));
    expect(typed.every((reading) => /^(0|[+-]\d+(\.5)?)$/.test(reading.typed))).toBe(true);
    expect(file.entries.some((entry) => entry.kind === 'undone')).toBe(true);
  });

  it('its first round comes out the same when it is made again; later rounds follow the planner (node demo/write.mjs)', async () => {
    const { file: again } = await makeDemo((input) => steer(input, solveWithHighs));
    const untilLifted = (entries: typeof file.entries) =>
      entries.slice(
        0,
        entries.findIndex((entry) => entry.kind === 'part turned over'),
      );
    expect(untilLifted(again.entries)).toEqual(untilLifted(file.entries));
    expect(untilLifted(file.entries).length).toBeGreaterThan(4);
    expect(text).toBe(jobFileText(file));
  });
});
