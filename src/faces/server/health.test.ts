import fastify from 'fastify';
import { expect, it } from 'vitest';
import { filled } from '../../../tests/fixture/whole-workshop.ts';
import { computeWith } from '../../shop/compute.ts';
import { type BackupRecord, dueIn_ms } from '../../shop/keeping/backup.ts';
import { Fault } from '../../shop/store.ts';
import { buildApp } from './app.ts';
import { keepBackups } from './backups.ts';
import { logging, tellRequests } from './log.ts';

const compute = computeWith(async () => {
  throw new Error('not asked here');
});

it('tells that it lives, that it can work, and what it keeps, without a path or a title', async () => {
  const { store, photos, place, close } = await filled();
  const ask = async () => {
    throw new Error('not asked here');
  };
  const app = await buildApp({
    store,
    templates: [],
    compute,
    version: '9.9.9',
    photos: { store: photos, ask },
  });
  const get = async (url: string) => {
    const reply = await app.inject({ url, headers: { host: '127.0.0.1' } });
    return { status: reply.statusCode, body: reply.json() as Record<string, unknown>, text: reply.body };
  };
  expect((await get('/api/health')).body).toEqual({ ok: true, version: '9.9.9' });
  expect((await get('/api/ready')).body).toEqual({ ready: true });
  const told = await get('/api/workshop');
  expect(told.body).toMatchObject({
    version: '9.9.9',
    store: { kind: 'SQLite', jobs: 3, kit_entries: 1 },
    photos: { count: 2, bytes: 40_900 },
  });
  expect(told.text).not.toContain(place.folder);
  expect(told.text).not.toContain('saddle');
  await close();
  // The store is gone: it lives, and says that it cannot work.
  expect((await get('/api/health')).status).toBe(200);
  expect((await get('/api/ready')).status).toBe(503);
  await app.close();
});

it('logs each request by its route, and nothing of what was sent or by whom', async () => {
  const lines: string[] = [];
  const app = fastify(logging({ WAYWRIGHT_LOG: 'info' }, { write: (line) => void lines.push(line) }));
  tellRequests(app);
  app.post('/api/jobs/:id', async (request) => {
    request.log.error(Object.assign(new Error('secret-title is no number'), { code: 'ODD' }));
    return {};
  });
  await app.inject({
    method: 'POST',
    url: '/api/jobs/secret-id?who=secret-query',
    payload: { title: 'secret-title' },
    headers: { 'user-agent': 'secret-phone', 'x-forwarded-for': '203.0.113.7' },
    remoteAddress: '203.0.113.8',
  });
  await app.inject({ url: '/nowhere/secret-path' });
  const all = lines.join('');
  expect(all).not.toMatch(/secret|203\.0/);
  const told = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
  expect(told.find(({ route }) => route === '/api/jobs/:id')).toMatchObject({ method: 'POST', status: 200 });
  expect(told.find(({ err }) => err)).toMatchObject({ err: { code: 'ODD' } });
  await app.close();
});

it('backups by the clock: at once where none is, then when due, after a failure not at each look, told each time', async () => {
  let now = '2031-11-25T14:00:00Z';
  let why: Error | undefined;
  const made: BackupRecord[] = [];
  const told: string[] = [];
  const backups = keepBackups({
    plan: { on: true, every_h: 24, keep: 3, folder: 'anywhere' },
    make: async (at) => {
      if (why) throw why;
      const sum = { jobs: [], kit: { entries: 2, sha256: '' }, photos: [], missing: [] };
      made.push({ number: made.length + 1, at, file: 'f.db', bytes: 5, sum, damaged_photos: [] } as never);
      return made.at(-1)!;
    },
    newest: async () => made.at(-1),
    now: () => now,
    tell: (word) => told.push(word),
  });
  await backups.look();
  await backups.look();
  expect(made).toHaveLength(1);
  expect(await backups.state()).toMatchObject({ on: true, last: { number: 1, entries: 2 } });
  now = '2031-11-26T14:00:01Z';
  why = new Fault('disk full', 'the disk is full');
  await backups.look();
  await backups.look();
  expect(told).toEqual(['backup 1 made: f.db', 'no backup was made: the disk is full']);
  expect(await backups.state()).toMatchObject({
    failed: { at: now, why: 'the disk is full' },
    last: { number: 1 },
  });
  why = undefined;
  now = '2031-11-26T15:30:00Z';
  await backups.look();
  expect((await backups.state()).failed).toBeUndefined();
  expect(made).toHaveLength(2);
  expect(dueIn_ms(made[1]!.at, now, { every_h: 24, keep: 3 })).toBe(24 * 3_600_000);
  backups.close();
});
