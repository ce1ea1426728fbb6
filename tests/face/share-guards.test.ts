import { readdirSync, readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { computeWith } from '../../src/shop/compute.ts';
import { app, ask, host, letIn, note, openSharedShop, owner, phone, shop, store } from './shared-shop.ts';

openSharedShop();

/** Every address under /api that the server knows, whatever file it stands in. */
const routes = (): string[] =>
  readdirSync('src/faces/server', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .flatMap((name) =>
      [
        ...readFileSync(`src/faces/server/${name}`, 'utf8').matchAll(
          /app\.(?:get|post)(?:<[^(]+>)?\(\s*'(\/api\/[^']+)'/g,
        ),
      ].map((found) => found[1]!.replace(/:\w+/g, 'job')),
    );

describe('no key, no data', () => {
  it('every address of the server refuses a device that was not let in, whatever it asks', async () => {
    expect(routes().length).toBeGreaterThan(30);
    for (const route of routes()) {
      if (['/api/health', '/api/ready', '/api/join', '/api/share'].includes(route)) continue;
      for (const method of ['GET', 'POST'] as const) {
        const { status, text } = await ask(phone, method, route, method === 'POST' ? {} : undefined);
        expect(status, `${method} ${route}`).toBe(401);
        expect(text).not.toContain('lathe');
      }
    }
    expect((await ask(phone, 'GET', '/api/share')).json).toEqual({ you: { is: 'nobody' } });
    // For a program that watches from elsewhere: ready or not, and not a word more.
    expect((await ask(phone, 'GET', '/api/ready')).json).toEqual({ ready: true });
    expect((await ask(phone, 'GET', '/api/health')).json).toEqual({ ok: true, version: 'test' });
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
