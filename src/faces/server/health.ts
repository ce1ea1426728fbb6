import type { FastifyPluginAsync } from 'fastify';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import type { Fault, Store } from '../../shop/store.ts';
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

/**
 * Whether the server lives, whether it can work, and what it keeps. Nothing of what is kept, no paths, no addresses. The first two are
 * for programs that watch it from other machines, and say no more than that.
 */
export const healthRoutes =
  ({ version, store, photos, description, backups }: HealthParts): FastifyPluginAsync =>
  async (app) => {
    if (description !== undefined)
      app.get('/api/openapi.json', async (_, reply) => reply.type('application/json').send(description));
    let asked: Promise<unknown> | undefined;
    app.get('/api/health', async () => ({ ok: true, version }));
    app.get('/api/ready', async (request, reply) => {
      try {
        // However many ask at once, the store is asked once.
        asked ??= store.facts().finally(() => {
          asked = undefined;
        });
        await asked;
        return { ready: true };
      } catch (failure) {
        request.log.error({ fault: (failure as Fault).code ?? 'unknown' }, 'not ready');
        return reply.status(503).send(refusalBody('not ready', 'the server is not ready'));
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
