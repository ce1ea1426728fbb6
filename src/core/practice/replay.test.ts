import { describe, expect, it } from 'vitest';
import { zonesOf } from '../body/slide.ts';
import { practiceMachine } from './machine.ts';
import { dialOf, type MadePasses, type PracticeRecord, practiceTask, slipsMade } from './record.ts';
import { practicePrint, practiceReadings, practiceTruth } from './replay.ts';

const record: PracticeRecord = {
  slide: 'V and flat',
  material: 'liner',
  level: 'usual',
  seed: 11,
  slips: [],
};
const zones = zonesOf(practiceTask(record).slide).length;
const none = Array<number>(zones).fill(0);
const some = none.map((_, z) => (z % 3) + (z > 15 ? 2 : 0));
const scraped: MadePasses = { whole: some, spot: none };
const spotted: MadePasses = { whole: none, spot: none.map((_, z) => z % 2) };

describe('a practice machine replayed from what was done', () => {
  it('is the machine that was measured, blued and scraped in a row', () => {
    const machine = practiceMachine(practiceTask(record), record.seed);
    const rounds = [scraped, spotted];
    for (let k = 0; k <= rounds.length; k++) {
      const before = rounds.slice(0, k);
      const read = machine.measure();
      const turned = dialOf(record, k, 0) === 'fell' ? -1 : 1;
      const shown = practiceReadings(record, before);
      expect(shown.sweeps[0]!.readings_um).toEqual(read.sweeps[0]!.readings_um.map((um) => turned * um + 0));
      expect(shown.levels).toEqual(read.levels);
      expect(practicePrint(record, before)).toEqual(machine.print());
      if (k === 0) machine.scrape(some);
      if (k === 1) machine.spot(spotted.spot);
    }
  });

  it('a repeat reads the same machine anew and leaves later rounds alone', () => {
    const first = practiceReadings(record, [scraped]);
    const again = practiceReadings(record, [scraped], 1);
    const third = practiceReadings(record, [scraped], 2);
    const slope = (sweep: (typeof first.sweeps)[number]) =>
      sweep.readings_um.at(-1)! - sweep.readings_um[0]! + 0;
    expect(again.sweeps[0]!.readings_um).not.toEqual(first.sweeps[0]!.readings_um);
    expect(third.sweeps[0]!.readings_um).not.toEqual(again.sweeps[0]!.readings_um);
    // One setting down from another: a few µm over the sweep, not tens.
    expect(Math.abs(slope(again.sweeps[0]!) - slope(first.sweeps[0]!))).toBeLessThan(10);
    expect(practiceReadings(record, [scraped], 1)).toEqual(again);
  });

  it('another seed, another level, another machine', () => {
    const truth = (of: PracticeRecord) => practiceTruth(of, []).rounds[0]!.features.facing!;
    expect(truth({ ...record, seed: 12 })).not.toBeCloseTo(truth(record), 3);
    expect(Math.abs(truth({ ...record, level: 'hard' }))).toBeGreaterThan(
      Math.abs(truth({ ...record, level: 'easy' })),
    );
  });

  it('a harder level has more indicators that count the other way, the easy one none', () => {
    const turned = (level: PracticeRecord['level']) =>
      Array.from({ length: 400 }, (_, seed) => dialOf({ ...record, level, seed }, 0, 0)).filter(
        (dial) => dial === 'fell',
      ).length / 400;
    expect(turned('easy')).toBe(0);
    expect(turned('usual')).toBeGreaterThan(0.18);
    expect(turned('usual')).toBeLessThan(0.32);
    expect(turned('hard')).toBeGreaterThan(0.42);
  });

  it('the truth of a round is from before it was scraped', () => {
    const before = practiceTruth(record, []);
    const after = practiceTruth(record, [scraped]);
    expect(after.rounds).toHaveLength(2);
    expect(after.rounds[0]).toEqual(before.rounds[0]);
    expect(after.rounds[1]!.features.facing).not.toBeCloseTo(after.rounds[0]!.features.facing!, 1);
  });
});

describe('slips made on purpose', () => {
  const with_ = (slip: PracticeRecord['slips'][number], seed = 11): PracticeRecord => ({
    ...record,
    seed,
    slips: [slip],
  });
  it('a reversed sweep turns its own round and no other', () => {
    const slip = slipsMade(with_('sweep reversed'), [])[0]!;
    const rounds = [scraped, scraped, scraped];
    for (let k = 0; k < 3; k++) {
      const clean = practiceReadings(record, rounds.slice(0, k)).sweeps[0]!.readings_um;
      const slipped = practiceReadings(with_('sweep reversed'), rounds.slice(0, k)).sweeps[0]!.readings_um;
      const expected = k === slip.round ? clean.map((um) => -um + 0) : clean;
      expect(slipped).toEqual(expected);
    }
  });
  it('a zone is missed only once there was one to scrape, and it is the one with most passes', () => {
    const asked = with_('zone missed');
    expect(slipsMade(asked, [])).toEqual([]);
    const done = [scraped, scraped, scraped];
    const [slip] = slipsMade(asked, done);
    expect(slip).toMatchObject({ kind: 'zone missed', zone: some.indexOf(Math.max(...some)) });
    const upTo = done.slice(0, slip!.round + 1);
    const gap = (of: PracticeRecord) => practiceTruth(of, upTo).rounds.at(-1)!.gaps_um;
    expect(gap(asked)).not.toEqual(gap(record));
    expect(practiceTruth(asked, upTo).slips).toEqual([slip]);
  });
  it('a surprise is each of the four, or none, by the seed', () => {
    const kinds = new Set(
      Array.from({ length: 60 }, (_, seed) => {
        const [slip] = slipsMade(with_('surprise', seed), [scraped, scraped, scraped]);
        return slip?.kind ?? 'none';
      }),
    );
    expect([...kinds].sort()).toEqual(
      ['none', 'pass too many', 'reference moved', 'sweep reversed', 'zone missed'].sort(),
    );
  });
  it('a round both scraped and spotted does not move later slips', () => {
    const both: MadePasses = { whole: some, spot: spotted.spot };
    const seed = Array.from({ length: 60 }, (_, s) => s).find(
      (s) => slipsMade(with_('sweep reversed', s), [])[0]!.round === 2,
    )!;
    const clean = practiceReadings({ ...record, seed }, [both, scraped]).sweeps[0]!.readings_um;
    const slipped = practiceReadings(with_('sweep reversed', seed), [both, scraped]).sweeps[0]!.readings_um;
    expect(slipped).toEqual(clean.map((um) => -um + 0));
  });
});
