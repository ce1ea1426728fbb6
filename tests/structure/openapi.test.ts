import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { zipArchives } from '../../src/adapters/archive/archives.ts';
import { deviceDesk } from '../../src/adapters/devices/desk.ts';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { readTestLists } from '../../src/adapters/file/test-lists.ts';
import { readWholeMachines } from '../../src/adapters/file/whole-machines.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { bodySchemas } from '../../src/faces/server/described/bodies.ts';
import { openapi, openPath, routesTable } from '../../src/faces/server/described/document.ts';
import { described } from '../../src/faces/server/described/routes.ts';
import { computeWith } from '../../src/shop/compute.ts';
import type { Store } from '../../src/shop/store.ts';

const text = readFileSync('docs/openapi.json', 'utf8');
const document = JSON.parse(text) as {
  info: { version: string };
  paths: Record<string, Record<string, { responses: Record<string, Described> }>>;
  components: { schemas: Record<string, unknown> };
};
interface Described {
  readonly content: Record<string, { readonly schema: object }>;
}

const unasked = async () => {
  throw new Error('not asked here');
};
/** Nobody is in, and nobody comes. */
const desk = deviceDesk({ news: async () => ({ lines: [] }), add: async () => undefined });

let app: FastifyInstance;
let store: Store;
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'waywright-'));
  store = await openSqlite(join(folder, 'workshop.db'));
  app = await buildApp({
    store,
    templates: readTemplates(),
    machines: readWholeMachines(),
    compute: computeWith(solveWithHighs),
    photos: {
      store: {
        keep: unasked,
        open: async () => undefined,
        about: async () => undefined,
        all: async () => [],
        nameOf: unasked,
      },
      ask: unasked,
    },
    archives: zipArchives(folder),
    charts: { lists: readTestLists(), press: unasked },
    share: { ...desk, scheme: 'http', addresses: () => [] },
    version: 'test',
    description: text,
  });
});
afterAll(async () => {
  await app.close();
  await store.close();
});

describe('docs/openapi.json', () => {
  it('is OpenAPI 3.1', async () => {
    const validator = new Validator();
    const { valid, errors } = await validator.validate(JSON.parse(text));
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    expect(validator.version).toBe('3.1');
  });

  it('is what the routes and their schemas give now: else run npm run build && node scripts/openapi.mjs', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    const { schemas } = document.components;
    const now = JSON.parse(
      JSON.stringify(openapi(version, schemas as Record<string, Record<string, unknown>>)),
    );
    expect({ ...document, components: { ...document.components, schemas: null } }).toEqual({
      ...now,
      components: { ...now.components, schemas: null },
    });
    for (const [name, schema] of Object.entries(bodySchemas()))
      expect(schemas[name], name).toEqual(JSON.parse(JSON.stringify(schema)));
    expect(readFileSync('docs/http.md', 'utf8')).toContain(routesTable());
  });

  it('describes every route of the server, and none that it has not', () => {
    const folder = 'src/faces/server';
    const routes = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
      .flatMap((file) =>
        [
          ...readFileSync(join(folder, file), 'utf8').matchAll(
            /\bapp\.(get|post|put|patch|delete|head|all|route)\b(?:<[^(]+>)?\(\s*'?([^',]*)/g,
          ),
        ].map(([, method, path]) => `${method!.toUpperCase()} ${path}`),
      )
      .filter((route) => route !== 'GET /*');
    expect(described.map((one) => one.does).toSorted()).toEqual(routes.toSorted());
    for (const { does } of described) {
      const [method, url] = does.split(' ') as ['GET' | 'POST', string];
      expect(app.hasRoute({ method, url }), does).toBe(true);
    }
  });
});

describe('what the server answers fits its description', () => {
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  ajv.addSchema({ $id: 'all', ...document });
  const fits = (does: string, status: number, body: unknown) => {
    const [method, path] = does.split(' ') as [string, string];
    const at = openPath(path)
      .replaceAll('~', '~0')
      .replaceAll('/', '~1')
      .replaceAll('{', '%7B')
      .replaceAll('}', '%7D');
    const responses = document.paths[openPath(path)]![method.toLowerCase()]!.responses;
    const code = String(status) in responses ? status : 'default';
    const check = ajv.compile({
      $ref: `all#/paths/${at}/${method.toLowerCase()}/responses/${code}/content/application~1json/schema`,
    });
    const good = check(body);
    expect(check.errors ?? [], `${does} ${status}`).toEqual([]);
    expect(good).toBe(true);
  };
  const ask = async (does: string, url: string, payload?: unknown) => {
    const [method] = does.split(' ') as ['GET' | 'POST'];
    const reply = await app.inject({
      method,
      url,
      headers: { host: '127.0.0.1:7117', 'content-type': 'application/json' },
      ...(payload === undefined ? {} : { payload: JSON.stringify(payload) }),
    });
    fits(does, reply.statusCode, reply.json());
    return reply.statusCode;
  };
  const cases = (name: string) => JSON.parse(readFileSync(`checks/data/cases/${name}.json`, 'utf8')).input;
  const demo = (name: string) => JSON.parse(readFileSync(`demo/${name}.job.json`, 'utf8'));

  it('a job’s ledger, answer, file and order of work', async () => {
    expect(await ask('POST /api/import', '/api/import', demo('saddle'))).toBe(201);
    expect(await ask('POST /api/import', '/api/import', demo('saddle'))).toBe(200);
    expect(await ask('POST /api/import', '/api/import', demo('lathe'))).toBe(201);
    for (const path of ['', '/answer', '/steer-input', '/export', '/photos'])
      expect(await ask(`GET /api/jobs/:id${path}`, `/api/jobs/demo-saddle${path}`)).toBe(200);
    expect(await ask('GET /api/jobs/:id/order', '/api/jobs/demo-lathe/order')).toBe(200);
    expect(await ask('POST /api/jobs/:id/heights', '/api/jobs/demo-lathe/heights', {})).toBe(200);
    expect(await ask('POST /api/jobs/:id/chart', '/api/jobs/demo-lathe/chart', {})).toBe(200);
  });
  it('lists', async () => {
    for (const path of [
      'health',
      'ready',
      'workshop',
      'openapi.json',
      'share',
      'templates',
      'jobs',
      'machines',
      'charts',
      'kit',
    ])
      expect(await ask(`GET /api/${path}`, `/api/${path}`)).toBe(200);
  });
  it('sums', async () => {
    for (const verb of ['steer', 'rest', 'site', 'line', 'plate'])
      expect(await ask(`POST /api/${verb}`, `/api/${verb}`, cases(`${verb}-1`))).toBe(200);
    const asked = { sum: 'dovetail-male', values: { root_mm: 40, roll_mm: 10, angle_deg: 60 } };
    expect(await ask('POST /api/sums', '/api/sums', asked)).toBe(200);
  });
  it('refusals', async () => {
    expect(await ask('POST /api/steer', '/api/steer', {})).toBe(400);
    expect(await ask('GET /api/jobs/:id', '/api/jobs/none')).toBe(404);
    expect(await ask('GET /api/jobs/:id/order', '/api/jobs/demo-saddle/order')).toBe(404);
  });
});
