import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { readTestLists } from '../../src/adapters/file/test-lists.ts';
import { sentSchema, storedEntry } from '../../src/contract/entry.ts';
import { jobFile } from '../../src/contract/job-file.ts';
import { kitFile, sentKitSchema, storedKitEntry } from '../../src/contract/kit-entry.ts';
import { pdfPages } from '../fixture/pdf-pages.ts';
import { plantedPaths, scripted, textPaths } from '../fixture/planted.ts';
import { type Served, serve } from '../server/served.ts';
import { type Opened, openBrowser, screenText } from './browser.ts';

const demo = (name: string) => JSON.parse(readFileSync(`demo/${name}.json`, 'utf8'));
const templates = readTemplates();
const lists = readTestLists();
/** What the program itself gives and looks up again. */
const names = new Set([
  ...templates.flatMap(({ id, dimensions }) => [id, ...dimensions.map(({ key }) => key)]),
  ...lists.flatMap(({ id, classes, tests }) => [
    id,
    ...classes.map((one) => one.id),
    ...tests.map((test) => test.id),
  ]),
]);
const saddle = demo('saddle.job');
const { plan } = saddle.entries[0];
const lines = demo('lathe.chart');
const corners = [0, 1, 2, 3].map((k) => ({ x: k === 1 || k === 2 ? 100 : 0, y: k > 1 ? 100 : 0 }));
/** Each kind of entry that has a text, once at least: the demos' and these. */
const jobs = {
  bench: scripted(
    saddle,
    [
      { kind: 'plan amended', change: plan },
      { kind: 'stop signed', round: 1 },
      { kind: 'cause settled', round: 1, cause: 'sweep reversed: cross ways, round 1', answer: 'no' },
      {
        kind: 'print photographed',
        round: 1,
        pad: plan.slide.pads[0].name,
        photo: 'a'.repeat(64),
        corners,
        size: { length_mm: 100, width_mm: 50 },
        shares: Array(6).fill(null),
        density_per_25mm: 1,
        bearing_pct: 10,
        confidence: 0.5,
        warnings: ['blurred'],
      },
    ],
    { schema: sentSchema, file: jobFile, entry: storedEntry },
    names,
  ),
  whole: scripted(
    demo('lathe.job'),
    [
      {
        kind: 'gib taken',
        of: 'cross-gib',
        asked: {
          gib: { stations_mm: [0, 300], thick_mm: [8, 13] },
          keepers: [{ name: 'front keeper', stations_mm: [0, 300], clearance_um: [10, 12] }],
        },
      },
      {
        kind: 'chart set',
        chart: {
          list: lines.list,
          class: lines.class,
          limits: lines.limits,
          left_out: lines.left_out,
          own_tests: [
            {
              id: 'own-play',
              group: 'Slides',
              name: '=1+1',
              kind: 'size',
              how: 'indicator on the slide, pushed and pulled by hand',
              minutes: 5,
              limit: { sense: 'size', um: 15 },
            },
          ],
        },
      },
      { kind: 'result taken', test: 'own-play', when: 'first', result: { value_um: 9, doubt_um: 3 } },
    ],
    { schema: sentSchema, file: jobFile, entry: storedEntry },
    names,
  ),
};
const kit = scripted(
  { format: 'waywright-kit', version: 1, entries: [] },
  [
    {
      kind: 'put',
      item: 'square',
      thing: {
        kind: 'square',
        name: 'the long square',
        length_mm: 300,
        known: { by: 'grade', standard: 'DIN 875', grade: '0' },
      },
    },
  ],
  { schema: sentKitSchema, file: kitFile, entry: storedKitEntry },
);

let served: Served;
let opened: Opened;
beforeAll(async () => {
  served = await serve();
  opened = await openBrowser(served.address);
  await opened.page.addInitScript(() => {
    Object.assign(window, { ran: () => Object.assign(window, { __ran: true }) });
  });
  const bring = async (path: string, file: unknown) => {
    const answer = await fetch(`${served.address}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(file),
    });
    expect(answer.status, await answer.text()).toBe(201);
  };
  for (const [id, file] of Object.entries(jobs)) await bring(`/api/import?as=${id}`, file);
  await bring('/api/kit/import', kit);
});
afterAll(async () => {
  await opened?.context.close();
  await served?.stop();
});

/** Texts that are none of a person's: each names what is looked up, and what is not there is refused. */
const lookedUp = [
  'axis taken: asked.scrape.machine',
  'axis taken: asked.scrape.step',
  'bar read: setup',
  'bench of: step',
  'bench opened: step',
  'chart set: chart.class',
  'chart set: chart.left_out[].test',
  'chart set: chart.limits[].test',
  'chart set: chart.list',
  'gib taken: asked.scrape.machine',
  'gib taken: asked.scrape.step',
  'gib taken: of',
  'heights set: heights.changes[].joint',
  'heights set: heights.liners[].joint',
  'job made: plan.template',
  'machine set: machine.steps[].opens[].sum',
  'plan amended: change.setups[].face',
  'plan amended: change.template',
  'print photographed: photo',
  'put: thing.known.grade',
  'put: thing.known.standard',
  'step told: step',
  'survey taken: ways[]',
  'sweep taken: setup',
];
/** Texts that stand in no demo's plan; the same words of other plans are planted. */
const elsewhere =
  /\bmakes\.|^height read: |own_tests\[\]\.(direction\.(allowed|reason)|limit\.source\.words)$/;

it('every text of every kind of entry holds a script, and the server takes it in', () => {
  const held = plantedPaths([...jobs.bench.entries, ...jobs.whole.entries, ...kit.entries]);
  const bare = [...textPaths(sentSchema), ...textPaths(sentKitSchema)].filter((path) => !held.has(path));
  expect(bare.filter((path) => !elsewhere.test(path)).toSorted()).toEqual(lookedUp);
  expect(held.size).toBeGreaterThan(100);
});

const screens = [
  '/jobs',
  '/kit',
  '/kit/thing/square',
  ...['', '/measure', '/scrape', '/chart', '/ledger', '/parts'].map((room) => `/job/bench${room}`),
  ...['/order', '/heights', '/axis', '/machine', '/chart', '/ledger', '/survey'].map(
    (room) => `/job/whole${room}`,
  ),
];
it('no screen takes a text for anything but text', async () => {
  const { page, complaints, strangers } = opened;
  for (const screen of screens) {
    await page.goto(`${served.address}${screen}`);
    // It is there to be read, in letters or in a cell, and nothing was made of it.
    const shown = () =>
      page.evaluate(() =>
        [
          document.body.textContent,
          ...[...document.querySelectorAll('input, textarea')].map((one) => (one as HTMLInputElement).value),
        ].some((text) => text?.includes('class=planted')),
      );
    await expect.poll(shown, { message: screen, timeout: 30_000 }).toBe(true);
    expect(
      await page.evaluate(() => [document.querySelectorAll('.planted, [onerror]').length, '__ran' in window]),
      screen,
    ).toEqual([0, false]);
    expect(await screenText(page), screen).not.toContain('something broke');
  }
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

it('neither does the chart on paper, as a drawing or in a spreadsheet', async () => {
  const [pdf, svg, csv] = ['pdf', 'svg', 'csv'].map((ending) => join(served.folder, `chart.${ending}`));
  await promisify(execFile)(
    process.execPath,
    ['dist/faces/cli/main.js', 'chart', 'whole', '--pdf', pdf!, '--svg', svg!, '--csv', csv!],
    { env: { ...process.env, WAYWRIGHT_DATA: served.folder } },
  );
  const { pages } = await pdfPages(await readFile(pdf!));
  expect(pages.map(({ text }) => text).join(' ')).toContain('<img class=planted');
  const drawn = await readFile(svg!, 'utf8');
  expect(drawn).toContain('class=planted');
  expect(drawn).not.toMatch(/<img|<b |<script|\son\w+="/);
  // Opened as a page of its own, the browser too finds nothing but letters in it.
  await opened.page.goto(`data:image/svg+xml;base64,${Buffer.from(drawn).toString('base64')}`);
  expect(await opened.page.evaluate(() => document.querySelectorAll('.planted, [onerror]').length)).toBe(0);
  expect(await opened.page.evaluate(() => document.documentElement.textContent)).toContain('class=planted');
  const { data } = Papa.parse<Record<string, string>>(await readFile(csv!, 'utf8'), { header: true });
  const cells = data.flatMap((row) => Object.values(row));
  expect(cells.some((cell) => cell.includes('class=planted'))).toBe(true);
  // A cell that begins as a formula does is told to the spreadsheet as text; a number with its sign is none.
  expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell) && Number.isNaN(Number(cell)))).toEqual([]);
  expect(cells.some((cell) => cell.startsWith("'=1+1"))).toBe(true);
});
