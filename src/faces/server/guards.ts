import type { FastifyInstance } from 'fastify';
import { refusalBody } from './refusals.ts';

/** Names a browser on this machine may call the workshop by. Another name that leads here is a rebinding trick. */
const loopbackNames = new Set(['127.0.0.1', 'localhost', '[::1]']);

const hostName = (host: string): string => host.replace(/:\d+$/, '').toLowerCase();

/** Lets in only what was asked of this machine by its own name, and writes only from its own pages. */
export function guardLoopback(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    const host = request.headers.host ?? '';
    if (!loopbackNames.has(hostName(host)))
      return reply
        .status(421)
        .send(refusalBody('wrong host', 'the workshop answers on this machine’s own address only'));
    const { origin } = request.headers;
    if (origin !== undefined && origin !== `http://${host}`)
      return reply
        .status(403)
        .send(refusalBody('wrong origin', 'another page may not reach into the workshop'));
  });
}
