import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import type { Compute } from '../../src/shop/compute.ts';
import type { Store } from '../../src/shop/store.ts';

const demoText = readFileSync('demo/saddle.job.json', 'utf8');
const host = '127.0.0.1:7117';
const at = '2031-11-25T14:32:00+01:00';
const typed = { host, 'content-type': 'application/json' };

let app: FastifyInstance;
let store: Store;
/** Questions that wait until the test answers them. */
let asked: { entries: number; answer: (failure?: Error) => void }[];

const compute: Compute = (_, ask) =>
  new Promise((done, failed) => {
    const entries = (ask as readonly unknown[]).length;
    asked.push({
      entries,
      answer: (failure) => (failure ? failed(failure) : done({ seq: entries, rounds: [] } as never)),
    });
  });

beforeEach(async () => {
  asked = [];
  store = await openSqlite(join(mkdtempSync(join(tmpdir(), 'waywright-')), 'workshop.db'), { mostPages: 60 });
  app = await buildApp({ store, templates: readTemplates(), compute, version: 'test' });
  await post('/api/import', demoText);
});
afterEach(async () => {
  await app.close();
  await store.close();
});

const post = (url: string, payload: string | object) =>
  app.inject({
    method: 'POST',
    url,
    headers: typed,
    payload: typeof payload === 'string' ? payload : JSON.stringify(payload),
  });
const get = (url: string) => app.inject({ method: 'GET', url, headers: { host } });
const note = (id: string, text = 'oil') => ({ id, at, kind: 'note', text });
const until = async (met: () => boolean) => {
  while (!met()) await new Promise((wait) => setTimeout(wait, 1));
};

describe('jobs over HTTP', () => {
  it('export, import and export again give the same bytes, under a new id too', async () => {
    const exported = await get('/api/jobs/demo-saddle/export');
    expect(exported.body).toBe(demoText);
    expect(exported.headers['content-disposition']).toContain('demo-saddle');
    expect((await post('/api/import', exported.body)).statusCode).toBe(200);
    expect((await post('/api/import?as=another', exported.body)).json()).toMatchObject({ id: 'another' });
    const again = await get('/api/jobs/another/export');
    expect(again.body).toBe(demoText.replace('"id": "demo-saddle"', '"id": "another"'));
  });

  it('a different job under the same id is refused, and taken in under another', async () => {
    const file = JSON.parse(demoText);
    file.entries = file.entries.slice(0, 2);
    file.entries[1].at = '2031-01-01T00:00:00Z';
    const refused = await post('/api/import', file);
    expect(refused.statusCode).toBe(409);
    expect(refused.json().message).toContain('nothing was changed');
    expect((await get('/api/jobs/demo-saddle/export')).body).toBe(demoText);
    expect((await post('/api/import?as=second', file)).statusCode).toBe(201);
    expect((await post('/api/import?as=sec%20ond', file)).json().issues[0].path).toBe('as');
    expect((await post('/api/import?under=third', file)).json().issues[0].path).toBe('under');
  });

  it('a full disk is 507 in words, and nothing of the entry is kept', async () => {
    const before = (await get('/api/jobs/demo-saddle')).json().entries.length;
    const long = 'x'.repeat(4_900);
    let kept = 0;
    let answer = await post('/api/jobs/demo-saddle/entries', note('n0', long));
    while (answer.statusCode === 201 && kept < 100) {
      kept += 1;
      answer = await post('/api/jobs/demo-saddle/entries', note(`n${kept}`, long));
    }
    expect(answer.statusCode).toBe(507);
    expect(answer.json()).toMatchObject({ code: 'disk full' });
    expect(answer.json().message).toContain('make room');
    expect((await get('/api/jobs/demo-saddle')).json().entries).toHaveLength(before + kept);
  });

  it('two writes of one id at the same moment are kept once', async () => {
    const both = await Promise.all([1, 2].map(() => post('/api/jobs/demo-saddle/entries', note('n1'))));
    expect(both.map((one) => one.statusCode).sort()).toEqual([200, 201]);
    expect(new Set(both.map((one) => one.json().seq)).size).toBe(1);
  });

  it('names the limit of a body that is too large, and its type when it is not JSON', async () => {
    const large = await post('/api/steer', `{"text":"${'x'.repeat(10_000_000)}"}`);
    expect(large.statusCode).toBe(413);
    expect(large.json().message).toContain('larger than 4194304 bytes');
    const plain = await app.inject({
      method: 'POST',
      url: '/api/steer',
      headers: { host, 'content-type': 'text/plain' },
      payload: '{}',
    });
    expect(plain.statusCode).toBe(415);
    expect(plain.json().message).toContain('application/json');
    const none = await app.inject({ method: 'POST', url: '/api/steer', headers: { host } });
    expect(none.statusCode).toBe(400);
    const empty = await app.inject({ method: 'POST', url: '/api/steer', headers: typed, payload: '' });
    expect(empty.statusCode).toBe(400);
  });

  it('never answers 5xx to an address, however odd', async () => {
    const methods = ['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS'] as const;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...methods),
        fc.constantFrom('', '/answer', '/export', '/steer-input', '/entries', '/none'),
        fc.oneof(
          fc.string(),
          fc.string({ unit: 'binary' }),
          fc.constantFrom('%', '%00', '..', '%2e%2e%2f', '__proto__'),
        ),
        async (method, end, odd) => {
          const id = odd.startsWith('%') ? odd : encodeURIComponent(odd.toWellFormed());
          const { statusCode } = await app.inject({
            method,
            url: `/api/jobs/${id}${end}`,
            headers: { host },
          });
          expect(statusCode).toBeLessThan(500);
        },
      ),
      { numRuns: 400, seed: 20311126 },
    );
  });
});

describe('the answer of a job', () => {
  it('is worked out once for a place in the ledger', async () => {
    const both = [get('/api/jobs/demo-saddle/answer'), get('/api/jobs/demo-saddle/answer')];
    await until(() => asked.length > 0);
    asked[0]!.answer();
    expect((await Promise.all(both)).map((one) => one.statusCode)).toEqual([200, 200]);
    await get('/api/jobs/demo-saddle/answer');
    expect(asked).toHaveLength(1);
  });

  it('leaves no queue behind entries written in a row: who waits is answered for the last', async () => {
    const first = get('/api/jobs/demo-saddle/answer');
    await until(() => asked.length === 1);
    const later = [];
    for (const id of ['n1', 'n2', 'n3']) {
      await post('/api/jobs/demo-saddle/entries', note(id));
      later.push(get('/api/jobs/demo-saddle/answer'));
      await get('/api/jobs');
    }
    expect(asked).toHaveLength(1);
    asked[0]!.answer();
    expect((await first).json().seq).toBe(asked[0]!.entries);
    await until(() => asked.length === 2);
    asked[1]!.answer();
    for (const one of await Promise.all(later)) expect(one.json().seq).toBe(asked[0]!.entries + 3);
    expect(asked).toHaveLength(2);
  });

  it('that failed is tried again when it is asked again', async () => {
    const first = get('/api/jobs/demo-saddle/answer');
    await until(() => asked.length === 1);
    asked[0]!.answer(new Error('the computing thread ended'));
    expect((await first).statusCode).toBe(500);
    const second = get('/api/jobs/demo-saddle/answer');
    await until(() => asked.length === 2);
    asked[1]!.answer();
    expect((await second).statusCode).toBe(200);
  });
});
