import { describe, expect, it } from 'vitest';
import { inventedPlan as plan, written } from '../../../tests/fixture/invented-job.ts';
import { spotShare } from '../estimate/first-state.ts';
import type { Deed } from './entry.ts';
import { foldJob } from './job.ts';
import { steerInput } from './steer-input.ts';

const sweep = (round: number, values: number[], push: 'climbed' | 'fell' = 'climbed', repeat = 0): Deed => ({
  kind: 'sweep taken',
  round,
  setup: 'square',
  repeat,
  record: { push },
  readings: values.map((value) => ({ typed: String(value), value })),
});
const pass = (round: number, k: number, front: number[], flat: number[]): Deed => ({
  kind: 'pass made',
  round,
  pass: k,
  zones: { front, flat },
});

describe('what steer is asked for a job', () => {
  it('an indicator whose number fell at the push has every sign turned, and what was typed stays as typed', () => {
    const deeds: Deed[] = [{ kind: 'job made', plan }, sweep(1, [0, 3, 5, 9, 12], 'fell')];
    const job = foldJob(written(deeds));
    expect(steerInput(job).rounds[0]!.sweeps[0]!.readings_um).toEqual([0, -3, -5, -9, -12]);
    expect(job.live[1]).toMatchObject({ readings: [{ typed: '0' }, { typed: '3', value: 3 }, {}, {}, {}] });
  });

  it('stops stand evenly between the set-up’s first and last place', () => {
    const job = foldJob(written([{ kind: 'job made', plan }, sweep(1, [0, 1, 2, 3, 4])]));
    expect(steerInput(job).rounds[0]!.sweeps[0]!.points_mm.map((p) => p[1])).toEqual([-30, 10, 50, 90, 130]);
  });

  it('passes are added up by zone once the next round is measured, and do not move the plan they carry out', () => {
    const first: Deed[] = [
      { kind: 'job made', plan },
      sweep(1, [0, 1, 2, 3, 4]),
      pass(1, 1, [1, 1, 0], [1, 1]),
      pass(1, 2, [1, 0, 0], [0, 1]),
    ];
    expect(steerInput(foldJob(written(first))).rounds[0]).not.toHaveProperty('scraped');
    const closed: Deed[] = [...first, { kind: 'round closed', round: 1 }];
    expect(steerInput(foldJob(written(closed))).rounds).toHaveLength(1);
    const next = steerInput(foldJob(written([...closed, sweep(2, [0, 2, 4, 6, 8])])));
    expect(next.rounds[0]!.scraped).toEqual({ spot: false, passes: { front: [2, 1, 0], flat: [1, 2] } });
  });

  it('spotting passes are told as such; beside whole ones they count as their share of a pass, over what bore', () => {
    const spot = (k: number, front: number[], flat: number[]): Deed =>
      ({
        ...pass(1, k, front, flat),
        spot: true,
      }) as Deed;
    const scraped = (...passes: Deed[]) =>
      steerInput(
        foldJob(
          written([
            { kind: 'job made', plan },
            { kind: 'print read', round: 1, share: { front: [0.5, 0.25, 0], flat: [0.75, 1] } },
            ...passes,
            { kind: 'round closed', round: 1 },
            sweep(2, [0, 2, 4, 6, 8]),
          ]),
        ),
      ).rounds[0]!.scraped!;
    expect(scraped(spot(1, [1, 1, 0], [0, 1]), spot(2, [1, 0, 0], [0, 1]))).toEqual({
      spot: true,
      passes: { front: [2, 1, 0], flat: [0, 2] },
    });
    const mixed = scraped(pass(1, 1, [1, 0, 0], [0, 1]), spot(2, [1, 1, 1], [0, 1]));
    expect(mixed.spot).toBe(false);
    expect(mixed.passes.front![0]).toBeCloseTo(1 + spotShare.mean * 0.5, 12);
    expect(mixed.passes.front![1]).toBeCloseTo(spotShare.mean * 0.25, 12);
    expect(mixed.passes.front![2]).toBe(0);
    expect(mixed.passes.flat![1]).toBeCloseTo(1 + spotShare.mean, 12);
  });

  it('a reference turned over, a repeat of a level and a reading taken again are told as they were', () => {
    const level = (value: number, repeat: number, push: 'climbed' | 'fell'): Deed => ({
      kind: 'level read',
      round: 1,
      setup: 'across',
      repeat,
      record: { push },
      reading: { typed: '', value },
    });
    const turned = { ...sweep(1, [0, 2, 4, 6, 9], 'climbed', 1), record: { turned_over: true } } as Deed;
    const job = foldJob(
      written([
        { kind: 'job made', plan },
        sweep(1, [0, 1, 2, 3, 4]),
        turned,
        level(-31, 0, 'climbed'),
        level(27, 1, 'fell'),
        level(-29, 0, 'climbed'),
      ]),
    );
    const round = steerInput(job).rounds[0]!;
    expect(round.sweeps.map((one) => one.turned_over)).toEqual([undefined, true]);
    expect(round.levels.map((one) => one.reading_urad).toSorted((a, b) => a - b)).toEqual([-29, -27]);
  });

  it('a re-seat stands beside the first sweep under its own name, touching the same face', () => {
    const job = foldJob(
      written([
        { kind: 'job made', plan },
        sweep(1, [0, 1, 2, 3, 4]),
        sweep(1, [0, 2, 3, 3, 5], 'climbed', 1),
      ]),
    );
    const { sweeps } = steerInput(job).rounds[0]!;
    expect(sweeps.map((s) => s.face)).toEqual(['square', 'square']);
    expect(new Set(sweeps.map((s) => s.name)).size).toBe(2);
  });
});
