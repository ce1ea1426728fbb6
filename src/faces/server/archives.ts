import { Readable } from 'node:stream';
import type { FastifyError, FastifyPluginAsync } from 'fastify';
import { archiveQuery, importQuery } from '../../contract/job-file.ts';
import type { Archives } from '../../shop/archive/archive.ts';
import { jobWithPhotos, photosHere } from '../../shop/archive/export-photos.ts';
import { type JobTaken, takeWithPhotos } from '../../shop/archive/import-photos.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import type { Store } from '../../shop/store.ts';
import { whenGone } from './gone.ts';
import { type JobParams, noSuchJob, sendKept } from './jobs.ts';
import { refusalBody } from './refusals.ts';

/** Jobs with their photos, as one ZIP file. */
export const archiveRoutes =
  (store: Store, photos: PhotoStore, archives: Archives): FastifyPluginAsync =>
  async (app) => {
    // The file goes to the disk as it comes: it may be larger than memory.
    app.addContentTypeParser(
      ['application/zip', 'application/x-zip-compressed', 'application/octet-stream'],
      async (_request: unknown, body: Readable) => body,
    );
    app.setErrorHandler((failure: FastifyError, _request, reply) => {
      if (failure.statusCode !== 415) throw failure;
      const words = 'a job with its photos is sent as the body itself, as application/zip; nothing was kept';
      return reply.status(415).send(refusalBody('not an archive', words));
    });
    app.get<JobParams>(
      '/api/jobs/:id/photos',
      async ({ params: { id } }, reply) => (await photosHere(store, photos, id)) ?? noSuchJob(reply, id),
    );
    app.get<JobParams>('/api/jobs/:id/archive', async ({ params: { id }, query }, reply) => {
      const { partial } = archiveQuery(query);
      const whole = await jobWithPhotos(store, photos, id, partial === 'yes', whenGone(reply));
      if (!whole) return noSuchJob(reply, id);
      return reply
        .header('content-disposition', `attachment; filename="${id}.waywright.zip"`)
        .type('application/zip')
        .send(Readable.from(archives.packed(whole.parts)));
    });
    app.post('/api/archives', async ({ body, query }, reply) => {
      const { as } = importQuery(query);
      if (!(body instanceof Readable))
        return reply
          .status(415)
          .send(
            refusalBody('not an archive', 'a job without photos is sent to /api/import; nothing was kept'),
          );
      const { id, kept, photos: came } = await taken(body, as, whenGone(reply));
      return sendKept(reply, id, kept, { id, photos: came });
    });

    /** Nothing of what was sent is left lying about when the answer goes out. */
    async function taken(sent: Readable, as: string | undefined, stop: AbortSignal): Promise<JobTaken> {
      const held = await archives.hold(sent);
      try {
        const archive = await archives.open(held.path);
        try {
          return await takeWithPhotos(store, photos, archive.files, as, stop);
        } finally {
          await archive.close();
        }
      } finally {
        await held.letGo();
      }
    }
  };
