import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { openSqlite } from '../../adapters/store/sqlite.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import type { Doors } from './doors.ts';
import { registerJob } from './job.ts';
import { registerJobRebuild } from './job-rebuild.ts';
import { run } from './run.ts';

let workshop: string;
beforeEach(() => {
  workshop = join(mkdtempSync(join(tmpdir(), 'waywright-cli-')), 'workshop.db');
});

/** Runs the command line on a workshop of its own; the file it is given is `file`. */
async function job(words: readonly string[], file?: unknown) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async () => JSON.stringify(file),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    solve: solveWithHighs,
    withStore: async (work: (store: Awaited<ReturnType<typeof openSqlite>>) => Promise<unknown>) => {
      const store = await openSqlite(workshop);
      try {
        return await work(store);
      } finally {
        await store.close();
      }
    },
    templates: () => readTemplates(),
    now: () => '2031-11-25T14:32:00Z',
  } as unknown as Doors;
  const more = { machines: () => readWholeMachines(), testLists: () => readTestLists() };
  const code = await run(
    ['job', ...words],
    doors,
    [registerJob({} as ArchiveDoors), registerJobRebuild(more)],
    '0',
  );
  return { code, out: out.join('\n').replace(/[\u00a0\u202f\u2009]/g, ' '), err: err.join('\n') };
}
const asked = async (words: readonly string[], file?: unknown) =>
  JSON.parse((await job([...words, '--json'], file)).out);

const heights = (half_nut_um: number, liner: Record<string, unknown> = {}) => ({
  kind: 'heights set',
  heights: {
    measured: { 'half nut over lead screw': { um: half_nut_um, sd_um: 8 } },
    changes: [
      {
        name: 'wear',
        joint: 'saddle-on-bed',
        when: 'found',
        off_um: { 'front flank': 310, 'rear flank': 330, flat: 460 },
        sd_um: 5,
      },
    ],
    liners: [
      {
        joint: 'saddle-on-bed',
        pads: ['front flank', 'rear flank', 'flat'],
        brings: 'half nut over lead screw',
        sheet_mm: 1.6,
        ...liner,
      },
    ],
  },
});
/** Cross ways leaning by `um` over the sweep's 200 mm, level across and along within 0.02 mm/m. */
const round = (um: number) => [
  {
    kind: 'sweep taken',
    round: 1,
    setup: 'square',
    record: { push: 'climbed' },
    readings: Array.from({ length: 11 }, (_, k) => ((um * k) / 10).toFixed(1)),
  },
  { kind: 'level read', round: 1, setup: 'level_across', record: { push: 'climbed' }, reading: '+.01' },
  { kind: 'level read', round: 1, setup: 'level_along', record: { push: 'climbed' }, reading: '-.01 mm/m' },
];
const made = () => job(['rebuild', '--machine', 'engine-lathe', '--title', 'Ours', '--id', 'lathe']);

describe('a job about a whole machine, through the command line', () => {
  it('is made from a machine with its own sizes, and its steps stand as they are told', async () => {
    expect((await made()).out).toBe('lathe made');
    expect((await job(['order', 'lathe'])).out).toContain('0 of 27 steps stand');
    await job(['write', 'lathe', '-'], { kind: 'step told', step: 'survey', what: 'done', hours: 6.5 });
    const { ready, forecast } = await asked(['order', 'lathe']);
    expect(ready).toEqual(['support', 'bearings']);
    expect(forecast.spent).toBe(6.5);
  });

  it('heights, end to end: what they leave is what the bench may sink and take, and what the planner keeps to', async () => {
    await made();
    await job(['write', 'lathe', '-'], heights(-470));
    const answer = await asked(['heights', 'lathe']);
    const limit = answer.limits.find((one: { joint: string }) => one.joint === 'saddle-on-bed');
    expect(limit.sink[0].name).toBe('half nut over lead screw');
    // The first bench is the job itself; it was made before anybody told of heights.
    expect(await asked(['bench', 'lathe', 'saddle-bottom'])).toEqual({ job: 'lathe', again: true });
    const { plan } = await asked(['show', 'lathe']);
    expect(plan.sink.map((one: { name: string }) => one.name)).toEqual(
      limit.sink.map((one: { name: string }) => one.name),
    );
    expect(plan.sink[0].most_um).toBeCloseTo(limit.sink[0].most_um, 9);
    expect(plan.slide.pads.map((pad: { stock_um: number }) => pad.stock_um)).toEqual([800, 800, 800]);
    const written = await job(['write', 'lathe', '-', '--show'], round(-30));
    expect([written.code, written.err]).toEqual([0, '']);
    expect(written.out).toContain('Passes by zone');
    // The plan settles by no more than what the heights leave.
    const { answer: shown } = await asked(['show', 'lathe']);
    expect(Math.max(...shown.steer.plan.settle_um)).toBeLessThan(limit.sink[0].most_um);
  });

  it('a liner with nothing over its least thickness is guarded: the plan that would go through it is refused, the pad named', async () => {
    await made();
    // 1.5 mm left when it is finished; 1.48 must stay: of the 0.1 mm left on, 20 µm more than that may come off.
    await job(['write', 'lathe', '-'], heights(-470, { least_mm: 1.48 }));
    const { limits } = await asked(['heights', 'lathe']);
    expect(limits[0].stock_um).toEqual({ 'front flank': 120, 'rear flank': 120, flat: 120 });
    await job(['bench', 'lathe', 'saddle-bottom']);
    const fits = await job(['write', 'lathe', '-', '--show'], round(-30));
    expect(fits.code).toBe(0);
    const { answer } = await asked(['show', 'lathe']);
    for (const zone of answer.steer.plan.zones) expect(zone.depth_um).toBeLessThanOrEqual(120);
    const deep = await job(['write', 'lathe', '-', '--show'], round(-160));
    expect(deep.code).toBe(3);
    expect(deep.err).toMatch(/stock of pad "(front|rear) flank" is short by/);
  });

  it('heights told anew give an open bench its new room; sunk to the end of it, the planner says which height binds', async () => {
    await made();
    await job(['write', 'lathe', '-'], heights(-470));
    await job(['bench', 'lathe', 'saddle-bottom']);
    const before = (await asked(['show', 'lathe'])).plan.sink[0].most_um;
    await job(['write', 'lathe', '-'], heights(-470, { scraping_mm: 0.02 }));
    await job(['bench', 'lathe', 'saddle-bottom']);
    const after = (await asked(['show', 'lathe'])).plan.sink[0].most_um;
    expect(after).toBeLessThan(before - 80);
    const { code, err } = await job(['write', 'lathe', '-', '--show'], round(-160));
    expect(code).toBe(3);
    expect(err).toContain('sink limit "half nut over lead screw" is passed by');
    // Asked again with nothing changed, nothing more is written.
    const entries = (await asked(['write', 'lathe', '-'], { kind: 'note', text: 'n' })).entries;
    await job(['bench', 'lathe', 'saddle-bottom']);
    expect((await asked(['write', 'lathe', '-'], { kind: 'note', text: 'n' })).entries).toBe(entries + 1);
  });

  it('another step’s bench is a job of its own', async () => {
    await made();
    const first = await asked(['bench', 'lathe', 'headstock', '--id', 'lathe-head']);
    expect(first).toEqual({ job: 'lathe-head', again: false });
    expect(await asked(['bench', 'lathe', 'headstock'])).toEqual({ job: 'lathe-head', again: true });
    expect((await asked(['show', 'lathe-head'])).plan.slide.name).toBe('headstock on bed');
  });

  it('readings are read as they are typed, in either system', async () => {
    await made();
    const read = (typed: string, repeat = 0) => ({
      kind: 'level read',
      round: 1,
      setup: 'level_across',
      repeat,
      record: { push: 'climbed' },
      reading: typed,
    });
    const levels = async (): Promise<number[]> =>
      JSON.parse((await job(['steer-input', 'lathe'])).out).rounds[0].levels.map(
        (one: { reading_urad: number }) => one.reading_urad,
      );
    await job(['write', 'lathe', '-'], [read('-.02'), read('half thou in 12 in', 1)]);
    const [first, second] = await levels();
    expect(first).toBe(-20);
    expect(second).toBeCloseTo(41.667, 2);
    await job(['write', 'lathe', '-', '--inch'], read('.5'));
    expect((await levels())[0]).toBeCloseTo(41.667, 2);
  });

  it('names what cannot be taken, and leaves with 2', async () => {
    await made();
    const wrong = async (words: string[], file?: unknown) => {
      const { code, out, err } = await job(words, file);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    const title = ['--title', 'x'];
    expect(await wrong(['rebuild', '--machine', 'planer', ...title])).toContain(
      'machine: "planer"; expected',
    );
    expect(await wrong(['rebuild', '--machine', 'engine-lathe', ...title, '--set', 'centre=3'])).toContain(
      'machine.dimensions.centre',
    );
    expect(await wrong(['bench', 'lathe', 'oil'])).toContain('a step that is scraped on a bench');
    expect(await wrong(['bench', 'lathe', 'polish'])).toContain('step: "polish"');
    expect(await wrong(['order', 'nobody'])).toContain('id: "nobody"');
    expect(
      await wrong(['write', 'lathe', '-'], [{ kind: 'note', text: 'n' }, { kind: 'nothing' }]),
    ).toContain('[1].kind');
    expect(
      await wrong(
        ['write', 'lathe', '-'],
        [
          { kind: 'note', text: 'n' },
          { kind: 'level read', round: 1, setup: 'level_across', record: {}, reading: 'abc' },
        ],
      ),
    ).toContain('[1].reading: "abc"; expected a reading');
    await job(['new', '--template', 'lathe-saddle', '--title', 'Saddle', '--id', 'saddle']);
    expect(await wrong(['order', 'saddle'])).toContain('a job about a whole machine');
    expect(await wrong(['heights', 'saddle'])).toContain('a job about a whole machine');
  });
});
