import type { FastifyError, FastifyPluginAsync, FastifyReply } from 'fastify';
import { cornersAsk, printAsk } from '../../contract/print.ts';
import { photoLimits, photoType } from '../../shop/print/photo.ts';
import { type AskPhotos, Unanswered } from '../../shop/print/photo-desk.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { whenGone } from './gone.ts';
import { refusalBody } from './refusals.ts';

interface PhotoParams {
  Params: { hash: string };
}

const noSuchPhoto = (reply: FastifyReply, hash: string): FastifyReply =>
  reply
    .status(404)
    .send(refusalBody('no such photo', `there is no photo ${JSON.stringify(hash.slice(0, 80))}`));

const photoIssue = (found: string, expected: string) => [{ path: 'photo', found, expected }];

/** A photo’s own words for a body that is too large or of another kind, and for a thread that had no time. */
function answerPhotoFailures(failure: FastifyError | Error, reply: FastifyReply): FastifyReply {
  if (failure instanceof Unanswered)
    return reply.status(503).header('retry-after', '5').send(refusalBody(failure.code, failure.message));
  const { statusCode } = failure as FastifyError;
  if (statusCode === 413) {
    const issues = photoIssue('more bytes than that', `at most ${photoLimits.sent_bytes} bytes`);
    return reply
      .status(413)
      .send(
        refusalBody(
          'too large',
          `photo: larger than ${photoLimits.sent_bytes} bytes; nothing was kept`,
          issues,
        ),
      );
  }
  if (statusCode === 415) return notAPhoto(reply);
  // Everything else is told as elsewhere.
  throw failure;
}

const notAPhoto = (reply: FastifyReply): FastifyReply =>
  reply
    .status(415)
    .send(
      refusalBody(
        'not a photo',
        'photo: a photo is sent as the body itself, as image/jpeg and the like; nothing was kept',
        photoIssue(
          'another kind of body',
          'the photo’s bytes as image/jpeg, image/png, image/webp, image/tiff',
        ),
      ),
    );

/** Photos of prints: sent, shown, searched for corners, read. */
export const photoRoutes =
  (photos: PhotoStore, ask: AskPhotos): FastifyPluginAsync =>
  async (app) => {
    app.addContentTypeParser(
      /^image\//,
      { parseAs: 'buffer', bodyLimit: photoLimits.sent_bytes },
      async (_request: unknown, body: Buffer) => body,
    );
    app.setErrorHandler((failure: FastifyError | Error, _request, reply) =>
      answerPhotoFailures(failure, reply),
    );
    app.post('/api/photos', { bodyLimit: photoLimits.sent_bytes }, async ({ body }, reply) => {
      if (!Buffer.isBuffer(body)) return notAPhoto(reply);
      const { again, ...kept } = await ask('keep', { bytes: body });
      return reply.status(again ? 200 : 201).send(kept);
    });
    app.get<PhotoParams>('/api/photos/:hash', async ({ params: { hash } }, reply) => {
      const photo = await photos.open(hash);
      if (!photo) return noSuchPhoto(reply, hash);
      // Called by its bytes, it never changes.
      return reply
        .header('cache-control', 'private, max-age=31536000, immutable')
        .header('etag', `"${hash}"`)
        .type(photoType[photo.format])
        .send(Buffer.from(photo.bytes.buffer, photo.bytes.byteOffset, photo.bytes.byteLength));
    });
    app.post<PhotoParams>('/api/photos/:hash/read', async ({ params: { hash }, body }, reply) => {
      const reading = await ask('read', { hash, asked: printAsk(body) }, whenGone(reply));
      return reading ?? noSuchPhoto(reply, hash);
    });
    app.post<PhotoParams>('/api/photos/:hash/corners', async ({ params: { hash }, body }, reply) => {
      const found = await ask('corners', { hash, ...cornersAsk(body) }, whenGone(reply));
      return found ?? noSuchPhoto(reply, hash);
    });
  };
