import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { unzipSync, zipSync } from 'fflate';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { zipArchives } from '../../src/adapters/archive/archives.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import {
  demoJob,
  newWorkshop,
  noisePhoto,
  sha256,
  type Workshop,
  withPhotos,
} from '../fixture/job-photos.ts';

const { id } = demoJob();
const host = '127.0.0.1:7117';

async function server(shop: Workshop): Promise<FastifyInstance> {
  const not = async () => {
    throw new Error('nothing is worked out here');
  };
  const folder = join(shop.folder, 'photos');
  return buildApp({
    store: shop.store,
    templates: [],
    compute: not,
    photos: { store: shop.photos, ask: not },
    archives: zipArchives(folder),
    version: 'test',
  });
}

let from: Workshop;
let to: Workshop;
let apps: FastifyInstance[];
beforeEach(async () => {
  [from, to] = [await newWorkshop(), await newWorkshop()];
  apps = [await server(from), await server(to)];
});
afterEach(async () => {
  await Promise.all(apps.map((app) => app.close()));
});

const get = (app: FastifyInstance, url: string) => app.inject({ method: 'GET', url, headers: { host } });
const send = (
  app: FastifyInstance,
  payload: Buffer | string,
  type = 'application/zip',
  url = '/api/archives',
) => app.inject({ method: 'POST', url, headers: { host, 'content-type': type }, payload });

it('a job and its photos go from one server to another byte for byte, and nothing is left lying about', async () => {
  const all = [noisePhoto(300_000), noisePhoto(20_000)];
  const hashes = await withPhotos(from, all);
  const [here, there] = apps as [FastifyInstance, FastifyInstance];
  expect((await get(here, `/api/jobs/${id}/photos`)).json()).toEqual({
    photos: hashes.map((hash, k) => ({ hash, bytes: all[k]!.length })),
    bytes: 320_000,
    missing: [],
  });
  const sent = await get(here, `/api/jobs/${id}/archive`);
  expect(sent.headers).toMatchObject({
    'content-type': 'application/zip',
    'content-disposition': `attachment; filename="${id}.waywright.zip"`,
  });
  const came = await send(there, sent.rawPayload);
  expect([came.statusCode, came.json()]).toEqual([
    201,
    { id, seq: demoJob().entries.length + 2, photos: { taken: 2, here: 0, missing: [] } },
  ]);
  for (const [k, hash] of hashes.entries()) {
    const shown = await get(there, `/api/photos/${hash}`);
    expect(sha256(shown.rawPayload)).toBe(hash);
    expect(shown.rawPayload.equals(all[k]!)).toBe(true);
  }
  expect((await get(there, `/api/jobs/${id}/archive`)).rawPayload.equals(sent.rawPayload)).toBe(true);
  // The plain job file is as it was, and holds no photo.
  expect((await get(there, `/api/jobs/${id}/export`)).body).toBe(
    (await get(here, `/api/jobs/${id}/export`)).body,
  );
  expect((await send(there, sent.rawPayload)).statusCode).toBe(200);
  expect((await send(there, sent.rawPayload, 'application/zip', '/api/archives?as=other')).json().id).toBe(
    'other',
  );
  expect(readdirSync(join(to.folder, 'photos')).filter((name) => name.startsWith('.'))).toEqual([]);
});

it('what cannot be taken is refused in words that name the photo, and the server goes on', async () => {
  const [hash] = await withPhotos(from, [noisePhoto(4_000)]);
  const [here, there] = apps as [FastifyInstance, FastifyInstance];
  const whole = (await get(here, `/api/jobs/${id}/archive`)).rawPayload;
  const changed = Buffer.from(zipSync({ ...unzipSync(whole), [`photos/${hash}.jpeg`]: noisePhoto(4_000) }));
  const refused = await send(there, changed);
  expect(refused.statusCode).toBe(400);
  expect(refused.json().issues[0].path).toBe(`photos/${hash}`);
  for (const spoiled of [whole.subarray(0, whole.length / 2), Buffer.from('no archive'), Buffer.alloc(0)]) {
    const answer = await send(there, spoiled);
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ code: 'bad input' });
  }
  expect((await send(there, '{}', 'application/json')).json().code).toBe('not an archive');
  expect((await send(there, 'x', 'text/plain')).statusCode).toBe(415);
  expect((await get(there, '/api/jobs/none/archive')).statusCode).toBe(404);
  expect((await get(there, '/api/jobs/none/photos')).statusCode).toBe(404);
  expect((await get(here, `/api/jobs/${id}/archive?partial=some`)).json().issues[0].path).toBe('partial');
  expect((await get(there, '/api/jobs')).json()).toEqual({ jobs: [] });
  expect((await send(there, whole)).statusCode).toBe(201);
  expect(readdirSync(join(to.folder, 'photos')).filter((name) => name.startsWith('.'))).toEqual([]);
});
