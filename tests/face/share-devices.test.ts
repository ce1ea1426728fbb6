import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type JsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { deviceDesk, invitationLasts_ms } from '../../src/adapters/devices/desk.ts';
import { deviceFile } from '../../src/adapters/devices/device-file.ts';
import {
  ask,
  file,
  invited,
  later,
  letIn,
  note,
  openSharedShop,
  owner,
  phone,
  secretOf,
  store,
} from './shared-shop.ts';

openSharedShop();

/** Its types and its module do not agree on how it is exported. */
const jsQR = createRequire(import.meta.url)('jsqr') as typeof JsQR.default;

describe('letting a device in', () => {
  it('by what the QR code holds: another reader than ours finds the link in it, with 256 random bits', async () => {
    const { links } = await invited('writer');
    const { link, qr } = links[0]!;
    // Painted 4 dots a field and read by an independent decoder (jsQR).
    const scale = 4;
    const side = qr.size * scale;
    const dots = new Uint8ClampedArray(side * side * 4).fill(255);
    for (const [, x, y] of qr.path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
      for (let dy = 0; dy < scale; dy++)
        for (let dx = 0; dx < scale; dx++)
          dots.fill(
            0,
            ((Number(y) * scale + dy) * side + Number(x) * scale + dx) * 4,
            ((Number(y) * scale + dy) * side + Number(x) * scale + dx) * 4 + 3,
          );
    expect(jsQR(dots, side, side)?.data).toBe(link);
    expect(Buffer.from(secretOf(link), 'base64url')).toHaveLength(32);
    expect(new URL(link).search).toBe('');
  });

  it('once: the same invitation does not let in a second', async () => {
    const { code } = await invited('writer');
    expect((await ask(phone, 'POST', '/api/join', { code, name: 'A' })).status).toBe(201);
    const second = await ask('198.51.100.21', 'POST', '/api/join', { code, name: 'B' });
    expect(second).toMatchObject({ status: 403, json: { code: 'no invitation' } });
  });

  it('for ten minutes', async () => {
    const { code } = await invited('writer');
    later(invitationLasts_ms + 1);
    expect((await ask(phone, 'POST', '/api/join', { code, name: 'A' })).status).toBe(403);
  });

  it('by a short code too, typed in small letters and without its dash', async () => {
    const { code } = await invited('reader');
    const { status, json } = await ask(phone, 'POST', '/api/join', {
      code: ` ${code.toLowerCase().replace('-', ' ')}`,
      name: 'Tablet at the planer',
    });
    expect(status).toBe(201);
    expect(json).toEqual({ name: 'Tablet at the planer', role: 'reader' });
  });

  it('guessing closes every open invitation after ten tries, from however many addresses', async () => {
    const { code } = await invited('writer');
    const answers: number[] = [];
    for (let k = 0; k < 10; k++)
      answers.push(
        (await ask(`198.51.100.${30 + k}`, 'POST', '/api/join', { code: `0000-${1000 + k}`, name: 'x' }))
          .status,
      );
    expect(new Set(answers)).toEqual(new Set([403]));
    expect((await ask(phone, 'POST', '/api/join', { code, name: 'A' })).status).toBe(403);
  });

  it('one address may try ten times a minute', async () => {
    const answers: number[] = [];
    for (let k = 0; k < 12; k++)
      answers.push((await ask(phone, 'POST', '/api/join', { code: 'x', name: 'x' })).status);
    expect(answers.filter((status) => status === 429)).toHaveLength(2);
  });

  it('its key is for the browser alone, and the shop keeps only its SHA-256', async () => {
    const { set, cookie } = await letIn('writer');
    expect(set).toMatch(/; HttpOnly/);
    expect(set).toMatch(/; SameSite=Strict/);
    expect(set).toMatch(/; Path=\//);
    const key = cookie.split('=')[1]!;
    expect(Buffer.from(key, 'base64url')).toHaveLength(32);
    const kept = readFileSync(file, 'utf8');
    expect(kept).not.toContain(key);
    expect(kept).toContain(createHash('sha256').update(key).digest('hex'));
  });

  it('is for the owner: a device makes no invitation, sees no list and removes nobody', async () => {
    const { asks } = await letIn('writer');
    expect((await asks('POST', '/api/share/invitations', { role: 'writer' })).status).toBe(403);
    const { json } = await asks('GET', '/api/share');
    expect(json).toEqual({ you: { is: 'device', name: 'Phone', role: 'writer' }, secure: false });
    const [device] = (await owner('GET', '/api/share')).json.devices;
    expect((await asks('POST', `/api/share/devices/${device.id}/remove`, {})).status).toBe(403);
  });
});

describe('roles', () => {
  it('a reader sees and reckons, and no write of its is taken', async () => {
    const { asks } = await letIn('reader');
    expect((await asks('GET', '/api/jobs')).status).toBe(200);
    expect((await asks('POST', '/api/sums', {})).status).toBe(400);
    const writes: [string, unknown][] = [
      ['/api/jobs', {}],
      ['/api/jobs/job/entries', note('by-reader')],
      ['/api/import', {}],
      ['/api/kit/entries', {}],
      ['/api/kit/import', {}],
      ['/api/practice', {}],
      ['/api/rebuilds', {}],
    ];
    for (const [url, body] of writes)
      expect(await asks('POST', url, body), url).toMatchObject({ status: 403, json: { code: 'reader' } });
    expect(await store.entries('job')).toHaveLength(1);
  });

  it('a writer writes', async () => {
    const { asks } = await letIn('writer');
    expect((await asks('POST', '/api/jobs/job/entries', note('by-writer'))).status).toBe(201);
  });
});

describe('a key that was taken away', () => {
  it('is out with the next request, also when another process took it', async () => {
    const { asks } = await letIn('writer', 'Lost phone');
    expect((await asks('GET', '/api/jobs')).status).toBe(200);
    const { devices } = deviceDesk(deviceFile(file));
    await devices.fresh();
    const lost = devices.list().find((one) => one.name === 'Lost phone')!;
    expect(await devices.remove(lost.id)).toBe(true);
    expect((await asks('GET', '/api/jobs')).status).toBe(401);
    expect((await asks('POST', '/api/jobs/job/entries', note('too-late'))).status).toBe(401);
    expect(await store.entries('job')).toHaveLength(1);
  });

  it('is taken at the list, and is no longer on it; a device can leave by itself', async () => {
    const { asks } = await letIn('writer', 'Old tablet');
    const listed = (await owner('GET', '/api/share')).json.devices as {
      id: string;
      name: string;
      seen: string;
    }[];
    const old = listed.find((one) => one.name === 'Old tablet')!;
    expect(Date.parse(old.seen)).toBeGreaterThan(0);
    expect((await owner('POST', `/api/share/devices/${old.id}/remove`, {})).status).toBe(200);
    expect((await owner('POST', `/api/share/devices/${old.id}/remove`, {})).status).toBe(404);
    expect((await asks('GET', '/api/jobs')).status).toBe(401);
    const leaver = await letIn('reader', 'Leaver');
    expect((await leaver.asks('POST', '/api/share/leave', {})).status).toBe(200);
    expect((await leaver.asks('GET', '/api/jobs')).status).toBe(401);
  });
});
