import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedPlan, written } from '../../tests/fixture/invented-job.ts';
import type { Deed, Entry } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import {
  axesOf,
  benchesOf,
  benchOf,
  chartFileOf,
  machineOf,
  resultsOf,
  stepRecords,
} from '../core/ledger/rebuild-record.ts';
import type { Machine } from '../core/order/machine.ts';
import { standingOn } from '../core/order/needs.ts';
import { progress } from '../core/order/progress.ts';
import { sentEntry } from './entry.ts';
import { entryFits } from './entry-fits.ts';
import { jobFile, jobFileText } from './job-file.ts';
import { knownFits } from './known-fits.ts';
import { machineInput } from './machine.ts';
import { BadInput } from './refusal.ts';
import { templateInput } from './template.ts';
import { testListInput } from './test-list.ts';

const json = (file: string) => JSON.parse(readFileSync(file, 'utf8'));
const read = <T>(folder: string, take: (value: unknown) => T): T[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => take(json(`${folder}/${name}`)));
const templates = read('machines', templateInput);
const lists = read('machines/tests', testListInput);
const machines = read('machines/whole', (value) => machineInput(value, templates));
const lathe = machines.find((one) => one.id === 'engine-lathe')!;

const begun = (machine: Machine, ...deeds: Deed[]): Entry[] =>
  written([{ kind: 'job made', plan: inventedPlan }, { kind: 'machine set', machine }, ...deeds]);

/** What is wrong with a deed after others, as it would be told. */
function wrong(entries: readonly Entry[], deed: Deed): string[] {
  const entry = { ...deed, id: 'next', at: '2031-11-25T15:00:00Z' };
  try {
    entryFits(foldJob(entries), sentEntry(entry));
    knownFits(foldJob(entries).live, sentEntry(entry), { templates, lists, heightsFit: () => undefined });
    return [];
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map((one) => `${one.path}: ${one.expected}`);
    throw failure;
  }
}

const done = (step: string, more: object = {}): Deed => ({
  kind: 'step told',
  step,
  what: 'done',
  ...more,
});

describe('a job about a whole machine', () => {
  it('is read and written again with the same bytes, every kind of its entries in it', () => {
    const entries = begun(
      lathe,
      { kind: 'bench opened', job: 'other', step: 'saddle-bottom' },
      { kind: 'bench of', job: 'whole', step: 'headstock' },
      { kind: 'step told', step: 'survey', what: 'begun' },
      done('survey', { hours: 7.5, note: 'tailstock ways least worn' }),
      {
        kind: 'heights set',
        heights: {
          changes: [
            { name: 'wear', joint: 'saddle-on-bed', when: 'found', off_um: { flat: 120 }, sd_um: 10 },
          ],
        },
      },
      {
        kind: 'axis taken',
        of: 'spindle',
        asked: {
          bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 },
          readings: [{ side: 'top', near: [1, -3], far: [-22, -54] }],
        },
      },
      { kind: 'gib taken', of: 'cross-gib', asked: { gib: { stations_mm: [0, 300], thick_mm: [8, 13] } } },
      { kind: 'chart set', chart: { list: 'engine-lathe', class: 'toolroom', dimensions: { centres: 850 } } },
      { kind: 'result taken', test: 'ways-twist', when: 'first', result: { value_um: 31, doubt_um: 6 } },
    );
    const text = jobFileText({ format: 'waywright-job', version: 1, id: 'whole', entries });
    const again = jobFile(JSON.parse(text));
    expect(jobFileText(again)).toBe(text);
    expect(benchOf(again.entries)).toEqual({ job: 'whole', step: 'headstock' });
    expect(axesOf(again.entries).get('spindle')!.at).toBe(entries[7]!.at);
    expect(benchesOf(again.entries).get('saddle-bottom')).toBe('other');
  });

  it('a step the machine has not, hours that are missing, and steps without a machine are refused by name', () => {
    expect(wrong(begun(lathe), done('serveying'))[0]).toMatch(/^step: one of survey, support/);
    expect(wrong(begun(lathe), { kind: 'step told', step: 'survey', what: 'worked' })).toEqual([
      'hours: the hours worked, 0 to 10000',
    ]);
    expect(wrong(written([{ kind: 'job made', plan: inventedPlan }]), done('survey'))[0]).toMatch(
      /^kind: a "machine set" before it/,
    );
    expect(wrong(begun(lathe), { kind: 'bench opened', job: 'x', step: 'survey' })).toEqual([
      'step: a step that is scraped on a bench',
    ]);
    expect(wrong(begun(lathe), done('survey', { hours: 3 }))).toEqual([]);
  });

  it('an edited machine keeps the steps that something happened to, and must hang together', () => {
    const less = { ...lathe, steps: lathe.steps.filter((step) => step.id !== 'oil') };
    const trimmed: Machine = {
      ...less,
      steps: less.steps.map((step) => ({
        ...step,
        after: step.after?.filter((one) => one.step !== 'oil') ?? [],
      })),
    };
    expect(wrong(begun(lathe), { kind: 'machine set', machine: trimmed })).toEqual([]);
    expect(wrong(begun(lathe, done('oil')), { kind: 'machine set', machine: trimmed })[0]).toMatch(
      /^machine.steps: every step that is in the ledger/,
    );
    const astray = {
      ...lathe,
      ways: lathe.ways.map((way, k) => (k === 3 ? { ...way, body: 'bett' } : way)),
    };
    expect(wrong(begun(lathe), { kind: 'machine set', machine: astray })[0]).toMatch(
      /^machine\.ways\[3\]\.body: one of the bodies/,
    );
    expect(
      wrong(begun(lathe), {
        kind: 'machine set',
        machine: { ...lathe, slides: lathe.slides.map((one) => ({ ...one, template: 'no-such' })) },
      })[0],
    ).toMatch(/^machine\.slides\[0\]\.template: one of the slide templates/);
  });

  it('the machine cannot be undone from under its steps', () => {
    expect(wrong(begun(lathe, done('survey')), { kind: 'undone', entry: 'e2' })[0]).toMatch(
      /^entry: that step’s own entries to be undone first/,
    );
    expect(wrong(begun(lathe), { kind: 'undone', entry: 'e2' })).toEqual([]);
  });

  it('a result must have its line in the chart, and fit it', () => {
    const set = begun(lathe, { kind: 'chart set', chart: { list: 'engine-lathe' } });
    const result = (test: string, value_um: number): Deed => ({
      kind: 'result taken',
      test,
      when: 'final',
      result: { value_um, doubt_um: 2 },
    });
    expect(wrong(set, result('ways-twist', -20))).toEqual([]);
    expect(wrong(set, result('ways-twisst', 3))[0]).toMatch(/^test: a test of this chart/);
    expect(wrong(set, result('bore-far', -3))[0]).toMatch(/^result\.value_um: 0 or above/);
    // Without a chart put together, the machine's own list is the chart.
    expect(wrong(begun(lathe), result('ways-twist', 4))).toEqual([]);
    expect(wrong(begun(lathe), { kind: 'chart set', chart: { list: 'enginelathe' } })[0]).toMatch(
      /^chart\.list: one of/,
    );
  });

  it('the later result of a line counts, first and final apart, and an undo brings the earlier one back', () => {
    const entries = begun(
      lathe,
      { kind: 'result taken', test: 'ways-twist', when: 'first', result: { value_um: 31 } },
      { kind: 'result taken', test: 'ways-twist', when: 'final', result: { value_um: 12 } },
      { kind: 'result taken', test: 'ways-twist', when: 'final', result: { value_um: 9 } },
    );
    const results = (more: readonly Entry[]) => chartFileOf(foldJob(more).live)!.results;
    expect(results(entries)).toEqual([
      { test: 'ways-twist', first: { value_um: 31 }, final: { value_um: 9 } },
    ]);
    const undo = { kind: 'undone', entry: 'e5', id: 'u', at: entries[0]!.at, seq: 6 } as Entry;
    expect(results([...entries, undo])).toEqual([
      { test: 'ways-twist', first: { value_um: 31 }, final: { value_um: 12 } },
    ]);
    expect(resultsOf(foldJob(entries).live).map((one) => one.entry)).toEqual(['e3', 'e5']);
  });
});

describe.each(machines.map((one) => [one.id, one] as const))('the ledger of %s', (_, machine) => {
  const ids = machine.steps.map((step) => step.id);
  const whats = fc.constantFrom('begun', 'done', 'proven', 'worked', 'reopened');
  const history = fc.array(
    fc.record({ step: fc.constantFrom(...ids), what: whats, hours: fc.integer({ min: 0, max: 9 }) }),
    { maxLength: 60 },
  );

  it('whatever happened before, a reference scraped again re-opens all that was done on it', () => {
    fc.assert(
      fc.property(history, fc.constantFrom(...ids), (before, reference) => {
        const told = before.map((one) => ({ kind: 'step told', ...one }) as Deed);
        const live = foldJob(begun(machine, ...told, done(reference))).live;
        const states = progress(machineOf(live)!, stepRecords(live));
        const above = standingOn(machine, reference);
        for (const state of states)
          if (above.has(state.id)) {
            // Done before, it is open again and says so; never done, it is not done now.
            expect(state.status).not.toBe('done');
            if (state.was_done)
              expect(state.because.length + state.waits_for.length, state.id).toBeGreaterThan(0);
          }
      }),
      { numRuns: 120 },
    );
  });

  it('undoing the entry that re-opened gives back exactly what stood before', () => {
    fc.assert(
      fc.property(history, fc.constantFrom(...ids), (before, reference) => {
        const told = before.map((one) => ({ kind: 'step told', ...one }) as Deed);
        const entries = begun(machine, ...told, done(reference));
        const last = entries.at(-1)!;
        const undone = { kind: 'undone', entry: last.id, id: 'u', at: last.at, seq: last.seq + 1 } as Entry;
        const states = (some: readonly Entry[]) => progress(machine, stepRecords(foldJob(some).live));
        expect(states([...entries, undone])).toEqual(states(entries.slice(0, -1)));
      }),
      { numRuns: 60 },
    );
  });
});
