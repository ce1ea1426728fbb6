import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { computeWith } from '../../src/shop/compute.ts';
import type { Store } from '../../src/shop/store.ts';

const steerCase = JSON.parse(readFileSync('checks/data/cases/steer-2.json', 'utf8')).input;
const restCase = JSON.parse(readFileSync('checks/data/cases/rest-2.json', 'utf8')).input;
const siteCase = JSON.parse(readFileSync('checks/data/cases/site-1.json', 'utf8'));
/** A saddle that goes 3 µm toward the operator over 300 mm, and a feature that wears. */
const partsCase = {
  lathe: {
    travel: {
      stations_mm: [0, 300],
      shift_um: [
        [0, 0, 0],
        [0, -3, 0],
      ],
    },
    tool_mm: [0, -20, 150],
    turned: [{ name: 'bar', radius_mm: 20, from_mm: 0, to_mm: 300 }],
  },
  wear: {
    per: 'year',
    features: [{ name: 'facing', unit: 'urad', value: 40, sd: 3, low: 20, high: 66, rate: -5 }],
  },
};
const at = '2031-11-25T14:32:00+01:00';

let app: FastifyInstance;
let store: Store;

beforeAll(async () => {
  store = await openSqlite(':memory:');
  app = await buildApp({
    store,
    templates: readTemplates(),
    compute: computeWith(solveWithHighs),
    version: 'test',
  });
  const made = await send('POST', '/api/jobs', {
    id: 'job',
    at,
    template: 'lathe-saddle',
    title: 'Job',
    dimensions: {},
  });
  expect(made.status).toBe(201);
});
afterAll(async () => {
  await app.close();
  await store.close();
});

async function send(
  method: 'GET' | 'POST',
  url: string,
  body?: unknown,
  headers: Record<string, string> = {},
) {
  const payload = body === undefined ? undefined : typeof body === 'string' ? body : JSON.stringify(body);
  const response = await app.inject({
    method,
    url,
    headers: {
      host: '127.0.0.1:7117',
      ...(payload === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(payload === undefined ? {} : { payload }),
  });
  const json = response.headers['content-type']?.toString().includes('json') ? response.json() : undefined;
  return { status: response.statusCode, json };
}

type Path = readonly (string | number)[];

/** What is wrong, the field the refusal must name, where the sound case is spoiled, and with what (nothing: taken away). */
const spoiled: [string, string, Path, unknown?][] = [
  ['a missing pad list', 'slide.pads', ['slide', 'pads']],
  ['no pads', 'slide.pads', ['slide', 'pads'], []],
  ['two pads of one name', 'slide.pads', ['slide', 'pads', 1, 'name'], 'front flank'],
  ['text for a number', 'slide.pads[0].length_mm', ['slide', 'pads', 0, 'length_mm'], '390'],
  ['a negative width', 'slide.pads[1].width_mm', ['slide', 'pads', 1, 'width_mm'], -26],
  ['half a zone', 'slide.pads[0].zones', ['slide', 'pads', 0, 'zones'], 6.5],
  ['a direction of no length', 'slide.pads[0].normal', ['slide', 'pads', 0, 'normal'], [0, 0, 0]],
  ['null for a place', 'slide.pads[2].centre_mm', ['slide', 'pads', 2, 'centre_mm'], null],
  ['an unknown key', 'slide.colour', ['slide', 'colour'], 'grey'],
  ['an unknown key at the top', 'speed', ['speed'], 1],
  ['a material with no pass size', 'slide.pads[0].material', ['slide', 'pads', 0, 'material'], 'bronze'],
  ['a target on no feature', 'targets[0].feature', ['targets', 0, 'feature'], 'facin'],
  ['a band upside down', 'targets[0].high', ['targets', 0, 'high'], 2],
  ['an aim outside its band', 'targets[0].aim', ['targets', 0, 'aim'], 400],
  [
    'fewer readings than points',
    'rounds[0].sweeps[0].readings_um',
    ['rounds', 0, 'sweeps', 0, 'readings_um'],
    [1, 2, 3],
  ],
  [
    'an indicator that rides what it touches',
    'rounds[0].sweeps[0].touches',
    ['rounds', 0, 'sweeps', 0, 'touches'],
    'slide',
  ],
  [
    'a reading without doubt',
    'rounds[0].sweeps[0].reading_sd_um',
    ['rounds', 0, 'sweeps', 0, 'reading_sd_um'],
    0,
  ],
  ['a print of a pad that is not there', 'rounds[0].print.top', ['rounds', 0, 'print'], { top: [1] }],
  ['a print with too few zones', 'rounds[0].print.flat', ['rounds', 0, 'print'], { flat: [0.5, 0.4] }],
  ['a share above one', 'rounds[0].print.flat[0]', ['rounds', 0, 'print'], { flat: [1.4, 0, 0, 0, 0, 0] }],
  ['negative passes', 'rounds[0].scraped.flat[0]', ['rounds', 0, 'scraped'], { flat: [-1, 0, 0, 0, 0, 0] }],
  ['no rounds', 'rounds', ['rounds'], []],
];

/** A copy of a tree with the value at a path replaced, or taken away. */
function changed(tree: unknown, path: Path, value?: unknown): unknown {
  const copy = structuredClone(tree);
  const parent = path.slice(0, -1).reduce((node, step) => (node as never)[step], copy) as Record<
    string,
    unknown
  >;
  const key = String(path.at(-1));
  if (value === undefined) delete parent[key];
  else parent[key] = value;
  return copy;
}

describe('bad input over HTTP', () => {
  it.each(spoiled)('%s is refused, and the refusal names %s', async (_, field, path, value) => {
    const { status, json } = await send('POST', '/api/steer', changed(steerCase, path, value));
    expect(status).toBe(400);
    expect(json.issues.map((issue: { path: string }) => issue.path)).toContain(field);
    for (const issue of json.issues) expect(issue.expected.length).toBeGreaterThan(3);
  });

  it('text that is not JSON is refused with the line where it stops being JSON', async () => {
    const { status, json } = await send('POST', '/api/steer', '{\n "slide": {\n  "name": saddle\n }\n}');
    expect(status).toBe(400);
    expect(json.issues[0].path).toBe('line 3');
    for (const text of ['', '{"slide": NaN}', '[1,', 'null', '"steer"', '[]', '7'])
      expect((await send('POST', '/api/steer', text === '' ? ' ' : text)).status).toBe(400);
  });

  it('a body of 10 MB is refused unread', async () => {
    const { status, json } = await send(
      'POST',
      '/api/jobs/job/entries',
      `{"text":"${'x'.repeat(10_000_000)}"}`,
    );
    expect(status).toBe(413);
    expect(json.code).toBe('too large');
  });

  it('an unreachable target is 422 and says which limit binds', async () => {
    const input = structuredClone(steerCase);
    for (const pad of input.slide.pads) pad.stock_um = 1.5;
    const { status, json } = await send('POST', '/api/steer', input);
    expect(status).toBe(422);
    expect(json.message).toMatch(/short by/);
  });

  it('an entry must fit its job', async () => {
    const refused = async (deed: object, field: string) => {
      const { status, json } = await send('POST', '/api/jobs/job/entries', { id: 'x1', at, ...deed });
      expect(status, field).toBe(400);
      expect(json.issues.map((issue: { path: string }) => issue.path)).toContain(field);
    };
    await refused(
      { kind: 'level read', round: 1, setup: 'nowhere', record: {}, reading: { typed: '3', value: 3 } },
      'setup',
    );
    await refused({ kind: 'undone', entry: 'nothing' }, 'entry');
    await refused({ kind: 'undone', entry: 'job-made' }, 'entry');
    await refused({ kind: 'print read', round: 1, share: { top: [1] } }, 'share["top"]');
    await refused({ kind: 'pass made', round: 1, pass: 0, zones: {} }, 'pass');
    await refused({ kind: 'note', text: 'a', colour: 1 }, 'colour');
    await refused({ kind: 'sung', text: 'a' }, 'kind');
    const { json } = await send('GET', '/api/jobs/job');
    expect(json.entries).toHaveLength(1);
  });

  it('the same entry sent twice is kept once; another under its id is a conflict', async () => {
    const entry = { id: 'twice', at, kind: 'note', text: 'wiped the ways' };
    expect((await send('POST', '/api/jobs/job/entries', entry)).status).toBe(201);
    expect((await send('POST', '/api/jobs/job/entries', entry)).status).toBe(200);
    expect((await send('POST', '/api/jobs/job/entries', { ...entry, text: 'other' })).status).toBe(409);
    expect((await send('GET', '/api/jobs/job')).json.entries).toHaveLength(2);
  });

  it('another host’s name and another page’s writes are turned away', async () => {
    expect((await send('GET', '/api/jobs', undefined, { host: 'workshop.example' })).status).toBe(421);
    expect((await send('POST', '/api/import', {}, { origin: 'http://page.example' })).status).toBe(403);
  });

  it('where to print and what parts come off are answered as the command line does, or refused by field', async () => {
    const site = await send('POST', '/api/site', siteCase.input);
    expect(site.status).toBe(200);
    site.json.candidates.forEach((one: { yaw_rms_urad: number }, k: number) => {
      expect(one.yaw_rms_urad).toBeCloseTo(siteCase.expected.candidates[k].yaw_rms_urad, 3);
    });
    const short = await send('POST', '/api/site', { ...siteCase.input, duty: [1] });
    expect([short.status, short.json.issues[0].path]).toEqual([400, 'duty']);
    const lifted = { ...siteCase.input, load: { ...siteCase.input.load, direction: [0, 0, 1] } };
    expect((await send('POST', '/api/site', lifted)).status).toBe(422);
    const parts = await send('POST', '/api/parts', partsCase);
    expect(parts.status).toBe(200);
    expect(parts.json.turned[0].taper_um.value).toBeCloseTo(6, 6);
    expect(parts.json.wear[0].lasts).toBeCloseTo(4, 9);
    expect((await send('POST', '/api/parts', {})).status).toBe(400);
  });

  it('never answers 5xx, whatever is sent where', async () => {
    const urls = [
      '/api/steer',
      '/api/rest',
      '/api/site',
      '/api/parts',
      '/api/line',
      '/api/plate',
      '/api/kit/report',
      '/api/sums',
      '/api/jobs',
      '/api/jobs/job/entries',
      '/api/jobs/none/entries',
      '/api/import',
    ];
    const sound = [
      steerCase,
      restCase,
      siteCase.input,
      partsCase,
      { id: 'f', at, kind: 'note', text: 't' },
      { format: 'waywright-job', version: 1, id: 'i', entries: [] },
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...urls),
        fc.oneof(
          fc.json(),
          fc.string(),
          // A sound body with one of its values replaced by anything.
          fc
            .tuple(fc.constantFrom(...sound), fc.nat(), fc.jsonValue())
            .map(([body, where, value]) => JSON.stringify(replaced(body, where, value))),
        ),
        async (url, body) => {
          const { status } = await send('POST', url, body === '' ? ' ' : body);
          expect(status).toBeLessThan(500);
        },
      ),
      { numRuns: 600, seed: 20311125 },
    );
  });
});

/** The value at the n-th place of a tree, counted through, replaced. */
function replaced(tree: unknown, where: number, value: unknown): unknown {
  const places: [Record<string, unknown>, string][] = [];
  const copy = structuredClone(tree);
  const walk = (node: unknown) => {
    if (node === null || typeof node !== 'object') return;
    for (const key of Object.keys(node)) {
      places.push([node as Record<string, unknown>, key]);
      walk((node as Record<string, unknown>)[key]);
    }
  };
  walk(copy);
  const [parent, key] = places[where % places.length]!;
  parent[key] = value;
  return copy;
}
