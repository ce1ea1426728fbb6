import { describe, expect, it } from 'vitest';
import { written } from '../../../tests/fixture/invented-job.ts';
import { jobFile } from '../../contract/job-file.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Deed } from '../../core/ledger/entry.ts';
import { foldJob } from '../../core/ledger/job.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import { taskInput } from '../../core/practice/loop.ts';
import { practiceMachine } from '../../core/practice/machine.ts';
import { dialOf, type PracticeRecord, practiceTask } from '../../core/practice/record.ts';
import { practiceSlides } from '../../core/practice/slides.ts';
import { madeBefore, measurePractice, printPractice, truthOfPractice } from './practice-job.ts';
import { practiceOf } from './practice-of.ts';
import { practicePlan } from './practice-plan.ts';

const record: PracticeRecord = { slide: 'V and flat', material: 'iron', level: 'usual', seed: 4, slips: [] };
const begun = (of: PracticeRecord = record): Deed[] => [
  { kind: 'job made', plan: practicePlan(of, 'Practice') },
  { kind: 'practice begun', ...of },
];
const zones = (value: 0 | 1) => ({
  'front flank': Array<number>(8).fill(value),
  'rear flank': Array<number>(8).fill(value),
  flat: Array<number>(8).fill(0),
});
const pass = (round: number, k: number, value: 0 | 1 = 1): Deed => ({
  kind: 'pass made',
  round,
  pass: k,
  zones: zones(value),
});
const closed = (round: number): Deed => ({ kind: 'round closed', round });
const jobOf = (...deeds: Deed[]) => foldJob(written([...begun(), ...deeds]));

/** A round read as it is shown, every reading kept as it was typed. */
function readRound(job: ReturnType<typeof jobOf>, of: PracticeRecord, round: number): Deed[] {
  return [
    ...measurePractice(job, of, round).setups.map((shown): Deed => {
      const readings = shown.values.map((value) => ({ typed: `${value}`, value }));
      const at = { round, setup: shown.setup };
      return shown.push
        ? { kind: 'sweep taken', ...at, record: { push: shown.push }, readings }
        : { kind: 'level read', ...at, record: {}, reading: readings[0]! };
    }),
    { kind: 'print read', round, share: printPractice(job, of, round).share },
  ];
}

describe('a practice machine as a job', () => {
  it.each(Object.keys(practiceSlides))('%s: its plan asks of steer what the simulated loop asks', (slide) => {
    const of: PracticeRecord = { ...record, slide };
    const job = foldJob(written(begun(of)));
    const asked = steerInput(foldJob(written([...begun(of), ...readRound(job, of, 1)])));
    const machine = practiceMachine(practiceTask(of), of.seed);
    const loop = taskInput(practiceTask(of), [{ ...machine.measure(), print: machine.print() }]);
    expect(asked.targets).toEqual(loop.targets);
    expect(asked.features).toEqual(loop.features);
    expect(asked.passes).toEqual(loop.passes);
    expect(asked.slide.pads).toEqual(loop.slide.pads);
    for (const [pad, shares] of Object.entries(loop.rounds[0]!.print!))
      expect(asked.rounds[0]!.print![pad]).toEqual(shares.map((share) => Math.round(share * 100) / 100));
    const [sweep] = asked.rounds[0]!.sweeps;
    const [read] = loop.rounds[0]!.sweeps;
    // Set to nothing at the first stop, as an indicator is; signs turned back where it counts the other way.
    const start = read!.readings_um[0]!;
    sweep!.readings_um.forEach((um, i) => {
      expect(um).toBeCloseTo(read!.readings_um[i]! - start, 6);
      sweep!.points_mm[i]!.forEach((mm, k) => {
        expect(mm).toBeCloseTo(read!.points_mm[i]![k]!, 9);
      });
    });
    asked.rounds[0]!.levels.forEach((level, k) => {
      expect(level.along).toEqual(loop.rounds[0]!.levels[k]!.along);
      expect(Math.abs(level.reading_urad - loop.rounds[0]!.levels[k]!.reading_urad)).toBeLessThanOrEqual(0.5);
    });
  });

  it('has a job file that is read back as it was written', () => {
    const entries = written([...begun(), pass(1, 1), closed(1), { kind: 'truth shown', round: 2 }]);
    const file = { format: 'waywright-job', version: 1, id: 'practice', entries };
    const read = jobFile(JSON.parse(JSON.stringify(file)));
    expect(read.entries).toEqual(entries);
    expect(practiceOf(foldJob(read.entries))).toEqual(record);
  });

  it('is the same machine after an undo and after the same again', () => {
    const once = jobOf(pass(1, 1), closed(1));
    const undone = jobOf(pass(1, 1), pass(1, 2), { kind: 'undone', entry: 'e4' }, closed(1));
    const twice = jobOf(pass(1, 1), pass(1, 2), closed(1));
    const read = (job: ReturnType<typeof jobOf>) => measurePractice(job, record, 2);
    expect(read(undone)).toEqual(read(once));
    expect(read(twice)).not.toEqual(read(once));
    expect(truthOfPractice(undone, record)).toEqual(truthOfPractice(once, record));
  });

  it('a record put right after its round was closed changes the record, not the metal', () => {
    const before = jobOf(pass(1, 1), pass(1, 2), closed(1));
    const mended = jobOf(pass(1, 1), pass(1, 2), closed(1), { kind: 'undone', entry: 'e4' }, pass(1, 2, 0));
    expect(madeBefore(mended, 2)).toEqual(madeBefore(before, 2));
    expect(measurePractice(mended, record, 2)).toEqual(measurePractice(before, record, 2));
  });

  it('an indicator that counts the other way shows every sign turned, and its push test tells', () => {
    const hard: PracticeRecord = { ...record, level: 'hard' };
    const seeds = Array.from({ length: 40 }, (_, seed) => seed);
    for (const push of ['fell', 'climbed'] as const) {
      const seed = seeds.find((one) => dialOf({ ...hard, seed: one }, 0, 0) === push)!;
      const of = { ...hard, seed };
      const shown = measurePractice(foldJob(written(begun(of))), of, 1).setups[0]!;
      const plus = practiceMachine(practiceTask(of), seed).measure().sweeps[0]!.readings_um;
      expect(shown.push).toBe(push);
      expect(shown.values.at(-1)).toBeCloseTo((push === 'fell' ? -1 : 1) * (plus.at(-1)! - plus[0]!), 6);
    }
  });

  it('tells of slips by round and place as the shop counts them', () => {
    const of: PracticeRecord = { ...record, slips: ['zone missed', 'pass too many'] };
    const deeds = [1, 2, 3].flatMap((round) => [pass(round, 1), closed(round)]);
    const { slips, rounds } = truthOfPractice(foldJob(written([...begun(of), ...deeds])), of);
    expect(rounds.map(({ round }) => round)).toEqual([1, 2, 3, 4]);
    expect(slips.map(({ kind }) => kind)).toEqual(['zone missed', 'pass too many']);
    expect(slips[0]).toMatchObject({ pad: 'front flank', zone: 0 });
    for (const { round } of slips) expect([1, 2, 3]).toContain(round);
  });
});

describe('what a practice job refuses', () => {
  const file = (...deeds: Deed[]) => ({
    format: 'waywright-job',
    version: 1,
    id: 'practice',
    entries: written(deeds),
  });
  it.each([
    ['begun twice', [...begun(), begun()[1]!]],
    ['begun for other pads', [begun()[0]!, begun({ ...record, material: 'liner' })[1]!]],
    ['its beginning undone', [...begun(), { kind: 'undone', entry: 'e2' } as const]],
    ['the truth of a real part', [begun()[0]!, { kind: 'truth shown', round: 1 } as const]],
    ['a slide nobody can make', [begun()[0]!, { ...begun()[1]!, slide: 'round way' } as unknown as Deed]],
  ])('%s', (_, deeds) => {
    expect(() => jobFile(file(...(deeds as Deed[])))).toThrow(BadInput);
  });
});
