import type { FastifyPluginAsync } from 'fastify';
import type { Devices } from '../../shop/share/devices.ts';
import type { Store } from '../../shop/store.ts';
import { type JobParams, noSuchJob } from './jobs.ts';
import { refusalBody } from './refusals.ts';
import type { Streams } from './share/streams.ts';
import type { Watch } from './watch.ts';

/** A line that says nothing, so that a dead connection is found out on either side, ms. */
const heartbeat_ms = 15_000;
/** How often it is looked whether the device still has its key, ms. */
const look_ms = 1_000;
/** More than this unread, and the reader is let go; it comes back where it left off. */
const mostUnread_bytes = 8 * 1024 * 1024;

/**
 * A job's entries as they are written, by whichever process: server-sent events, each with its place in the ledger as its id, so that a
 * browser that comes back gets those it missed. `?after=seq` begins there; else after what `Last-Event-ID` says; else with what comes now.
 */
export const eventRoutes =
  (store: Store, watch: Watch, streams: Streams, devices: Devices | undefined): FastifyPluginAsync =>
  async (app) => {
    app.addHook('preClose', async () => streams.endAll());
    app.get<JobParams & { Querystring: { after?: string } }>(
      '/api/jobs/:id/events',
      // Asked for its head alone, a stream has no end to come to.
      { exposeHeadRoute: false },
      async (request, reply) => {
        const { id } = request.params;
        const { person } = request;
        const entries = await store.entries(id);
        if (!entries) return noSuchJob(reply, id);
        const asked = Number(request.headers['last-event-id'] ?? request.query.after ?? entries.length);
        if (!Number.isSafeInteger(asked) || asked < 0)
          return reply.status(400).send(
            refusalBody('bad input', 'after: expected the place of an entry, a whole number from 0', [
              {
                path: 'after',
                found: String(request.query.after).slice(0, 60),
                expected: 'a whole number from 0',
              },
            ]),
          );
        const raw = reply.raw;
        const end = () => raw.end();
        const leave = streams.add(person.is === 'device' ? person.device.id : `at ${request.ip}`, end);
        if (!leave)
          return reply.status(429).send(refusalBody('too many', 'too many pages of this device are open'));
        reply.hijack();
        for (const [name, value] of Object.entries(reply.getHeaders()))
          if (value !== undefined) raw.setHeader(name, value);
        raw.writeHead(200, {
          'content-type': 'text/event-stream; charset=utf-8',
          'cache-control': 'no-store',
          'x-accel-buffering': 'no',
        });
        raw.write('retry: 2000\n\n');
        const mayStay = () => person.is !== 'device' || devices?.holding(person.key) !== undefined;
        const unwatch = watch.job(id, asked, (news) => {
          if (!mayStay() || raw.writableLength > mostUnread_bytes) return raw.end();
          raw.write(news.map(({ text }) => text).join(''));
        });
        const beat = setInterval(() => raw.write(': here\n\n'), heartbeat_ms);
        // Taken away by another process, the key is missed here.
        const check = setInterval(
          () =>
            void devices?.fresh(look_ms / 2).then(
              () => mayStay() || raw.end(),
              () => raw.end(),
            ),
          look_ms,
        );
        raw.once('close', () => {
          clearInterval(beat);
          clearInterval(check);
          unwatch();
          leave();
        });
        raw.once('error', () => raw.destroy());
        return reply;
      },
    );
  };
