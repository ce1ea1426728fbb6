import type { FastifyPluginAsync } from 'fastify';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { Fault, type Store } from '../../shop/store.ts';
import type { BackupState } from './backups.ts';
import { refusalBody } from './refusals.ts';

export interface HealthParts {
  readonly version: string;
  readonly store: Store;
  readonly photos?: PhotoStore;
  /** docs/openapi.json as text; left out, it is not answered. */
  readonly description?: string;
  /** How backups stand; left out, this server makes none. */
  readonly backups?: () => Promise<BackupState>;
}

/** Whether the server lives, whether it can work, and what it keeps. Nothing of what is kept, no paths, no addresses. */
export const healthRoutes =
  ({ version, store, photos, description, backups }: HealthParts): FastifyPluginAsync =>
  async (app) => {
    if (description !== undefined)
      app.get('/api/openapi.json', async (_, reply) => reply.type('application/json').send(description));
    app.get('/api/health', async () => ({ ok: true, version }));
    app.get('/api/ready', async (request, reply) => {
      try {
        const { kind, schema } = await store.facts();
        return { ready: true, version, store: kind, schema };
      } catch (failure) {
        request.log.error({ fault: (failure as Fault).code ?? 'unknown' }, 'not ready');
        const known = failure instanceof Fault;
        return reply
          .status(503)
          .send(
            refusalBody(
              known ? failure.code : 'not ready',
              known ? 'the store does not answer' : 'the server is not ready',
            ),
          );
      }
    });
    app.get('/api/workshop', async () => {
      const kept = photos ? await photos.all() : [];
      return {
        version,
        store: await store.facts(),
        photos: { count: kept.length, bytes: kept.reduce((all, photo) => all + photo.bytes, 0) },
        ...(backups ? { backups: await backups() } : {}),
      };
    });
  };
