import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { jobFile } from '../../contract/job-file.ts';
import { foldJob } from '../../core/ledger/job.ts';
import { roundRecord } from '../../core/ledger/round-record.ts';
import { answerJob } from '../answer-job.ts';
import { jobAccount } from './job-account.ts';

const jobOf = (name: string) =>
  foldJob(jobFile(JSON.parse(readFileSync(`demo/${name}.job.json`, 'utf8'))).entries);
const bare = (text: string): string => text.replace(/[\u00a0\u2009\u202f]/g, ' ');
const saddle = jobOf('saddle');
const mill = jobOf('mill');

describe('what a bench tells whoever keeps the chart', () => {
  it('draws the first and the last sweep with the readings as they were taken, in the units of the paper', async () => {
    const answer = await answerJob(saddle, solveWithHighs);
    const { sweeps } = jobAccount(saddle, answer, 'metric');
    expect(sweeps.map((one) => [one.round, one.when])).toEqual([
      [1, 'as found'],
      [4, 'last'],
    ]);
    const card = saddle.plan.setups.find((one) => one.name === sweeps[0]!.name)!;
    const taken = roundRecord(saddle.live, 1).taken[card.id]![0]!;
    const sign = taken.record.push === 'fell' ? -1 : 1;
    expect(sweeps[0]!.plot.points.map((one) => one.value)).toEqual(
      taken.readings.map((one) => sign * one.value + 0),
    );
    const [inch] = jobAccount(saddle, answer, 'inch').sweeps;
    // 25.4 µm is a thou, 25.4 mm an inch.
    inch!.plot.points.forEach((point, k) => {
      expect(point.value * 25.4).toBeCloseTo(sweeps[0]!.plot.points[k]!.value, 9);
      expect(point.at * 25.4).toBeCloseTo(sweeps[0]!.plot.points[k]!.at, 9);
    });
    expect(inch!.plot.y_name).toContain('thou');
  });

  it('says what faces come out as: the cross ways’ tilt over the radius, its doubt two sd, and as planned', async () => {
    const answer = await answerJob(saddle, solveWithHighs);
    const { parts } = jobAccount(saddle, answer, 'metric');
    const facing = answer.steer?.ok && answer.steer.estimate.features.find((one) => one.name === 'facing');
    const [face] = parts!.drawn;
    if (!facing || face?.kind !== 'profile') throw new Error('expected a face');
    // A square out by so many µrad makes a cone: µrad · 0.1 m = µm at the centre; a hollow is drawn down.
    expect(face.value.at(-1)).toBeCloseTo(-facing.value * 0.1, 9);
    expect(face.doubt.at(-1)).toBeCloseTo(2 * facing.sd * 0.1, 9);
    expect(face.planned).toHaveLength(face.value.length);
    expect(bare(parts!.texts[0]!)).toMatch(/^Faces come out .+ over 100 mm/);
  });

  it('says what a block comes out as on a mill, in inches without a metric figure', async () => {
    const answer = await answerJob(mill, solveWithHighs);
    const { parts } = jobAccount(mill, answer, 'inch');
    expect(bare(parts!.texts[0]!)).toMatch(
      /^A block of .+ in × .+ in × .+ in, cut all over in one setting\./,
    );
    expect(bare(parts!.texts.join(' '))).not.toMatch(/\d\s?(mm|µm)\b/);
    expect(parts!.drawn.length).toBeGreaterThan(0);
  });
});
