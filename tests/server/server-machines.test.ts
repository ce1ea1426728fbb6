import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { readTestLists } from '../../src/adapters/file/test-lists.ts';
import { readWholeMachines } from '../../src/adapters/file/whole-machines.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import type { Machine } from '../../src/core/order/machine.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { computeWith } from '../../src/shop/compute.ts';
import type { OrderAnswer } from '../../src/shop/order/order.ts';
import type { Store } from '../../src/shop/store.ts';

const host = '127.0.0.1:7117';
const at = '2031-11-25T14:32:00+01:00';
const headers = { host, 'content-type': 'application/json' };

let app: FastifyInstance;
let store: Store;
beforeAll(async () => {
  store = await openSqlite(join(mkdtempSync(join(tmpdir(), 'waywright-')), 'workshop.db'));
  app = await buildApp({
    store,
    templates: readTemplates(),
    machines: readWholeMachines(),
    compute: computeWith(solveWithHighs),
    charts: { lists: readTestLists(), press: async () => new Uint8Array() },
    version: 'test',
  });
});
afterAll(async () => {
  await app.close();
  await store.close();
});

const post = async (url: string, payload: object) => {
  const { statusCode, body } = await app.inject({
    method: 'POST',
    url,
    headers,
    payload: JSON.stringify(payload),
  });
  return { status: statusCode, ...JSON.parse(body) };
};
const get = async (url: string) => {
  const { statusCode, body } = await app.inject({ method: 'GET', url, headers: { host } });
  return { status: statusCode, ...JSON.parse(body) };
};
let counted = 0;
const told = (job: string, step: string, what: string, hours?: number) =>
  post(`/api/jobs/${job}/entries`, {
    kind: 'step told',
    id: `told-${++counted}`,
    at,
    step,
    what,
    ...(hours === undefined ? {} : { hours }),
  });
const statusOf = async (job: string, step: string) => {
  const { steps }: OrderAnswer = await get(`/api/jobs/${job}/order`);
  return steps.find((one) => one.id === step)!;
};

describe('a job about a whole machine over HTTP', () => {
  it('is made from a machine of the program with one’s own sizes, and listed as one', async () => {
    const asked = { id: 'whole', at, title: 'Invented lathe', machine: 'engine-lathe' };
    const dimensions = { centres: 760, saddle_length: 380 };
    expect((await post('/api/rebuilds', { ...asked, dimensions })).status).toBe(201);
    expect((await post('/api/rebuilds', { ...asked, dimensions })).status).toBe(200);
    const wrong = await post('/api/rebuilds', { ...asked, id: 'x', dimensions: { centres: 5 } });
    expect(wrong.status).toBe(400);
    expect(wrong.message).toContain('machine.dimensions[0].value: 5; expected from 200 to 12000');
    expect((await post('/api/rebuilds', { ...asked, id: 'x', machine: 'lathe' })).message).toContain(
      'engine-lathe',
    );
    const { jobs } = await get('/api/jobs');
    expect(jobs[0].machine).toEqual({ title: 'Engine lathe', done: 0, steps: 27 });
  });

  it('tells the order as its ledger has it: bed done again takes back the saddle, with why', async () => {
    expect((await get('/api/jobs/whole/order')).ready).toEqual(['survey']);
    for (const step of ['survey', 'support', 'bed-datum', 'bed-flat', 'bed-v', 'bearings', 'saddle-liner'])
      expect((await told('whole', step, 'done', 5)).status).toBe(201);
    expect((await statusOf('whole', 'saddle-bottom')).status).toBe('ready');
    await told('whole', 'saddle-bottom', 'begun');
    expect((await statusOf('whole', 'saddle-bottom')).begun).toBe(true);
    await told('whole', 'saddle-bottom', 'done', 9);
    expect((await statusOf('whole', 'saddle-bottom')).status).toBe('done');
    await told('whole', 'bed-v', 'done', 4);
    const saddle = await statusOf('whole', 'saddle-bottom');
    expect(saddle.status).toBe('to be re-proven');
    expect(saddle.because[0]).toContain('“Carriage V, both flanks” was done again');
    expect(saddle.waits[0]).toContain('Saddle milled and lined');
    await told('whole', 'saddle-liner', 'proven');
    await told('whole', 'saddle-bottom', 'proven', 1);
    expect(await statusOf('whole', 'saddle-bottom')).toMatchObject({ status: 'done', hours_spent: 10 });
    expect((await told('whole', 'no-such', 'done')).message).toContain('step: "no-such"; expected one of');
  });

  it('opens the bench of each step that has one, with its set-ups, targets, cautions; twice the same', async () => {
    const own = await post('/api/jobs/whole/steps/saddle-bottom/bench', { id: 'b0', at });
    expect(own).toMatchObject({ status: 200, job: 'whole' });
    const head = await post('/api/jobs/whole/steps/headstock/bench', { id: 'b1', at });
    expect(head).toMatchObject({ status: 201, job: 'b1' });
    expect(await post('/api/jobs/whole/steps/headstock/bench', { id: 'b2', at })).toMatchObject({
      status: 200,
      job: 'b1',
    });
    const { entries } = await get('/api/jobs/b1');
    const { plan } = entries[0];
    expect(plan.title).toBe('Invented lathe: Headstock to the bed');
    expect(plan.setups.map((one: { id: string }) => one.id)).toEqual(['bar', 'level_across']);
    expect(plan.targets.map((one: { feature: string }) => one.feature)).toEqual(['test bar', 'level across']);
    expect(plan.cautions.length).toBeGreaterThan(2);
    expect(entries[1]).toMatchObject({ kind: 'bench of', job: 'whole', step: 'headstock' });
    expect((await post('/api/jobs/whole/steps/survey/bench', { id: 'b3', at })).code).toBe('no bench');
    expect((await post('/api/jobs/whole/steps/nothing/bench', { id: 'b3', at })).code).toBe('no such step');
  });

  it('hands the bench the room that the kept heights leave it', async () => {
    const heights = {
      changes: [
        {
          name: 'wear',
          joint: 'saddle-on-bed',
          when: 'found',
          off_um: { front: 20, rear: 20, flat: 25 },
          sd_um: 4,
        },
      ],
    };
    await post('/api/rebuilds', { id: 'high', at, title: 'High', machine: 'engine-lathe' });
    const wrong = await post('/api/jobs/high/entries', {
      id: 'h0',
      at,
      kind: 'heights set',
      heights: { changes: [{ ...heights.changes[0], off_um: { frunt: 20 } }] },
    });
    expect(wrong.status).toBe(400);
    expect(wrong.message).toMatch(/heights\.changes\[0\]\.off_um\.frunt: .* expected one of/);
    const names: string[] = wrong.message.match(/expected one of (.*)$/m)[1].split(', ');
    const off_um = Object.fromEntries(names.map((pad, k) => [pad, 20 + k]));
    expect((await post('/api/jobs/high/heights', { changes: [{ ...heights.changes[0], off_um }] })).ok).toBe(
      true,
    );
    expect(
      (
        await post('/api/jobs/high/entries', {
          id: 'h1',
          at,
          kind: 'heights set',
          heights: { changes: [{ ...heights.changes[0], off_um }] },
        })
      ).status,
    ).toBe(201);
    const { limits } = await post('/api/jobs/high/heights', {});
    const room = limits.find((one: { joint: string }) => one.joint === 'saddle-on-bed').sink;
    expect(room.length).toBeGreaterThan(0);
  });

  it('an edited machine is kept as a whole, and one that does not hang together is refused by field', async () => {
    const { machines }: { machines: Machine[] } = await get('/api/machines');
    const mine: Machine = { ...machines[0]!, title: 'My own lathe' };
    expect((await post('/api/machines/check', mine)).order[0]).toBe('survey');
    expect(
      (await post('/api/jobs/whole/entries', { id: 'm1', at, kind: 'machine set', machine: mine })).status,
    ).toBe(201);
    expect((await get('/api/jobs/whole/order')).title).toBe('My own lathe');
    const ring = {
      ...mine,
      steps: mine.steps.map((step) =>
        step.id === 'survey' ? { ...step, after: [{ step: 'cutting', why: 'last' }] } : step,
      ),
    };
    expect((await post('/api/machines/check', ring)).message).toContain(
      'expected steps that do not wait for each other in a ring',
    );
  });

  it('chart: results and own tests from the ledger, judged; a job about one slide has no order', async () => {
    const entry = (id: string, deed: object) => post('/api/jobs/whole/entries', { id, at, ...deed });
    expect((await post('/api/jobs/whole/chart', {})).report.groups.length).toBeGreaterThan(4);
    const own = {
      id: 'own-play',
      group: 'Slides',
      name: 'Top slide, play',
      kind: 'size',
      how: 'indicator on the slide, pushed and pulled by hand',
      limit: { sense: 'size', um: 15 },
      minutes: 5,
    };
    const chart = { list: 'engine-lathe', class: 'ordinary', own_tests: [own] };
    expect((await entry('c1', { kind: 'chart set', chart })).status).toBe(201);
    const result = { value_um: 9, doubt_um: 3, instrument: 'lever indicator', on: '2031-11-25' };
    expect(
      (await entry('c2', { kind: 'result taken', test: 'own-play', when: 'final', result })).status,
    ).toBe(201);
    const { report } = await post('/api/jobs/whole/chart', {});
    const line = report.groups
      .flatMap((group: { lines: object[] }) => group.lines)
      .find((one: { id: string }) => one.id === 'own-play');
    expect(line).toMatchObject({ verdict: 'within', source_text: "shop's own: chosen for this machine" });
    const more = await entry('c3', { kind: 'result taken', test: 'own-pley', when: 'final', result });
    expect(more.message).toContain('own-pley');
    // Another list in place of the kept one: its results are passed over, not lost.
    expect((await post('/api/jobs/whole/chart', { list: 'surface-grinder' })).status).toBe(200);
    expect((await get('/api/jobs/b1/order')).code).toBe('no machine');
  });

  it('order, heights, axis and chart answer over HTTP as on the command line', async () => {
    const answered = await post('/api/order', {
      machine: 'surface-grinder',
      deeds: [{ step: 'survey', what: 'done' }],
    });
    expect(answered.ready).toEqual(['support', 'table-bottom', 'bearings']);
    expect((await post('/api/heights', { machine: 'engine-lathe' })).ok).toBe(true);
    const bar = { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 };
    const axis = await post('/api/axis', {
      bar,
      readings: [{ side: 'top', near: [1, -3], far: [-22, -54] }],
    });
    expect(axis.axes[0].sentence).toContain('The free end lies low');
    expect((await post('/api/axis', { bar })).message).toContain('readings');
    expect((await post('/api/chart', { list: 'engine-lathe' })).tally['not measured']).toBeGreaterThan(20);
  });
});
