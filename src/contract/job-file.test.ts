import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Deed, Entry, JobPlan } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import { jobFile, jobFileText } from './job-file.ts';
import { BadInput } from './refusal.ts';

const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
const { plan } = foldJob(demo.entries.slice(0, 1));
const copy = () =>
  structuredClone(demo) as unknown as { entries: Record<string, unknown>[] } & Record<string, unknown>;

/** Any deed that fits the demo's plan. */
function deeds(plan: JobPlan): fc.Arbitrary<Deed> {
  // Rounds that have not begun are refused; the first one always has.
  const round = fc.constant(1);
  const text = fc.string({ unit: 'grapheme', maxLength: 40 });
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const reading = fc.record({ typed: text, value });
  const record = fc.record(
    {
      push: fc.constantFrom('climbed' as const, 'fell' as const),
      turned_over: fc.boolean(),
      support: text,
      temperature_C: fc.double({ min: -40, max: 80, noNaN: true }),
    },
    { requiredKeys: [] },
  );
  const zones = <T>(each: fc.Arbitrary<T>) =>
    fc.record(
      Object.fromEntries(
        plan.slide.pads.map((pad) => [
          pad.name,
          fc.array(each, { minLength: pad.zones, maxLength: pad.zones }),
        ]),
      ),
      { requiredKeys: [] },
    ) as fc.Arbitrary<Record<string, T[]>>;
  const readings = plan.setups.map((setup): fc.Arbitrary<Deed> => {
    const taken = { round, setup: fc.constant(setup.id), record };
    if (setup.kind !== 'sweep')
      return fc.record({
        ...taken,
        kind: fc.constant(setup.kind === 'level' ? ('level read' as const) : ('height read' as const)),
        reading,
      });
    const all = fc.array(reading, { minLength: setup.points, maxLength: setup.points });
    return fc.record({ ...taken, kind: fc.constant('sweep taken' as const), readings: all });
  });
  return fc.oneof(
    ...readings,
    fc.record({
      kind: fc.constant('print read' as const),
      round,
      share: zones(fc.double({ min: 0, max: 1, noNaN: true })),
    }),
    photographed(plan, round),
    fc.record({
      kind: fc.constant('pass made' as const),
      round,
      pass: fc.integer({ min: 1, max: 9 }),
      spot: fc.boolean(),
      zones: zones(fc.constantFrom(0, 1)),
    }),
    fc.record({ kind: fc.constant('round closed' as const), round }),
    fc.record({
      kind: fc.constant('plan amended' as const),
      change: fc.record({ title: fc.constant('Other') }),
    }),
    fc.record({ kind: fc.constant('stop signed' as const), round, note: text }),
    fc.record({ kind: fc.constant('note' as const), text }),
    fc.record({ kind: fc.constant('undone' as const), entry: fc.constant('e2') }),
  );
}

/** Any photo of a pad's print. */
function photographed(plan: JobPlan, round: fc.Arbitrary<number>): fc.Arbitrary<Deed> {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const shift = number(-150, 150);
  const place = fc.record({ x: number(-50, 400), y: number(-50, 400) });
  const exclusion = fc.oneof(
    fc.record({ type: fc.constant('circle' as const), x: shift, y: shift, r: number(0.1, 50) }),
    fc.record({
      type: fc.constant('polyline' as const),
      width: number(0.1, 20),
      points: fc.array(place, { minLength: 2, maxLength: 4 }),
    }),
    fc.record({
      type: fc.constant('polygon' as const),
      points: fc.array(place, { minLength: 3, maxLength: 5 }),
    }),
  );
  return fc.constantFrom(...plan.slide.pads).chain((pad) =>
    fc.record(
      {
        kind: fc.constant('print photographed' as const),
        round,
        pad: fc.constant(pad.name),
        photo: fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 }),
        corners: fc.tuple(shift, shift, shift, shift, shift, shift, shift, shift).map(
          (d) =>
            [
              { x: 200 + d[0], y: 200 + d[1] },
              { x: 2200 + d[2], y: 200 + d[3] },
              { x: 2200 + d[4], y: 1200 + d[5] },
              { x: 200 + d[6], y: 1200 + d[7] },
            ] as const,
        ),
        size: fc.record({ length_mm: number(5, 600), width_mm: number(5, 600) }),
        exclusions: fc.array(exclusion, { maxLength: 3 }),
        shares: fc.array(fc.option(number(0, 1)), { minLength: pad.zones, maxLength: pad.zones }),
        density_per_25mm: number(0, 60),
        bearing_pct: number(0, 100),
        confidence: number(0, 1),
        warnings: fc.subarray(['blurred', 'glare', 'over-blued']),
      },
      {
        requiredKeys: [
          'kind',
          'round',
          'pad',
          'photo',
          'corners',
          'size',
          'shares',
          'density_per_25mm',
          'bearing_pct',
          'confidence',
          'warnings',
        ],
      },
    ),
  ) as fc.Arbitrary<Deed>;
}

describe('the job file', () => {
  it('read and written again gives the same bytes, whatever was done', () => {
    const list = fc.array(deeds(plan), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(list, (all) => {
        // The second entry is there to be undone.
        const kept: Deed[] = [{ kind: 'job made', plan }, { kind: 'note', text: 'found dry' }, ...all];
        const entries = kept.map(
          (deed, k): Entry => ({ ...deed, id: `e${k + 1}`, at: '2031-11-25T14:32:00+01:00', seq: k + 1 }),
        );
        const once = jobFileText(jobFile({ format: 'waywright-job', version: 1, id: 'job', entries }));
        expect(jobFileText(jobFile(JSON.parse(once)))).toBe(once);
        expect(JSON.parse(once).entries).toEqual(JSON.parse(JSON.stringify(entries)));
      }),
      { numRuns: 200 },
    );
  });

  it('the demo’s own file is as it would be written', () => {
    expect(jobFileText(demo)).toBe(readFileSync('demo/saddle.job.json', 'utf8'));
  });

  const sweepAt = demo.entries.findIndex((entry) => entry.kind === 'sweep taken');
  const printAt = demo.entries.findIndex((entry) => entry.kind === 'print read');
  type Spoil = (file: ReturnType<typeof copy>) => void;
  const change =
    (k: number, changed: object): Spoil =>
    (file) =>
      void Object.assign(file.entries[k]!, changed);
  it.each<[string, string, Spoil]>([
    ['another format', 'format', (f) => Object.assign(f, { format: 'something' })],
    ['a version that does not exist', 'version', (f) => Object.assign(f, { version: 2 })],
    ['a key that is not known', 'colour', (f) => Object.assign(f, { colour: 'grey' })],
    ['no entries', 'entries', (f) => Object.assign(f, { entries: [] })],
    ['a first entry that makes no job', 'entries[0].kind', (f) => f.entries.splice(0, 1)],
    [
      'a job made twice',
      'entries[1].kind',
      (f) => f.entries.splice(1, 1, { ...f.entries[0]!, id: 'x', seq: 2 }),
    ],
    ['a round that has not begun', `entries[${sweepAt}].round`, change(sweepAt, { round: 7 })],
    ['a gap in the order', 'entries[3].seq', change(3, { seq: 9 })],
    ['one id twice', 'entries[4].id', change(4, { id: demo.entries[3]!.id })],
    ['a time without its zone', 'entries[2].at', change(2, { at: '2031-11-25T14:32:00' })],
    ['a deed that nobody does', 'entries[2].kind', change(2, { kind: 'sung' })],
    [
      'a set-up that the job does not have',
      `entries[${sweepAt}].setup`,
      change(sweepAt, { setup: 'nowhere' }),
    ],
    [
      'a sweep with a stop too few',
      `entries[${sweepAt}].readings`,
      (f) => (f.entries[sweepAt]!.readings as unknown[]).pop(),
    ],
    [
      'a print of a pad that is not there',
      `entries[${printAt}].share["top"]`,
      change(printAt, { share: { top: [1] } }),
    ],
    [
      'a plan whose pad names no material',
      'entries[0].plan.slide.pads[0].material',
      (f) => Object.assign((f.entries[0]!.plan as JobPlan).slide.pads[0]!, { material: 'cheese' }),
    ],
  ])('%s is refused, by name', (_, path, spoil) => {
    const file = copy();
    spoil(file);
    try {
      jobFile(file);
    } catch (refused) {
      expect(refused).toBeInstanceOf(BadInput);
      expect((refused as BadInput).issues.map((issue) => issue.path)).toContain(path);
      return;
    }
    throw new Error('it was taken');
  });
});
