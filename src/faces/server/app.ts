import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import serveFolder from '@fastify/static';
import fastify, { type FastifyInstance } from 'fastify';
import { parsedJson } from '../../contract/refusal.ts';
import type { Template } from '../../contract/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import type { Archives } from '../../shop/archive/archive.ts';
import type { Compute } from '../../shop/compute.ts';
import type { AskPhotos } from '../../shop/print/photo-desk.ts';
import type { PhotoStore } from '../../shop/print/photo-store.ts';
import type { Store } from '../../shop/store.ts';
import { archiveRoutes } from './archives.ts';
import { type ChartParts, chartRoutes } from './charts.ts';
import { guardLoopback } from './guards.ts';
import { jobRoutes } from './jobs.ts';
import { keepAnswers } from './kept-answers.ts';
import { kitRoutes } from './kit.ts';
import { machineRoutes } from './machines.ts';
import { photoRoutes } from './photos.ts';
import { practiceRoutes } from './practice.ts';
import { answerFailures, bodyLimit_bytes, refusalBody } from './refusals.ts';
import { sumRoutes } from './sums.ts';

/** All that the server is made of; tests hand it their own. */
export interface ServerParts {
  readonly store: Store;
  readonly templates: readonly Template[];
  /** Whole machines that come with the program; left out, there are none. */
  readonly machines?: readonly Machine[];
  readonly compute: Compute;
  /** Photos of prints and who looks at them; left out, photos are not taken. */
  readonly photos?: { readonly store: PhotoStore; readonly ask: AskPhotos };
  /** How jobs are written with their photos; left out, they are not. */
  readonly archives?: Archives;
  /** Lists of acceptance tests and who makes paper of a chart; left out, there are no charts. */
  readonly charts?: ChartParts;
  readonly version: string;
  /** Folder of the built page; left out, there is no page. */
  readonly page?: string;
}

/** A person and an outbox write a few entries a second; beyond this it is a loop. */
const requestsPerMinute = 6_000;

/** Builds the server without listening, so that tests can ask it without a socket. */
export async function buildApp(parts: ServerParts): Promise<FastifyInstance> {
  const app = fastify({ bodyLimit: bodyLimit_bytes, logger: { level: 'warn' }, requestTimeout: 30_000 });
  // Our own reading of JSON names the line where the text stops being JSON.
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'string' },
    async (_request: unknown, body: string) => parsedJson(body),
  );
  guardLoopback(app);
  answerFailures(app);
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        styleSrc: ["'self'"],
        objectSrc: ["'none'"],
        frameAncestors: ["'none'"],
        // The workshop is served in the clear on this machine's own address.
        upgradeInsecureRequests: null,
      },
    },
    strictTransportSecurity: false,
  });
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: '1 minute',
    errorResponseBuilder: () => ({
      statusCode: 429,
      ...refusalBody('too many', 'too many requests in a minute; wait and send again'),
    }),
  });
  app.get('/api/health', async () => ({ ok: true, version: parts.version }));
  const answerOf = keepAnswers(parts.store, parts.compute);
  await app.register(jobRoutes(parts.store, parts.templates, answerOf, parts.charts?.lists ?? []));
  await app.register(machineRoutes(parts.store, parts.templates, parts.machines ?? [], parts.compute));
  await app.register(practiceRoutes(parts.store, parts.compute));
  await app.register(kitRoutes(parts.store));
  await app.register(sumRoutes(parts.compute));
  if (parts.photos) await app.register(photoRoutes(parts.photos.store, parts.photos.ask));
  if (parts.photos && parts.archives)
    await app.register(archiveRoutes(parts.store, parts.photos.store, parts.archives));
  if (parts.charts) await app.register(chartRoutes(parts.store, answerOf, parts.charts));
  if (parts.page !== undefined) await servePage(app, parts.page);
  return app;
}

/** The built page; every address that is not a file of it or an API route is a screen, and the page draws it. */
async function servePage(app: FastifyInstance, page: string): Promise<void> {
  await app.register(serveFolder, { root: page, wildcard: false });
  app.get('/*', async (request, reply) => {
    if (request.url.startsWith('/api/') || /\.[a-z0-9]+$/i.test(request.url.split('?')[0]!))
      return reply.callNotFound();
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  });
}
