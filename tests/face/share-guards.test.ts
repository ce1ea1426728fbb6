import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { connect } from 'node:net';
import { join, resolve } from 'node:path';
import type { FastifyInstance } from 'fastify';
import type JsQR from 'jsqr';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { deviceFile } from '../../src/adapters/devices/device-file.ts';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { invitationLasts_ms, openInvitations } from '../../src/faces/server/share/invitations.ts';
import { networkAddresses } from '../../src/faces/server/share/own-names.ts';
import { computeWith } from '../../src/shop/compute.ts';
import type { Store } from '../../src/shop/store.ts';
import { newFolder } from './served.ts';

/** Its types and its module do not agree on how it is exported. */
const jsQR = createRequire(import.meta.url)('jsqr') as typeof JsQR.default;
const at = '2031-11-25T14:32:00+01:00';
/** The shop's machine as a phone calls it; a machine without a network has loopback only. */
const shop = networkAddresses()[0] ?? '127.0.0.1';
const host = `${shop}:7117`;
const phone = '198.51.100.20';

let app: FastifyInstance;
let store: Store;
let file: string;
let clock = 0;

beforeAll(async () => {
  file = join(await newFolder(), 'devices.jsonl');
});
beforeEach(async () => {
  await app?.close();
  await store?.close();
  store = await openSqlite(':memory:');
  app = await buildApp({
    store,
    templates: readTemplates(),
    compute: computeWith(solveWithHighs),
    share: {
      devices: deviceFile(file, () => Date.now() + clock),
      invitations: openInvitations(() => Date.now() + clock),
      scheme: 'http',
      addresses: () => [shop],
    },
    version: 'test',
    page: resolve('tests/fixture/page'),
  });
  const made = await owner('POST', '/api/jobs', {
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

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE' | 'HEAD' | 'OPTIONS' | 'PATCH';

async function ask(
  from: string,
  method: Method,
  url: string,
  body?: unknown,
  headers: Record<string, string> = {},
) {
  const response = await app.inject({
    method,
    url,
    remoteAddress: from,
    headers: {
      host,
      ...(method === 'GET' || from === '127.0.0.1' ? {} : { origin: `http://${host}` }),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { payload: JSON.stringify(body) }),
  });
  const json =
    String(response.headers['content-type']).includes('json') && response.payload
      ? response.json()
      : undefined;
  return { status: response.statusCode, json, headers: response.headers, text: response.payload };
}
const owner = (method: Method, url: string, body?: unknown, headers: Record<string, string> = {}) =>
  ask('127.0.0.1', method, url, body, { host: '127.0.0.1:7117', ...headers });

async function invited(role: 'reader' | 'writer') {
  const { status, json } = await owner('POST', '/api/share/invitations', { role });
  expect(status).toBe(201);
  return json as { code: string; links: { link: string; qr: { size: number; path: string } }[] };
}
const secretOf = (link: string) => new URL(link).hash.slice(1);

/** Lets a phone in: its cookie, and how to ask with it. */
async function letIn(role: 'reader' | 'writer', name = 'Phone') {
  const invitation = await invited(role);
  const joined = await ask(phone, 'POST', '/api/join', { code: secretOf(invitation.links[0]!.link), name });
  expect(joined.status).toBe(201);
  const set = String(joined.headers['set-cookie']);
  const cookie = set.split(';')[0]!;
  const asks = (method: Method, url: string, body?: unknown, headers: Record<string, string> = {}) =>
    ask(phone, method, url, body, { cookie, ...headers });
  return { set, cookie, asks };
}

const note = (id: string) => ({ kind: 'note', text: 'a word', id, at });

/** Every address under /api that the server knows. */
const routes = (): string[] => {
  const files = ['app', 'jobs', 'events', 'sums', 'practice', 'machines', 'kit', 'share/routes'];
  return files.flatMap((name) =>
    [
      ...readFileSync(`src/faces/server/${name}.ts`, 'utf8').matchAll(
        /app\.(?:get|post)(?:<[^(]+>)?\(\s*'(\/api\/[^']+)'/g,
      ),
    ].map((found) => found[1]!.replace(/:\w+/g, 'job')),
  );
};

describe('no key, no data', () => {
  it('every address of the server refuses a device that was not let in, whatever it asks', async () => {
    expect(routes().length).toBeGreaterThan(30);
    for (const route of routes()) {
      if (['/api/health', '/api/join', '/api/share'].includes(route)) continue;
      for (const method of ['GET', 'POST'] as const) {
        const { status, text } = await ask(phone, method, route, method === 'POST' ? {} : undefined);
        expect(status, `${method} ${route}`).toBe(401);
        expect(text).not.toContain('lathe');
      }
    }
    expect((await ask(phone, 'GET', '/api/share')).json).toEqual({ you: { is: 'nobody' } });
  });

  it.each(['x'.repeat(43), '', 'x', '../../etc/passwd', `${'x'.repeat(42)}%00`])(
    'a made-up key (%j) opens nothing',
    async (key) => {
      expect(
        (await ask(phone, 'GET', '/api/jobs', undefined, { cookie: `waywright-key=${key}` })).status,
      ).toBe(401);
    },
  );

  it('only the machine itself is the owner: not what another program passed on', async () => {
    expect((await owner('GET', '/api/jobs')).status).toBe(200);
    for (const header of ['x-forwarded-for', 'forwarded', 'via', 'x-real-ip'])
      expect((await owner('GET', '/api/jobs', undefined, { [header]: 'for=198.51.100.1' })).status).toBe(401);
  });

  it('ways round the path lead nowhere', async () => {
    const tricks = [
      '//api/jobs',
      '/API/jobs',
      '/api/%6aobs',
      '/%61pi/jobs',
      '/./api/jobs',
      '/x/../api/jobs',
      '/api/../api/jobs',
      '/api/share/../jobs',
      '/api/health/../jobs',
      '/api/jobs/',
      '/api/jobs?/api/health',
      '/api/jobs#/api/health',
      '/api/jobs;/api/health',
      '/..%2f..%2fworkshop.db',
      '/../workshop.db',
      '/%2e%2e/%2e%2e/package.json',
      '/....//....//package.json',
      '/assets/..%5c..%5cworkshop.db',
      '/api/photos/..%2f..%2fworkshop.db',
      '/api/jobs/%00',
      '/%',
      '/api/%',
    ];
    for (const url of tricks) {
      const { status, text } = await ask(phone, 'GET', url);
      expect(status, url).toBeLessThan(500);
      expect(text, url).not.toMatch(/"jobs":|better-sqlite3|SQLite format|lathe-saddle/);
      const own = await owner('GET', url);
      expect(own.status, url).toBeLessThan(500);
      expect(own.text, url).not.toMatch(/better-sqlite3|SQLite format/);
    }
  });
});

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
    clock += invitationLasts_ms + 1;
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
    const lost = deviceFile(file)
      .list()
      .find((one) => one.name === 'Lost phone')!;
    expect(deviceFile(file).remove(lost.id)).toBe(true);
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

describe('other pages', () => {
  it('a name that is not this machine’s is refused, whoever asks: no rebinding', async () => {
    const { asks } = await letIn('writer');
    for (const name of [
      'evil.example',
      'evil.example:7117',
      `${shop}.evil.example`,
      '0.0.0.0:7117',
      '127.0.0.1.nip.example',
      '[::ffff:7f00:1]',
    ]) {
      expect((await asks('GET', '/api/jobs', undefined, { host: name })).status, name).toBe(421);
      expect((await owner('GET', '/api/jobs', undefined, { host: name })).status, name).toBe(421);
      expect((await owner('GET', '/', undefined, { host: name })).status, name).toBe(421);
    }
  });

  it('a write from another page is refused, from the machine itself too', async () => {
    const { asks } = await letIn('writer');
    for (const origin of [
      'http://evil.example',
      'null',
      `https://${host}`,
      `http://${host}.evil.example`,
      `http://${shop}:9999`,
    ]) {
      expect((await asks('POST', '/api/jobs/job/entries', note('cross'), { origin })).status, origin).toBe(
        403,
      );
      expect((await owner('POST', '/api/jobs/job/entries', note('cross'), { origin })).status, origin).toBe(
        403,
      );
    }
    for (const site of ['cross-site', 'same-site'])
      expect((await owner('GET', '/api/jobs', undefined, { 'sec-fetch-site': site })).status).toBe(403);
    expect(await store.entries('job')).toHaveLength(1);
  });

  it('a device’s write that does not say where it comes from is refused', async () => {
    const { cookie } = await letIn('writer');
    const response = await app.inject({
      method: 'POST',
      url: '/api/jobs/job/entries',
      remoteAddress: phone,
      headers: { host, cookie, 'content-type': 'application/json' },
      payload: JSON.stringify(note('from-nowhere')),
    });
    expect(response.statusCode).toBe(403);
  });

  it('a form of another page cannot send what is taken: only JSON is', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])
      expect(
        (await owner('POST', '/api/jobs/job/entries', note('form'), { 'content-type': type })).status,
      ).toBe(415);
  });

  it('no other origin is told that it may read, and no answer is framed or sniffed', async () => {
    for (const url of ['/api/jobs', '/']) {
      const { headers } = await owner('GET', url);
      expect(headers['access-control-allow-origin']).toBeUndefined();
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      const policy = String(headers['content-security-policy']);
      for (const rule of [
        "default-src 'self'",
        "script-src 'self'",
        "worker-src 'self'",
        "object-src 'none'",
        "frame-ancestors 'none'",
      ])
        expect(policy).toContain(rule);
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
    }
  });
});

describe('bodies', () => {
  it('one that is too large is refused, from a device too', async () => {
    const { asks } = await letIn('writer');
    const { status } = await asks('POST', '/api/jobs/job/entries', {
      ...note('big'),
      text: 'x'.repeat(5_000_000),
    });
    expect(status).toBe(413);
  });

  it('one that trickles in is let go', async () => {
    const slow = await buildApp({
      store,
      templates: readTemplates(),
      compute: computeWith(solveWithHighs),
      version: 'test',
      bodyPatience_ms: 300,
    });
    await slow.listen({ port: 0, host: '127.0.0.1' });
    const { port } = slow.server.address() as { port: number };
    const started = performance.now();
    await new Promise<void>((closed, failed) => {
      const socket = connect(port, '127.0.0.1');
      socket.write(
        `POST /api/jobs HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n`,
      );
      const drip = setInterval(() => socket.write(' '), 50);
      socket.on('error', () => undefined);
      socket.once('close', () => {
        clearInterval(drip);
        closed();
      });
      setTimeout(() => failed(new Error('still open after 10 s')), 10_000).unref();
    });
    expect(performance.now() - started).toBeGreaterThan(250);
    expect(await store.jobs()).toHaveLength(1);
    await slow.close();
  });
});
