import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spotShare } from '../estimate/first-state.ts';
import type { Deed, Entry, JobPlan } from './entry.ts';
import { foldJob } from './job.ts';
import { steerInput } from './steer-input.ts';

const plan: JobPlan = {
  title: 'Saddle of an invented lathe',
  template: 'lathe-saddle',
  slide: {
    name: 'saddle',
    free: 'x',
    pads: [
      {
        name: 'front',
        centre_mm: [3, -11, 0],
        normal: [0, -0.6, 0.8],
        length_mm: 310,
        width_mm: 27,
        zones: 3,
        material: 'liner',
      },
      {
        name: 'flat',
        centre_mm: [-2, 230, 4],
        normal: [0, 0, 1],
        length_mm: 290,
        width_mm: 55,
        zones: 2,
        material: 'liner',
      },
    ],
  },
  features: [{ name: 'facing', kind: 'turn', axis: 'z' }],
  targets: [{ feature: 'facing', low: 20, high: 66, aim: 40 }],
  words: [],
  places: {
    minus_end: 'headstock end',
    plus_end: 'tailstock end',
    minus_side: 'your side',
    plus_side: 'back',
    travel: 'x',
  },
  passes: { liner: { um: 12.7, sd_um: 4 } },
  setups: [
    {
      kind: 'sweep',
      id: 'square',
      name: 'cross ways against the square',
      question: '?',
      drawing: 'square-cross-sweep',
      tells: ['facing'],
      rides_words: '',
      touches_words: '',
      plus_words: '',
      climbs_words: 'concave',
      falls_words: 'convex',
      rides: 'slide',
      touches: 'reference',
      plunger: [-1, 0, 0],
      from_mm: [-20, -30, 90],
      to_mm: [-20, 130, 90],
      points: 5,
      reading_sd_um: 1.5,
      face: 'square',
      face_slope_urad: 2,
      face_slope_sd_urad: 3,
    },
    {
      kind: 'level',
      id: 'across',
      name: 'level across',
      question: '?',
      drawing: 'level-across',
      tells: [],
      rides_words: '',
      touches_words: '',
      plus_words: '',
      climbs_words: 'back high',
      falls_words: 'back low',
      along: [0, 1, 0],
      sd_urad: 5,
    },
  ],
  cautions: [],
};

const written = (deeds: readonly Deed[]): Entry[] =>
  deeds.map((deed, i) => ({ ...deed, id: `e${i + 1}`, at: '2031-11-25T14:32:00+01:00', seq: i + 1 }));

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

describe('a job from its ledger', () => {
  it('undo takes back, and undoing the undo brings it back', () => {
    const deeds: Deed[] = [
      { kind: 'job made', plan },
      { kind: 'note', text: 'first' },
      { kind: 'note', text: 'second' },
    ];
    const texts = (more: Deed[]) =>
      foldJob(written([...deeds, ...more])).live.flatMap((e) => (e.kind === 'note' ? [e.text] : []));
    expect(texts([])).toEqual(['first', 'second']);
    expect(texts([{ kind: 'undone', entry: 'e2' }])).toEqual(['second']);
    expect(
      texts([
        { kind: 'undone', entry: 'e2' },
        { kind: 'undone', entry: 'e4' },
      ]),
    ).toEqual(['first', 'second']);
  });

  it('folding on from a fold is folding all, in whatever order entries arrive', () => {
    const deed = fc.oneof(
      fc.record({ kind: fc.constant('note' as const), text: fc.string() }),
      fc.record({ kind: fc.constant('round closed' as const), round: fc.integer({ min: 1, max: 6 }) }),
      fc.record({
        kind: fc.constant('undone' as const),
        entry: fc.integer({ min: 2, max: 12 }).map((n) => `e${n}`),
      }),
    );
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 12 }), fc.nat(12), fc.boolean(), (deeds, cut, reversed) => {
        const all = written([{ kind: 'job made', plan }, ...deeds]);
        const at = Math.min(1 + cut, all.length);
        const whole = foldJob(all);
        expect(foldJob(all.slice(at), foldJob(all.slice(0, at)))).toEqual(whole);
        expect(foldJob(reversed ? all.toReversed() : all)).toEqual(whole);
      }),
    );
  });

  it('a ledger that makes no job is refused', () => {
    expect(() => foldJob(written([{ kind: 'note', text: 'alone' }]))).toThrow(RangeError);
  });

  it('amending the plan changes what it names and keeps the rest', () => {
    const job = foldJob(
      written([
        { kind: 'job made', plan },
        { kind: 'plan amended', change: { film_um: 4.5 } },
      ]),
    );
    expect(job.plan.film_um).toBe(4.5);
    expect(job.plan.title).toBe(plan.title);
  });
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
