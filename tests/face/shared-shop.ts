import { join, resolve } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, beforeEach, expect } from 'vitest';
import { deviceDesk } from '../../src/adapters/devices/desk.ts';
import { deviceFile } from '../../src/adapters/devices/device-file.ts';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { buildApp } from '../../src/faces/server/app.ts';
import { networkAddresses } from '../../src/faces/server/share/own-names.ts';
import { computeWith } from '../../src/shop/compute.ts';
import type { Store } from '../../src/shop/store.ts';
import { newFolder } from '../server/served.ts';
export const at = '2031-11-25T14:32:00+01:00';
/** The shop's machine as a phone calls it; a machine without a network has loopback only. */
export const shop = networkAddresses()[0] ?? '127.0.0.1';
export const host = `${shop}:7117`;
export const phone = '198.51.100.20';

export let app: FastifyInstance;
export let store: Store;
export let file: string;
let clock = 0;

/** So much later, for all that looks at the shop's clock. */
export const later = (ms: number): void => {
  clock += ms;
};

/** A shop that is shared on the network, new for each test of a file; the list of devices outlasts it. */
export function openSharedShop(): void {
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
        ...deviceDesk(deviceFile(file), () => Date.now() + clock),
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
}

export type Method = 'GET' | 'POST' | 'PUT' | 'DELETE' | 'HEAD' | 'OPTIONS' | 'PATCH';

export async function ask(
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
export const owner = (method: Method, url: string, body?: unknown, headers: Record<string, string> = {}) =>
  ask('127.0.0.1', method, url, body, { host: '127.0.0.1:7117', ...headers });

export async function invited(role: 'reader' | 'writer') {
  const { status, json } = await owner('POST', '/api/share/invitations', { role });
  expect(status).toBe(201);
  return json as { code: string; links: { link: string; qr: { size: number; path: string } }[] };
}
export const secretOf = (link: string) => new URL(link).hash.slice(1);

/** Lets a phone in: its cookie, and how to ask with it. */
export async function letIn(role: 'reader' | 'writer', name = 'Phone') {
  const invitation = await invited(role);
  const joined = await ask(phone, 'POST', '/api/join', { code: secretOf(invitation.links[0]!.link), name });
  expect(joined.status).toBe(201);
  const set = String(joined.headers['set-cookie']);
  const cookie = set.split(';')[0]!;
  const asks = (method: Method, url: string, body?: unknown, headers: Record<string, string> = {}) =>
    ask(phone, method, url, body, { cookie, ...headers });
  return { set, cookie, asks };
}

export const note = (id: string) => ({ kind: 'note', text: 'a word', id, at });
