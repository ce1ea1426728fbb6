import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Device, Devices } from '../../../shop/share/devices.ts';
import type { Fault } from '../../../shop/store.ts';
import { refusalBody } from '../refusals.ts';
import { hostName } from './own-names.ts';

/** Who asks: somebody at the machine itself, a device that was let in, or neither. */
export type Person =
  | { readonly is: 'owner' }
  | { readonly is: 'device'; readonly device: Device; readonly key: string }
  | { readonly is: 'nobody' };

declare module 'fastify' {
  interface FastifyRequest {
    person: Person;
  }
}

export interface GateParts {
  /** Whether this machine goes by a name. */
  readonly isOwnName: (name: string) => boolean;
  readonly scheme: 'http' | 'https';
  /** Left out, nobody but the owner is let in. */
  readonly devices?: Devices;
}

/** Of a key, or a secret: what of it is kept, 64 hex figures. */
export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

const cookieName = 'waywright-key';
/** A year: a key is taken away by hand, not by the calendar. */
const cookieLasts_s = 365 * 24 * 3600;

export const keyCookie = (key: string, scheme: 'http' | 'https', lasts_s = cookieLasts_s): string =>
  `${cookieName}=${key}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${lasts_s}${scheme === 'https' ? '; Secure' : ''}`;

const keyIn = (request: FastifyRequest): string | undefined =>
  /(?:^|;\s*)waywright-key=([A-Za-z0-9_-]{43})(?:;|$)/.exec(request.headers.cookie ?? '')?.[1];

/** What is answered without a key: no data of the workshop. */
const open = new Set(['/api/health', '/api/ready', '/api/join', '/api/share']);

/** Questions that are sent as POST and write nothing; any other POST is a write, one that is made tomorrow too. */
const asking = new Set(
  `steer rest site parts line plate kit/report sums order heights axis chart gib machines/check share/leave photos/:hash/read
  photos/:hash/corners jobs/:id/heights jobs/:id/axis jobs/:id/gib jobs/:id/chart jobs/:id/chart.pdf jobs/:id/practice/measure
  jobs/:id/practice/print jobs/:id/practice/truth`
    .split(/\s+/)
    .map((route) => `/api/${route}`),
);

const loopback = /^(?:::ffff:)?127\.|^::1$/;
const passedOn = ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'];

/** The machine itself is the owner; what another program passed on from elsewhere is not from the machine itself. */
const isOwner = ({ ip, headers }: FastifyRequest): boolean =>
  loopback.test(ip) && !passedOn.some((name) => headers[name] !== undefined);

async function personOf(request: FastifyRequest, devices: Devices | undefined): Promise<Person> {
  if (isOwner(request)) return { is: 'owner' };
  const key = keyIn(request);
  if (key === undefined || !devices) return { is: 'nobody' };
  const hash = sha256(key);
  await devices.fresh();
  const device = devices.holding(hash);
  return device ? { is: 'device', device, key: hash } : { is: 'nobody' };
}

const refuse = (reply: FastifyReply, status: number, code: string, message: string): FastifyReply =>
  reply.status(status).send(refusalBody(code, message));

/** Lets in only what was asked of this machine by its own name, by its owner or a device that has a key; writes only from its own pages. */
export function guard(app: FastifyInstance, { isOwnName, scheme, devices }: GateParts): void {
  app.decorateRequest('person', null as never);
  app.addHook('onRequest', async (request, reply) => {
    request.person = { is: 'nobody' };
    const host = request.headers.host ?? '';
    if (!isOwnName(hostName(host)))
      return refuse(reply, 421, 'wrong host', 'the workshop answers on this machine’s own address only');
    const { origin } = request.headers;
    const isApi = request.url.startsWith('/api/');
    const from = request.headers['sec-fetch-site'];
    const isFromElsewhere = isApi && from !== undefined && from !== 'same-origin' && from !== 'none';
    if ((origin !== undefined && origin !== `${scheme}://${host}`) || isFromElsewhere)
      return refuse(reply, 403, 'wrong origin', 'another page may not reach into the workshop');
    const person = await personOf(request, devices);
    request.person = person;
    if (person.is === 'owner') return;
    const isWrite = request.method !== 'GET' && request.method !== 'HEAD';
    // Every browser says where a write comes from; what does not say is let in at the machine itself only.
    if (isWrite && origin === undefined)
      return refuse(reply, 403, 'wrong origin', 'a write from another machine says which page it comes from');
    const route = request.routeOptions.url ?? '';
    if (person.is === 'nobody') {
      const isPage = !isWrite && !isApi && !/^\/api(?:\/|$)/i.test(decoded(request.url));
      if (isPage || open.has(route)) return;
      return refuse(
        reply,
        401,
        'no key',
        'this device has not been let into the workshop, or its key was taken away',
      );
    }
    // That it was here is worth a line, and not the request.
    if (route !== '/api/join')
      devices?.saw(person.device).catch((failure: Fault) => {
        request.log.warn({ fault: failure.code ?? 'unknown' }, 'not noted that a device was here');
      });
    if (person.device.role === 'reader' && isWrite && !asking.has(route) && route !== '/api/join')
      return refuse(
        reply,
        403,
        'reader',
        'this device may look and not write; ask whoever runs the workshop',
      );
  });
}

function decoded(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return '/api/';
  }
}
