import { describe, expect, it } from 'vitest';
import type { Alarm, Cause } from '../../core/estimate/cause.ts';
import { causeId } from '../../core/estimate/cause-name.ts';
import type { Deed, Entry } from '../../core/ledger/entry.ts';
import { liveEntries } from '../../core/ledger/job.ts';
import { roundRecord } from '../../core/ledger/round-record.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import { type SayOptions, sayDeviation } from '../../core/quantity/say.ts';
import { alarmState, askedFor, movedBy } from './alarm-state.ts';
import { causeQuestion } from './cause-question.ts';
import { causeWords, fitsFound, placedCauses } from './cause-words.ts';
import { mendDeeds } from './mend-record.ts';

const places = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: "operator's side",
  plus_side: 'back of the machine',
  travel: 'x',
} as const;
const pad = (name: string, y: number) => ({
  name,
  centre_mm: [0, y, 0] as const,
  normal: [0, 0, 1] as const,
  length_mm: 480,
  width_mm: 28,
  zones: 6,
  material: 'liner',
});
const slide = {
  name: 'saddle',
  free: 'x',
  pads: [pad('front flank', -14), pad('rear flank', 14), pad('flat', 300)],
} as const;
const square: SweepSetup = {
  kind: 'sweep',
  id: 'square',
  name: 'cross ways against the square',
  question: '',
  drawing: 'generic',
  tells: ['facing'],
  rides_words: '',
  touches_words: '',
  plus_words: '',
  climbs_words: '',
  falls_words: '',
  rides: 'slide',
  touches: 'reference',
  plunger: [-1, 0, 0],
  from_mm: [0, 0, 90],
  to_mm: [0, 200, 90],
  points: 2,
  reading_sd_um: 1.5,
  face: 'square',
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
};
const plan = { places, slide, setups: [square] };
// The look's invented round: front flank 0 1 2 2 3 4, rear flank 4 4 2 1 1 0 from the headstock end.
const scraped = {
  'front flank': [0, 1, 2, 2, 3, 4],
  'rear flank': [4, 4, 2, 1, 1, 0],
  flat: [4, 4, 3, 4, 4, 4],
};

/** In µm in 300 mm as the look tells its alarm: asked +10.9, found −46.7 ± 4.7; that map mistake predicts −41.5. */
const alarm: Alarm = {
  round: 3,
  feature: 'facing',
  before: { value: -15.3, sd: 2.15 },
  asked: { value: 10.9, sd: 5 },
  found: { value: -46.7, sd: 2.35 },
  chance: 1e-9,
  causes: [
    { round: 3, cause: { kind: 'map end for end' }, log_odds: 40, would_read: { value: -41.5, sd: 5 } },
    {
      round: 3,
      cause: { kind: 'flanks swapped', pads: ['front flank', 'rear flank'] },
      log_odds: 39,
      would_read: { value: -41.5, sd: 5 },
    },
    {
      round: 3,
      cause: { kind: 'sweep reversed', sweep: 'cross ways against the square' },
      log_odds: 2,
      would_read: { value: -10.9, sd: 5 },
    },
    { cause: { kind: 'reference moved', face: 'square' }, log_odds: 1 },
  ],
};

const entries = (...deeds: Deed[]): Entry[] =>
  deeds.map((deed, i) => ({ ...deed, id: `e${i + 1}`, at: '2031-11-25T14:10:00Z', seq: i + 1 }));
const pass = (n: number, zones: Record<string, number[]>): Deed => ({
  kind: 'pass made',
  round: 3,
  pass: n,
  zones,
});
const sweep: Deed = {
  kind: 'sweep taken',
  round: 4,
  setup: 'square',
  record: { push: 'climbed' },
  readings: [
    { typed: '0', value: 0 },
    { typed: '-7', value: -7 },
  ],
};

/** The ledger once the mending deeds are written after it. */
const mended = (cause: Cause, before: Entry[]): Entry[] => {
  const deeds = mendDeeds({ cause, round: 3 }, plan, liveEntries(before));
  const after = deeds.map(
    (deed, i): Entry => ({ ...deed, id: `m${i}`, at: '2031-11-25T16:08:00Z', seq: 100 + i }),
  );
  return liveEntries([...before, ...after]);
};

describe('the causes of an alarm', () => {
  it('fit, do not fit or cannot be told, as the look has them', () => {
    expect(alarm.causes.map((cause) => fitsFound(cause, alarm.found))).toEqual([
      'fits',
      'fits',
      'does not fit',
      'cannot tell',
    ]);
  });
  it('name the mistake and not its maker', () => {
    expect(alarm.causes.map(({ cause }) => causeWords(cause, places))).toEqual([
      'Map read end for end',
      'Front flank and rear flank swapped',
      'Cross ways against the square read backwards, or plunger facing the other way',
      'Square moved',
    ]);
    expect(causeWords({ kind: 'zone missed', pad: 'flat', zone: 2 }, places)).toBe(
      'Flat, zone 3 from the headstock end, missed',
    );
  });
  it('are asked one at a time, likeliest first; a yes ends it, a no leads on', () => {
    const ids = placedCauses(alarm).map(causeId);
    expect(alarmState(alarm, []).ask?.cause.kind).toBe('map end for end');
    expect(alarmState(alarm, [{ cause: ids[0]!, answer: 'no' }]).ask?.cause.kind).toBe('flanks swapped');
    expect(alarmState(alarm, [{ cause: ids[0]!, answer: 'yes' }])).toEqual({ settled: true });
    expect(
      alarmState(
        alarm,
        ids.map((cause) => ({ cause, answer: 'cannot tell' })),
      ),
    ).toEqual({ settled: true });
  });
});

it('asked for +26, moved −31 ± 6, as the look tells it', () => {
  const say = (value: number, options?: SayOptions) => sayDeviation(value, 'metric', options);
  expect(askedFor(alarm, say)).toMatchObject({ sign: '+', number: '26' });
  expect(movedBy(alarm, say)).toMatchObject({ sign: '−', number: '31', doubt: '6' });
});

describe('the question at the metal', () => {
  it('asks at the pad and end where the answer shows most', () => {
    const ends = causeQuestion({ kind: 'map end for end' }, plan, scraped);
    // Rear flank was to be heaviest at the headstock end, 10 passes against 2: fresh scraping at the other end means yes.
    expect(ends.text).toBe('Look at the rear flank. Which end has the most fresh scraping?');
    expect(ends.answers).toEqual([
      { words: 'Tailstock end', answer: 'yes' },
      { words: 'Headstock end', answer: 'no' },
    ]);
    const flanks = causeQuestion(
      { kind: 'flanks swapped', pads: ['front flank', 'rear flank'] },
      plan,
      scraped,
    );
    expect(flanks.text).toBe(
      'Look at zone 1 from the headstock end. Which flank has the more fresh scraping there?',
    );
    expect(flanks.answers).toEqual([
      { words: 'Front flank', answer: 'yes' },
      { words: 'Rear flank', answer: 'no' },
    ]);
  });
});

describe('putting the record right', () => {
  it('a map read end for end: every pass is written again with its zones turned', () => {
    const live = mended(
      { kind: 'map end for end' },
      entries(pass(1, { flat: [1, 1, 0, 0, 0, 1] }), pass(2, { flat: [0, 1, 0, 0, 0, 0] })),
    );
    expect(roundRecord(live, 3).passes.map((made) => [made.pass, made.zones.flat])).toEqual([
      [1, [1, 0, 0, 0, 1, 1]],
      [2, [0, 0, 0, 0, 1, 0]],
    ]);
  });
  it('flanks swapped: what was ticked on one counts on the other', () => {
    const zones = {
      'front flank': [0, 1, 1, 1, 1, 1],
      'rear flank': [1, 1, 0, 0, 0, 0],
      flat: [1, 0, 1, 1, 1, 1],
    };
    const live = mended(
      { kind: 'flanks swapped', pads: ['front flank', 'rear flank'] },
      entries(pass(1, zones)),
    );
    expect(roundRecord(live, 3).passes[0]!.zones).toEqual({
      ...zones,
      'front flank': zones['rear flank'],
      'rear flank': zones['front flank'],
    });
  });
  it('a zone missed no longer counts, and a pass too many does', () => {
    const before = entries(pass(1, { flat: [1, 1, 0, 0, 0, 1] }));
    const missed = mended({ kind: 'zone missed', pad: 'flat', zone: 1 }, before);
    expect(roundRecord(missed, 3).passes.map((made) => made.zones.flat)).toEqual([[1, 0, 0, 0, 0, 1]]);
    const more = mended({ kind: 'pass too many', pad: 'flat' }, before);
    expect(roundRecord(more, 3).passes.map((made) => made.zones.flat)).toEqual([
      [1, 1, 0, 0, 0, 1],
      [1, 1, 1, 1, 1, 1],
    ]);
  });
  it('a reversed sweep keeps its readings as typed and turns the push; a moved square gives its sweep up', () => {
    const reversed = mended({ kind: 'sweep reversed', sweep: square.name }, entries(sweep));
    expect(roundRecord(reversed, 4).taken.square).toMatchObject([
      { record: { push: 'fell' }, readings: [{ typed: '0' }, { typed: '-7' }] },
    ]);
    const again = { ...sweep, repeat: 2 } as Deed;
    const second = mended(
      { kind: 'sweep reversed', sweep: `${square.name}, again 2` },
      entries(sweep, again),
    );
    expect(roundRecord(second, 4).taken.square!.map((one) => [one.repeat, one.record.push])).toEqual([
      [0, 'climbed'],
      [2, 'fell'],
    ]);
    const before = { ...sweep, round: 2 } as Deed;
    const ever = mended(
      { kind: 'sweep reversed', sweep: square.name, rounds: [1, 3] },
      entries(before, sweep),
    );
    expect([2, 4].map((round) => roundRecord(ever, round).taken.square![0]!.record.push)).toEqual([
      'fell',
      'fell',
    ]);
    const moved = mended({ kind: 'reference moved', face: 'square' }, entries(sweep));
    expect(roundRecord(moved, 4).taken).toEqual({});
  });
});
