import type { FastifyPluginAsync, FastifyReply } from 'fastify';
import { kitFile, sentKitEntry } from '../../contract/kit-entry.ts';
import type { Kept, Store } from '../../shop/store.ts';
import { sendKept } from './jobs.ts';

const send = (reply: FastifyReply, kept: Kept): FastifyReply => sendKept(reply, 'kit', kept);

/** The workshop's kit: one ledger for the whole shop, append-only like a job's. */
export const kitRoutes =
  (store: Store): FastifyPluginAsync =>
  async (app) => {
    app.get('/api/kit', async () => ({ entries: await store.kit() }));
    app.post('/api/kit/entries', async ({ body }, reply) =>
      send(reply, await store.keepKit([sentKitEntry(body)])),
    );
    app.get('/api/kit/export', async (_request, reply) =>
      reply
        .header('content-disposition', 'attachment; filename="kit.waywright.json"')
        .type('application/json')
        .send(
          `${JSON.stringify({ format: 'waywright-kit', version: 1, entries: await store.kit() }, null, 1)}\n`,
        ),
    );
    /** Entries that are not here yet are added behind those that are; nothing is written over. */
    app.post('/api/kit/import', async ({ body }, reply) =>
      send(reply, await store.keepKit(kitFile(body).entries.map(({ seq: _, ...entry }) => entry))),
    );
  };
