import { readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printedPhoto } from '../fixture/printed-photo.ts';
import { type Served, serve } from './served.ts';

let served: Served;
beforeAll(async () => {
  served = await serve();
});
afterAll(() => served.stop());

const sendPhoto = async (bytes: Buffer): Promise<{ status: number; json: Record<string, unknown> }> => {
  const answer = await fetch(`${served.address}/api/photos`, {
    method: 'POST',
    headers: { 'content-type': 'image/jpeg' },
    body: new Uint8Array(bytes),
  });
  return { status: answer.status, json: (await answer.json()) as Record<string, unknown> };
};
const ask = (path: string, body: unknown) =>
  fetch(`${served.address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

/** Corners of printedPhoto's surface in the same photo enlarged. */
const corners = (by: number) =>
  [
    [48, 52],
    [851, 71],
    [846, 489],
    [61, 470],
  ].map(([x, y]) => ({ x: by * x! + (by - 1) / 2, y: by * y! + (by - 1) / 2 }));

describe('the server with photos', () => {
  it('answers a ping and steers while a photo of 12 megapixels is read', async () => {
    const large = await sharp(await printedPhoto())
      .resize(4500, 3000)
      .jpeg({ quality: 90 })
      .toBuffer();
    const { status, json } = await sendPhoto(large);
    expect(status).toBe(201);
    const ended: string[] = [];
    const reading = ask(`/api/photos/${json.hash}/read`, {
      corners: corners(5),
      size: '300x150',
      zones: 6,
    }).then(async (answer) => {
      ended.push('read');
      return {
        status: answer.status,
        body: (await answer.json()) as { bearing_pct: number; cells: unknown[] },
      };
    });
    for (let k = 0; k < 3; k++) {
      const ping = await fetch(`${served.address}/api/health`);
      expect(ping.status).toBe(200);
      ended.push('ping');
    }
    const steerCase = JSON.parse(readFileSync('checks/data/cases/steer-2.json', 'utf8'));
    expect((await ask('/api/steer', steerCase)).status).toBe(200);
    const answer = await reading;
    expect(answer.status).toBe(200);
    expect(answer.body.cells).toHaveLength(72);
    expect(ended.slice(0, 3)).toEqual(['ping', 'ping', 'ping']);
  });

  it('a bomb, a cut photo and text leave it alive, with nothing half-written', async () => {
    const whole = await printedPhoto();
    const before = await readdir(join(served.folder, 'photos'), { recursive: true });
    const bomb = await sharp({ create: { width: 9000, height: 9000, channels: 3, background: '#888888' } })
      .png()
      .toBuffer();
    for (const bytes of [
      bomb,
      whole.subarray(0, 30),
      whole.subarray(0, 20_000),
      Buffer.from('text called photo.jpg'),
    ]) {
      const { status, json } = await sendPhoto(bytes);
      expect(status).toBe(400);
      expect(json).toMatchObject({ code: 'bad input', issues: [{ path: 'photo' }] });
    }
    expect(await readdir(join(served.folder, 'photos'), { recursive: true })).toEqual(before);
    expect((await fetch(`${served.address}/api/health`)).status).toBe(200);
  });

  it('a photo outlives the server that took it', async () => {
    const bytes = await printedPhoto();
    const { json } = await sendPhoto(bytes);
    await served.kill();
    served = await serve({ folder: served.folder });
    const shown = await fetch(`${served.address}/api/photos/${json.hash}`);
    expect(Buffer.from(await shown.arrayBuffer()).equals(bytes)).toBe(true);
  });
});
