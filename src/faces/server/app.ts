import { sep } from 'node:path';
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
import { remembering } from '../../shop/remembering.ts';
import type { Store } from '../../shop/store.ts';
import { archiveRoutes } from './archives.ts';
import type { BackupState } from './backups.ts';
import { type ChartParts, chartRoutes } from './charts.ts';
import { eventRoutes } from './events.ts';
import { healthRoutes } from './health.ts';
import { jobRoutes } from './jobs.ts';
import { keepAnswers } from './kept-answers.ts';
import { kitRoutes } from './kit.ts';
import { logging, tellRequests } from './log.ts';
import { machineRoutes } from './machines.ts';
import { photoRoutes } from './photos.ts';
import { practiceRoutes } from './practice.ts';
import { answerFailures, bodyLimit_bytes, refusalBody } from './refusals.ts';
import { guard } from './share/gate.ts';
import { ownNames } from './share/own-names.ts';
import { type ShareParts, shareRoutes } from './share/routes.ts';
import { endSlowBodies } from './share/slow-bodies.ts';
import { openStreams } from './share/streams.ts';
import { sumRoutes } from './sums.ts';
import { watchJobs } from './watch.ts';

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
  /** How devices are let in; left out, nobody is but who sits at this machine. */
  readonly share?: ShareParts;
  /** The user's own certificate and its key, PEM; left out, the workshop is served in the clear. */
  readonly tls?: { readonly cert: Buffer; readonly key: Buffer };
  /** How long an entry's body may take to come, ms; given by tests. */
  readonly bodyPatience_ms?: number;
  readonly version: string;
  /** docs/openapi.json as text; left out, the interface is not described. */
  readonly description?: string;
  /** How backups stand; left out, this server makes none. */
  readonly backups?: () => Promise<BackupState>;
  /** Folder of the built page; left out, there is no page. */
  readonly page?: string;
}

/** A person and an outbox write a few entries a second; beyond this it is a loop. */
const requestsPerMinute = 6_000;
/** Fifty devices with a few pages each; what comes beyond waits at the door. */
const mostConnections = 600;

/** Builds the server without listening, so that tests can ask it without a socket. */
export async function buildApp(parts: ServerParts): Promise<FastifyInstance> {
  // Heads of requests come at once; bodies have their own patience, see slow-bodies.ts.
  const patience = { headersTimeout: 15_000, requestTimeout: 0, connectionsCheckingInterval: 5_000 };
  const app = fastify({
    bodyLimit: bodyLimit_bytes,
    ...logging(),
    ...(parts.tls ? { https: { ...patience, ...parts.tls } } : { http: patience }),
  }) as unknown as FastifyInstance;
  app.server.maxConnections = mostConnections;
  tellRequests(app);
  // Our own reading of JSON names the line where the text stops being JSON.
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'string' },
    async (_request: unknown, body: string) => parsedJson(body),
  );
  const { share } = parts;
  guard(app, {
    isOwnName: ownNames(share !== undefined && share.addresses().length > 0),
    scheme: parts.tls ? 'https' : 'http',
    ...(share ? { devices: share.devices } : {}),
  });
  endSlowBodies(app, parts.bodyPatience_ms);
  answerFailures(app);
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        styleSrc: ["'self'"],
        fontSrc: ["'self'"],
        workerSrc: ["'self'"],
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
    keyGenerator: ({ person, ip }) => (person?.is === 'device' ? `device ${person.device.id}` : ip),
    timeWindow: '1 minute',
    errorResponseBuilder: () => ({
      statusCode: 429,
      ...refusalBody('too many', 'too many requests in a minute; wait and send again'),
    }),
  });
  const store: Store = remembering(parts.store, (job) => watch.nudge(job));
  const watch = watchJobs(store);
  app.addHook('onClose', async () => watch.close());
  const streams = openStreams();
  await app.register(eventRoutes(store, watch, streams, share?.devices));
  if (share) await app.register(shareRoutes(share, streams));
  await app.register(
    healthRoutes({
      version: parts.version,
      store: parts.store,
      ...(parts.photos ? { photos: parts.photos.store } : {}),
      ...(parts.backups ? { backups: parts.backups } : {}),
      ...(parts.description === undefined ? {} : { description: parts.description }),
    }),
  );
  const answerOf = keepAnswers(store, parts.compute);
  await app.register(jobRoutes(store, parts.templates, answerOf, parts.charts?.lists ?? []));
  await app.register(machineRoutes(store, parts.templates, parts.machines ?? [], parts.compute));
  await app.register(practiceRoutes(store, parts.compute));
  await app.register(kitRoutes(store));
  await app.register(sumRoutes(parts.compute));
  if (parts.photos) await app.register(photoRoutes(parts.photos.store, parts.photos.ask));
  if (parts.photos && parts.archives)
    await app.register(archiveRoutes(store, parts.photos.store, parts.archives));
  if (parts.charts) await app.register(chartRoutes(store, answerOf, parts.charts));
  if (parts.page !== undefined) await servePage(app, parts.page);
  return app;
}

/** The built page; every address that is not a file of it or an API route is a screen, and the page draws it. */
async function servePage(app: FastifyInstance, page: string): Promise<void> {
  await app.register(serveFolder, {
    root: page,
    wildcard: false,
    // The build lays compressed twins beside its files.
    preCompressed: true,
    cacheControl: false,
    setHeaders: (reply, path) => {
      // Names of assets hold their content's hash: what a browser has of them it need not ask for again.
      const lasts = path.includes(`${sep}assets${sep}`);
      reply.setHeader('cache-control', lasts ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  app.get('/*', async (request, reply) => {
    if (request.url.startsWith('/api/') || /\.[a-z0-9]+$/i.test(request.url.split('?')[0]!))
      return reply.callNotFound();
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  });
}
