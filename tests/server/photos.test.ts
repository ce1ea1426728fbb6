import { mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { decodePhoto } from '../../src/adapters/photo/decode.ts';
import { photoFolder } from '../../src/adapters/photo/folder.ts';
import { greyPng } from '../../src/adapters/photo/grey-png.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { type AskPhotos, photoDesk, Unanswered } from '../../src/shop/print/photo-desk.ts';
import type { Store } from '../../src/shop/store.ts';
import { cornersText, printedPhoto } from '../fixture/printed-photo.ts';

const host = '127.0.0.1:7117';

let app: FastifyInstance;
let store: Store;
let folder: string;

async function start(ask?: AskPhotos): Promise<void> {
  folder = mkdtempSync(join(tmpdir(), 'waywright-photos-'));
  store = await openSqlite(':memory:');
  const photos = photoFolder(folder);
  app = await buildApp({
    store,
    templates: [],
    compute: async () => {
      throw new Error('nothing is steered here');
    },
    photos: { store: photos, ask: ask ?? photoDesk(photos, decodePhoto, greyPng) },
    version: 'test',
  });
}
beforeEach(() => start());
afterEach(async () => {
  await app.close();
  await store.close();
});

const send = (url: string, payload: Buffer | string, type: string, headers: Record<string, string> = {}) =>
  app.inject({ method: 'POST', url, headers: { host, 'content-type': type, ...headers }, payload });
const ask = (url: string, body: unknown) => send(url, JSON.stringify(body), 'application/json');
const get = (url: string) => app.inject({ method: 'GET', url, headers: { host } });
const filesKept = () =>
  readdirSync(folder, { recursive: true, withFileTypes: true }).filter((f) => f.isFile());

describe('photos over HTTP', () => {
  it('a photo is kept once and comes back byte for byte, never to change', async () => {
    const bytes = await printedPhoto();
    const sent = await send('/api/photos', bytes, 'image/jpeg');
    expect(sent.statusCode).toBe(201);
    const { hash, ...head } = sent.json();
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
    expect(head).toEqual({ format: 'jpeg', width_px: 900, height_px: 600 });
    expect((await send('/api/photos', bytes, 'image/jpeg')).statusCode).toBe(200);
    expect(filesKept()).toHaveLength(1);
    const shown = await get(`/api/photos/${hash}`);
    expect(shown.rawPayload.equals(bytes)).toBe(true);
    expect(shown.headers['content-type']).toBe('image/jpeg');
    expect(shown.headers['cache-control']).toContain('immutable');
    expect(shown.headers['x-content-type-options']).toBe('nosniff');
    expect(shown.headers['content-security-policy']).toContain("default-src 'self'");
  });

  it('is served as what it is, whatever it was called', async () => {
    const bytes = await sharp(await printedPhoto())
      .png()
      .toBuffer();
    const { hash } = (await send('/api/photos', bytes, 'image/jpeg')).json();
    expect((await get(`/api/photos/${hash}`)).headers['content-type']).toBe('image/png');
  });

  it('is read with corners and size, and answers as the library does', async () => {
    const { hash } = (await send('/api/photos', await printedPhoto(), 'image/jpeg')).json();
    const answer = await ask(`/api/photos/${hash}/read`, { corners: cornersText, size: '100x50', zones: 4 });
    expect(answer.statusCode).toBe(200);
    const reading = answer.json();
    expect(reading.cells).toHaveLength(8);
    expect(reading.zone_shares).toHaveLength(4);
    expect(reading.spots.length).toBeGreaterThan(20);
    expect(reading.photo).toEqual({ format: 'jpeg', width_px: 900, height_px: 600 });
    const { png, ...map } = reading.contact_map;
    expect(map).toEqual({
      width: 100 * map.px_per_mm,
      height: 50 * map.px_per_mm,
      px_per_mm: expect.any(Number),
    });
    // The map's own share of contact is the reading's bearing: nothing is excluded here.
    const levels = await sharp(Buffer.from(png.split(',')[1], 'base64'))
      .toColourspace('b-w')
      .raw()
      .toBuffer();
    expect(levels.length).toBe(map.width * map.height);
    const share = levels.filter((level) => level === 1 || level === 2).length / levels.length;
    expect(100 * share).toBeCloseTo(reading.bearing_pct, 1);
  });

  it.each<[string, object, string]>([
    ['three corners', { corners: '1,2 3,4 5,6', size: '100x50' }, 'corners'],
    ['no size', { corners: cornersText }, 'size'],
    ['corners outside', { corners: '0,0 9000,0 9000,600 0,600', size: '100x50' }, 'corners[1]'],
    ['an unknown key', { corners: cornersText, size: '100x50', sharpness: 2 }, 'sharpness'],
  ])('%s is refused by its field', async (_, body, path) => {
    const { hash } = (await send('/api/photos', await printedPhoto(), 'image/jpeg')).json();
    const answer = await ask(`/api/photos/${hash}/read`, body);
    expect(answer.statusCode).toBe(400);
    expect(answer.json().issues[0].path).toBe(path);
  });

  it('a name that no photo has is 404, however it is written', async () => {
    const body = { corners: cornersText, size: '100x50' };
    for (const name of ['ab'.repeat(32), 'short', '..%2F..%2Fworkshop.db', `${'ab'.repeat(32)}.jpeg`]) {
      expect((await get(`/api/photos/${name}`)).statusCode).toBe(404);
      expect((await ask(`/api/photos/${name}/read`, body)).json().code).toBe('no such photo');
      expect((await ask(`/api/photos/${name}/corners`, { size: '100x50' })).statusCode).toBe(404);
    }
  });

  it('what is no photo is refused and leaves nothing behind', async () => {
    const refused = async (bytes: Buffer, type = 'image/jpeg') => {
      const { statusCode, ...answer } = await send('/api/photos', bytes, type);
      return { statusCode, ...answer.json() };
    };
    const text = await refused(Buffer.from('not a photo at all'));
    expect(text).toMatchObject({ statusCode: 400, issues: [{ path: 'photo' }] });
    const cut = (await printedPhoto()).subarray(0, 40);
    expect(await refused(cut)).toMatchObject({ statusCode: 400, issues: [{ path: 'photo' }] });
    expect(await refused(Buffer.alloc(0))).toMatchObject({ statusCode: 400 });
    expect(await refused(Buffer.from('{}'), 'application/json')).toMatchObject({
      statusCode: 415,
      code: 'not a photo',
    });
    expect(await refused(Buffer.from('x'), 'text/plain')).toMatchObject({
      statusCode: 415,
      code: 'not a photo',
    });
    const large = await refused(Buffer.alloc(25_000_001, 0xff));
    expect(large).toMatchObject({ statusCode: 413, code: 'too large' });
    expect(large.message).toContain('25000000 bytes');
    expect(filesKept()).toHaveLength(0);
  });

  it('another page may not send one', async () => {
    const bytes = await printedPhoto();
    const sent = await send('/api/photos', bytes, 'image/jpeg', { origin: 'http://elsewhere.example' });
    expect(sent.statusCode).toBe(403);
  });

  it('a thread that has no time is told as such: send it again', async () => {
    await app.close();
    await store.close();
    await start(async () => {
      throw new Unanswered('many photos', '8 photos are waiting already; send it again soon');
    });
    const answer = await send('/api/photos', await printedPhoto(), 'image/jpeg');
    expect(answer.statusCode).toBe(503);
    expect(answer.headers['retry-after']).toBe('5');
    expect(answer.json()).toMatchObject({ code: 'many photos' });
  });
});
