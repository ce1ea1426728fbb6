import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { encode } from 'uqr';
import { invitationAsked, joinAsked } from '../../../contract/share.ts';
import type { Devices, Invitation, Invitations } from '../../../shop/share/devices.ts';
import { refusalBody } from '../refusals.ts';
import { keyCookie, sha256 } from './gate.ts';
import type { Streams } from './streams.ts';

export interface ShareParts {
  readonly devices: Devices;
  readonly invitations: Invitations;
  readonly scheme: 'http' | 'https';
  /** Addresses of this machine that a phone can reach; none when the workshop is on this machine only. */
  readonly addresses: () => readonly string[];
}

interface DeviceParams {
  Params: { id: string };
}

/** Tries a minute to take up an invitation, from one address. */
const joinsPerMinute = 10;

/** A QR code's dark fields as one path, in fields; the quiet border of four fields is part of it. */
function qrPath(text: string): { readonly size: number; readonly path: string } {
  const { data, size } = encode(text, { border: 4, ecc: 'M' });
  const path = data
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join('');
  return { size, path };
}

/** Links that take up an invitation. The secret stands behind the #, so that no log of addresses holds it. */
export const joinLinks = (
  { secret }: Pick<Invitation, 'secret'>,
  scheme: string,
  addresses: readonly string[],
  port: number,
): string[] => addresses.map((address) => `${scheme}://${address}:${port}/join#${secret}`);

const ownerOnly = async (request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply | undefined> =>
  request.person.is === 'owner'
    ? undefined
    : reply
        .status(403)
        .send(
          refusalBody('owner only', 'devices are let in and removed at the machine that keeps the workshop'),
        );

/** Letting devices in, listing and removing them. */
export const shareRoutes =
  ({ devices, invitations, scheme, addresses }: ShareParts, streams: Streams): FastifyPluginAsync =>
  async (app) => {
    const port = () => (app.server.address() as AddressInfo | null)?.port ?? 0;
    app.get('/api/share', async ({ person }) => {
      if (person.is === 'nobody') return { you: { is: 'nobody' } };
      if (person.is === 'device') {
        const { name, role } = person.device;
        return { you: { is: 'device', name, role }, secure: scheme === 'https' };
      }
      const reached = addresses().map((address) => `${scheme}://${address}:${port()}`);
      await devices.fresh();
      return {
        you: { is: 'owner' },
        secure: scheme === 'https',
        addresses: reached,
        devices: devices.list(),
      };
    });
    app.post('/api/share/invitations', { onRequest: ownerOnly }, async ({ body }, reply) => {
      const { role } = invitationAsked(body);
      const reached = addresses();
      if (reached.length === 0)
        return reply
          .status(409)
          .send(refusalBody('not shared', 'the workshop is on this machine only; start it with --share'));
      const made = await invitations.make(role);
      const links = joinLinks(made, scheme, reached, port());
      return reply.status(201).send({
        code: made.code,
        role,
        ends: new Date(made.ends).toISOString(),
        links: links.map((link) => ({ link, address: link.split('/join')[0], qr: qrPath(link) })),
      });
    });
    app.post<DeviceParams>(
      '/api/share/devices/:id/remove',
      { onRequest: ownerOnly },
      async ({ params: { id } }, reply) => {
        if (!(await devices.remove(id)))
          return reply.status(404).send(refusalBody('no such device', 'there is no such device any more'));
        streams.end(id);
        return { devices: devices.list() };
      },
    );
    app.post('/api/share/leave', async ({ person }, reply) => {
      if (person.is === 'device') {
        await devices.remove(person.device.id);
        streams.end(person.device.id);
      }
      return reply.header('set-cookie', keyCookie('', scheme, 0)).send({});
    });
    app.post(
      '/api/join',
      { config: { rateLimit: { max: joinsPerMinute, timeWindow: '1 minute' } } },
      async ({ body, person }, reply) => {
        const { code, name } = joinAsked(body);
        const taken = await invitations.take(code);
        if (taken === 'not known' || taken === 'closed')
          return reply
            .status(403)
            .send(
              refusalBody(
                'no invitation',
                taken === 'closed'
                  ? 'too many wrong codes: every open invitation was withdrawn; ask for a new one'
                  : 'this invitation is not known, was used, or is older than ten minutes; ask for a new one',
              ),
            );
        // A device that comes again gets a new key; its old one must not stay behind.
        if (person.is === 'device') await devices.remove(person.device.id);
        const key = randomBytes(32).toString('base64url');
        const device = await devices.letIn({ name, role: taken, keySha256: sha256(key) });
        return reply
          .status(201)
          .header('set-cookie', keyCookie(key, scheme))
          .send({ name: device.name, role: device.role });
      },
    );
  };
